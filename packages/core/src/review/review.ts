/**
 * The review: every check run on a layout, what it found, and what somebody has waived. A check that
 * could not run is said to be so, and never counted as passed.
 */
import type { Finding } from '../finding.ts';
import { isPlanGround } from '../ground/planGround.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { reasons as texts } from '../text/en/checks.ts';
import { type DayFacts, type Rule, isServing } from './check.ts';
import { voiceOf } from '../plan/voice.ts';
import { inEnglish } from '../text/inEnglish.ts';
import { CHECKS } from './checks.ts';
import { withoutEffects } from './heldBack.ts';
import { STAGE_RULES } from './stageRules.ts';
import { isOfGround, waive } from './waivers.ts';
import { type Shape, listOf, orNull, recordOf, tableOf, maybe, want } from '../wants.ts';
import { isIndexed } from '../course/indexedShape.ts';
import { isStationLayout, isLayout } from '../layout/shapes.ts';
import { isFinding } from '../finding.ts';
import { isRaceOnCourse } from '../raceday/arrivals.ts';
import { isRaceDay } from '../raceday/shapes.ts';

/** One check as it went: `ran` false with the reason where the plan does not give what it needs. */
export interface CheckRun extends Pick<Rule, 'code' | 'severity' | 'title' | 'theme' | 'source'> {
  readonly ran: boolean;
  /** Why it did not run, in English. */
  readonly reason?: string;
  /** The same as a key that no language changes: `no-width`. */
  readonly reasonCode?: string;
  /** Findings, waived and undecided ones among them. */
  readonly found: number;
  /** Those of them that the position error leaves undecided. */
  readonly cannotTell: number;
}

/** What a review comes to. */
export interface Review {
  /** Those of `STAGE_RULES` first, then those of `CHECKS`. */
  readonly checks: readonly CheckRun[];
  /** Of the stages before first, then by check; waived ones marked. */
  readonly findings: readonly Finding[];
  /** In the order of the stations, by code: what the checks that ask of each station by itself found there, before waivers. */
  readonly atStations: readonly StationFound[];
}

/** Findings at one station by the code of their check. */
export type StationFound = Readonly<Record<string, readonly Finding[]>>;

/** A layout and what was found at its stations. */
export type Reviewed = Pick<Layout, 'courses' | 'stations' | 'ground'> & Pick<Review, 'atStations'>;

const isKnown: Shape = recordOf<Reviewed>('what was found before', {
  courses: listOf(isIndexed),
  ground: maybe(isPlanGround),
  stations: listOf(isStationLayout),
  atStations: listOf(tableOf(listOf(isFinding))),
});

const isDayFacts: Shape = recordOf<DayFacts>('who runs and their day', {
  races: listOf(isRaceOnCourse),
  day: isRaceDay,
});

/**
 * Runs every check on a layout, as `analyse` does. `before`: what reading and measuring the courses has found already.
 * `known`: a review whose findings hold at those stations that are the very same, if the courses are. `day`: who runs, and the
 * day that comes of it, for checks of times, which find nothing without.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseStage, layoutStage, reviewLayout } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const courses = courseStage(plan, { gpx: new Map() });
 * const layout = courses.ok ? layoutStage(plan, courses.value) : courses;
 * if (!layout.ok) throw new Error(layout.findings[0]?.message);
 * const { checks } = reviewLayout(layout.value, courses.findings);
 * const sign = checks.find(({ code }) => code === 'sign-distance');
 * [sign?.ran, sign?.found]; // → [true, 0]
 * ```
 */
export function reviewLayout(
  layout: Layout,
  before: readonly Finding[] = [],
  known?: Reviewed,
  day: DayFacts | null = null,
): Review {
  want('reviewLayout', 'layout', isLayout, layout);
  want('reviewLayout', 'before', listOf(isFinding), before);
  want('reviewLayout', 'known', maybe(isKnown), known);
  want('reviewLayout', 'day', orNull(isDayFacts), day);
  const standing = known?.courses === layout.courses && known.ground === layout.ground ? known : undefined;
  const atStations = layout.stations.map((station, k) =>
    standing?.stations[k] === station ? standing.atStations[k]! : foundAt(station, layout),
  );
  const reasons = new Map([...STAGE_RULES, ...CHECKS].map((rule) => [rule.code, rule.missing?.(layout) ?? null]));
  const found = CHECKS.flatMap((check) =>
    reasons.get(check.code) !== null
      ? []
      : check.findAt === undefined
        ? check.find(layout, day)
        : atStations.flatMap((at) => at[check.code]!),
  );
  const { told, waiting } = withoutEffects([...causesOf(before, layout), ...found], layout);
  const findings = inEnglish(
    waive(told, layout.plan, (waiver) => !isOfGround(waiver)),
    voiceOf(layout.plan),
  );
  return {
    checks: [...STAGE_RULES, ...CHECKS].map((rule) => {
      const waits = waiting.has(rule.code) && !findings.some(({ code }) => code === rule.code);
      return runOf(rule, findings, waits ? 'waits-for-line' : (reasons.get(rule.code) ?? null));
    }),
    findings,
    atStations,
  };
}

/** What race day finds where a station serves nobody: that is found once, by what it comes of. */
const OF_LOST: ReadonlySet<string> = new Set(['station-no-arrivals', 'drop-nowhere']);

/** Findings of the stages before, less those that only repeat that a station serves nobody. */
function causesOf(before: readonly Finding[], { stations }: Layout): readonly Finding[] {
  const lost = new Set(stations.filter((station) => !isServing(station)).map(({ id }) => id));
  return before.filter(({ code, where }) => !OF_LOST.has(code) || !lost.has(where.station ?? ''));
}

const englishReason = (key: string): string => (texts as Readonly<Record<string, string>>)[key] ?? key;

const foundAt = (station: StationLayout, layout: Layout): StationFound =>
  Object.fromEntries(
    CHECKS.flatMap(({ code, findAt }) => (findAt === undefined ? [] : [[code, findAt(station, layout)]])),
  );

/** How a check went, from all findings; `reasonCode`: why it could not run. */
export function runOf(
  { code, severity, title, theme, source }: Rule,
  findings: readonly Finding[],
  reasonCode: string | null = null,
): CheckRun {
  const own = findings.filter((finding) => finding.code === code);
  return {
    code,
    severity,
    title,
    theme,
    source,
    ran: reasonCode === null,
    ...(reasonCode === null ? {} : { reason: englishReason(reasonCode), reasonCode }),
    found: own.length,
    cannotTell: own.filter((finding) => finding.cannotTell === true).length,
  };
}
