/**
 * Questions to an analysis: which station comes next, when a share of the runners is at a place, who is where at a time of day.
 * Times are seconds after midnight of the race's day (hours may pass 24), measures calibrated course distances in metres.
 */
import type { Analysis } from './analyse.ts';
import { courseLength, startMeasure } from './course/course.ts';
import { byId, courseById } from './plan/lookups.ts';
import { type RaceOnCourse, raceArrivals } from './raceday/arrivals.ts';
import { quantile as quantileOf } from './raceday/timing.ts';
import { whereaboutsAt } from './raceday/whereabouts.ts';
import type { Metres, Seconds } from './units.ts';
import { isAnalysis } from './review/shapes.ts';
import { aNumber, aText, finite, listOf, maybe, orNull, recordOf, want } from './wants.ts';
import { isLayout } from './layout/shapes.ts';
import type { Layout } from './layout/layout.ts';

/** A station that a runner comes to. */
export interface NextStation {
  /** Its id. */
  readonly station: string;
  readonly name: string;
  /** Course distance at which it is passed. */
  readonly measure: Metres;
  /** From where the runner is. */
  readonly ahead: Metres;
  /** Index among the race's passes of the station, from 0. */
  readonly pass: number;
}

/** How many of a race are on the road between one served pass and the next, or from the start, or to the finish. */
export interface StretchRunners {
  /** `start`, or a station's id. */
  readonly from: string;
  /** `finish`, or a station's id. */
  readonly to: string;
  /** Course distances of both. */
  readonly along: readonly [from: Metres, to: Metres];
  readonly runners: number;
}

/** The starters of one race at one time: `started` is the sum of `onRoad`, `finished` and `stopped`. */
export interface RaceRunners {
  /** Its id. */
  readonly race: string;
  /** Who will still cross the start line. */
  readonly waiting: number;
  readonly started: number;
  readonly onRoad: number;
  readonly finished: number;
  /** Whom the sweep has overtaken; none where the plan serves late runners. */
  readonly stopped: number;
  /** From start to finish; the sum of their `runners` is `onRoad`. */
  readonly stretches: readonly StretchRunners[];
}

/**
 * The next station that a race's runners are served at behind a course distance, in metres; `null` behind the last, and for NaN.
 * A station exactly there counts as passed. Throws a RangeError where the plan has no such race.
 * @example
 * ```ts
 * import { nextStation, reviewPlan } from '@halfcup/core';
 *
 * const reviewed = reviewPlan({
 *   plan: {
 *     format: 'halfcup-plan', version: 1,
 *     courses: [{ id: 'c', line: [[-17.4, -33.2], [-17.36, -33.2]] }],
 *     races: [{ id: 'r', course: 'c' }],
 *     stations: [{ id: 's1', name: 'Quay', on: { course: 'c', measure: '2 km', side: 'right' } }],
 *   },
 * });
 * if (!reviewed.ok) throw new Error(reviewed.findings[0]?.message);
 * nextStation(reviewed.value.analysis, 'r', 500); // → { station: 's1', name: 'Quay', measure: 2000, ahead: 1500, pass: 0 }
 * nextStation(reviewed.value.analysis, 'r', 2500); // → null
 * ```
 */
export function nextStation(analysis: Layout, race: string, measure: Metres): NextStation | null {
  want('nextStation', 'analysis', isLayout, analysis);
  want('nextStation', 'race', aText, race);
  want('nextStation', 'measure', aNumber, measure);
  const { plan, stations } = analysis;
  byId(plan.races, race);
  const ahead = stations
    .flatMap(({ id, name, passes }) =>
      passes
        .filter((pass) => pass.race === race && pass.served && pass.measure > measure)
        .map((pass) => ({ station: id, name, measure: pass.measure, ahead: pass.measure - measure, pass: pass.pass })),
    )
    .toSorted((a, b) => a.measure - b.measure);
  return ahead[0] ?? null;
}

/**
 * The clock time, seconds after midnight, by which a share of a race's runners (0 the first, 0.5 half, 1 the last) has come to a course
 * distance, of those who get there before the sweep. `null` off the course, where the race has no waves or no times, and where nobody
 * gets there. Throws a RangeError where the plan has no such race or `quantile` is no share, and a TypeError for what is no analysis of
 * `analyse`.
 * @example
 * ```ts
 * import { etaAt, reviewPlan } from '@halfcup/core';
 * import { formatClock } from '@halfcup/core/units';
 *
 * const reviewed = reviewPlan({
 *   plan: {
 *     format: 'halfcup-plan', version: 1,
 *     courses: [{ id: 'c', line: [[-17.4, -33.2], [-17.36, -33.2]] }],
 *     races: [{ id: 'r', course: 'c', waves: [{ time: '08:00', entrants: 200 }], finish: { median: '0:24:00', spread: 0.2 } }],
 *     stations: [],
 *   },
 * });
 * if (!reviewed.ok) throw new Error(reviewed.findings[0]?.message);
 * const half = etaAt(reviewed.value.analysis, 'r', 0.5, 2000);
 * half && formatClock(half); // → '08:12:13'
 * etaAt(reviewed.value.analysis, 'r', 0.5, 5000); // → null
 * ```
 */
