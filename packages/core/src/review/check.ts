/**
 * A check: one question that a safety reviewer asks of a layout, with its code, its source and
 * what it finds. One check a file; `checks.ts` lists them. Its title and sentences are texts, by its code.
 */
import type { Finding, Severity } from '../finding.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { titles } from '../text/en/checks.ts';
import { review } from '../text/en/findings/review.ts';
import type { CheckCode, ReasonCode } from '../text/params/checks.ts';
import type { Theme } from '../text/params/themes.ts';
import type { ReviewParams } from '../text/params/review.ts';
import { findingMaker } from '../text/sentence.ts';
import type { RaceOnCourse } from '../raceday/arrivals.ts';
import type { RaceDay } from '../raceday/day.ts';
import { themeOf } from './themes.ts';

/** Where a rule comes from when nobody has printed it. */
export const COMMON_PRACTICE = 'common practice, no source';

/** What is known of a check without running it. */
export interface Rule {
  /** Stable; each finding carries it. */
  readonly code: string;
  /** Of its findings, unless one of them says otherwise. */
  readonly severity: Severity;
  /** How it should be, as a short statement, in English. */
  readonly title: string;
  /** What it is about. */
  readonly theme: Theme;
  /** Where the rule is printed, or "common practice, no source". */
  readonly source: string;
  /** The key of the reason why the check cannot run on this layout (`no-width`, …), or `null` where it can. Absent: it always can. */
  readonly missing?: (layout: Layout) => string | null;
}

/** A rule as its file gives it: its title and the reasons why it cannot run are texts. */
export interface RuleOf<C extends CheckCode> extends Omit<Rule, 'title' | 'theme'> {
  readonly code: C;
  /** Also asked of stations that serve nobody. Of others nothing is: that they serve nobody is found once, and what stands there is moot. */
  readonly lost?: true;
  readonly missing?: (layout: Layout) => ReasonCode | null;
}

/** The rule with its title and theme. */
export const ruled = <C extends CheckCode>(rule: RuleOf<C>): Rule => ({
  ...rule,
  title: titles[rule.code],
  theme: themeOf[rule.code],
});

/** Who runs, and the day that comes of it: what checks of times look at beside the layout. */
export interface DayFacts {
  readonly races: readonly RaceOnCourse[];
  readonly day: RaceDay;
}

/** A question that a safety reviewer asks of a layout, with what answers it. */
export interface Check extends Rule {
  /** What it finds, waivers not counted; `day`: absent or `null` where no race of the plan has waves. */
  readonly find: (layout: Layout, day?: DayFacts | null) => readonly Finding[];
  /** `find` of one station, where nothing but it and the courses enters: what it found stands as long as these do. */
  readonly findAt?: (station: StationLayout, ground: Pick<Layout, 'courses' | 'ground'>) => readonly Finding[];
}

/** What a check of one station may look at beside it: the courses, and the ground along them by the plan's map. */
export type Ground = Pick<Layout, 'courses' | 'ground'>;

/** Codes of checks whose findings are made here. */
export type ReviewCode = keyof ReviewParams & CheckCode;

/** One case that a check finds: what its sentence is made of, where, and how much. `severity` and `source` only where they differ from the rule's. */
export interface Case<C extends ReviewCode>
  extends
    Pick<Finding, 'where' | 'measured' | 'limit' | 'unit' | 'cannotTell'>,
    Partial<Pick<Finding, 'severity' | 'source'>> {
  readonly params: ReviewParams[C];
}

/** Makes findings on a layout. */
export const makeFinding: ReturnType<typeof findingMaker<ReviewParams>> = findingMaker(review);

const findingOf = <C extends ReviewCode>(
  { code, severity, source }: RuleOf<C>,
  { params, ...facts }: Case<C>,
): Finding => makeFinding(code, params, { severity, source, ...facts });

/** Whether a station serves anybody, as the plan stands. */
export const isServing = ({ passes }: Pick<StationLayout, 'passes'>): boolean => passes.some(({ served }) => served);

const serving = (layout: Layout): Layout =>
  layout.stations.every(isServing) ? layout : { ...layout, stations: layout.stations.filter(isServing) };

/** A check whose findings carry its own code, severity and source. */
export const check = <C extends ReviewCode>(rule: RuleOf<C>, find: (layout: Layout) => readonly Case<C>[]): Check => ({
  ...ruled(rule),
  find: (layout) => find(rule.lost === true ? layout : serving(layout)).map((found) => findingOf(rule, found)),
});

/** A check of the day: it cannot run where no race has waves. */
export const dayCheck = <C extends ReviewCode>(
  rule: RuleOf<C>,
  find: (layout: Layout, day: DayFacts) => readonly Case<C>[],
): Check => ({
  ...ruled({ ...rule, missing: (layout) => noWaves(layout) ?? rule.missing?.(layout) ?? null }),
  find: (layout, day = null) => (day === null ? [] : find(layout, day).map((found) => findingOf(rule, found))),
});

/** Why no check of the day can run, where none can. */
export const noWaves = ({ plan }: Layout): ReasonCode | null =>
  plan.races.some(({ waves }) => waves.length > 0) ? null : 'no-waves';

/** A check that asks the same of each station, by itself. */
export function stationCheck<C extends ReviewCode>(
  rule: RuleOf<C>,
  findAt: (station: StationLayout, ground: Ground) => readonly Case<C>[],
): Check {
  const at = (station: StationLayout, ground: Ground): Finding[] =>
    rule.lost === true || isServing(station) ? findAt(station, ground).map((found) => findingOf(rule, found)) : [];
  return { ...ruled(rule), find: (layout) => layout.stations.flatMap((station) => at(station, layout)), findAt: at };
}

/** `where` of something at a station. */
export const atStation = (station: StationLayout, key: string = ''): Finding['where'] => ({
  path: `/stations/${station.index}${key === '' ? '' : `/${key}`}`,
  station: station.id,
  at: station.at,
});

/** `cannotTell`, where that is so. */
export const doubt = (sure: boolean): Pick<Finding, 'cannotTell'> => (sure ? {} : { cannotTell: true });