export function etaAt(analysis: Analysis, race: string, quantile: number, measure: Metres): Seconds | null {
  want('etaAt', 'analysis', isAnalysis, analysis);
  want('etaAt', 'race', aText, race);
  want('etaAt', 'measure', aNumber, measure);
  if (!(quantile >= 0 && quantile <= 1))
    throw new RangeError(`etaAt wants quantile as a share from 0 to 1; found ${String(quantile)}`);
  const running = runningOf(analysis, race);
  if (running === null || !(measure >= running.ends[0] && measure <= running.ends[1])) return null;
  const { times } = raceArrivals(running, [measure]);
  return times.length === 0 ? null : quantileOf(times, quantile);
}

/**
 * Who is where at a clock time, seconds after midnight: for each race that has a field, or for the one that is named, its starters
 * by stretch of the course. Throws a RangeError where the plan has no such race or `time` is no number, and a TypeError for what is no
 * analysis of `analyse`.
 * @example
 * ```ts
 * import { reviewPlan, runnersAt } from '@halfcup/core';
 *
 * const reviewed = reviewPlan({
 *   plan: {
 *     format: 'halfcup-plan', version: 1,
 *     courses: [{ id: 'c', line: [[-17.4, -33.2], [-17.36, -33.2]] }],
 *     races: [{ id: 'r', course: 'c', waves: [{ time: '08:00', entrants: 200 }], finish: { median: '0:24:00', spread: 0.2 } }],
 *     stations: [{ id: 's1', on: { course: 'c', measure: '2 km', side: 'right' } }],
 *   },
 * });
 * if (!reviewed.ok) throw new Error(reviewed.findings[0]?.message);
 * const [at20] = runnersAt(reviewed.value.analysis, 8 * 3600 + 20 * 60);
 * at20 && [at20.started, at20.onRoad, at20.finished, at20.stopped]; // → [180, 148, 32, 0]
 * at20?.stretches.map(({ from, to, runners }) => [from, to, runners]); // → [['start', 's1', 1], ['s1', 'finish', 147]]
 * ```
 */
export function runnersAt(analysis: Analysis, time: Seconds, race?: string): RaceRunners[] {
  want('runnersAt', 'analysis', isAnalysis, analysis);
  want('runnersAt', 'time', finite, time);
  want('runnersAt', 'race', maybe(aText), race);
  const asked = race === undefined ? analysis.plan.races.map(({ id }) => id) : [race];
  return asked.flatMap((id) => {
    const running = runningOf(analysis, id);
    return running === null ? [] : [raceRunners(analysis, running, time)];
  });
}

function raceRunners({ courses, spacing }: Analysis, running: RaceOnCourse, time: Seconds): RaceRunners {
  const { id, course: on } = running.field.race;
  const { course } = courseById(courses, on);
  const { legs } = spacing.find((one) => one.race === id)!;
  const places = [startMeasure(course), ...legs.slice(0, -1).map(({ end }) => end), courseLength(course)];
  const { between, ...counts } = whereaboutsAt(running, places, time);
  const stretches = legs.map(({ from, to }, k) => ({
    from,
    to,
    along: [places[k]!, places[k + 1]!] as const,
    runners: between[k]!,
  }));
  return { race: id, ...counts, stretches };
}

const isRunning = recordOf('a race that runs', {
  field: recordOf('its field', { race: recordOf('a race', { id: aText }) }),
});
const isKeptFields = orNull(recordOf('the fields that analyse keeps', { races: listOf(isRunning) }));

/** A race's field on its course; `null` where the plan does not say who runs. */
export function runningOf({ plan, kept }: Analysis, race: string): RaceOnCourse | null {
  byId(plan.races, race);
  if (kept === undefined)
    throw new TypeError(
      'found an analysis put together from stages; expected what analyse, reanalyse or reviewPlan gave',
    );
  want('etaAt and runnersAt', 'analysis.kept.fields', isKeptFields, kept.fields);
  return kept.fields?.races.find(({ field }) => field.race.id === race) ?? null;
}
