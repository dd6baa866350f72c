/**
 * The day by the clock: how thick the runners are along each course, and what each station is doing, at one time. Times are
 * seconds after midnight of the race's day (hours may pass 24), measures calibrated course distances in metres.
 */
import type { Analysis } from './analyse.ts';
import { byId, findById } from './plan/lookups.ts';
import { crewOf, suppliesOf } from './plan/practice.ts';
import { densityAt } from './raceday/density.ts';
import { type StationState, stationStateAt } from './raceday/stationClock.ts';
import { runningOf } from './questions.ts';
import { isAnalysis } from './review/shapes.ts';
import type { Metres, Seconds } from './units.ts';
import { aText, finite, positive, want } from './wants.ts';

/** One race's runners along its course at a time. */
export interface CrowdAlong {
  /** Its id. */
  readonly race: string;
  /** Id of its course. */
  readonly course: string;
  /** Course distance at which the first stretch begins. */
  readonly from: Metres;
  /** Length of a stretch. */
  readonly every: Metres;
  /** Runners on the road in each stretch, the last perhaps shorter. */
  readonly runners: Uint32Array;
}

/** Stretches of this length, metres, where the caller names none. */
const EVERY = 100;

/**
 * Runners on the road at a clock time by stretches of `every` metres (100 unless told), for each race that has a field. Throws a
 * RangeError where `time` is no number or `every` is not over 0, and a TypeError for what is no analysis of `analyse`.
 * @example
 * ```ts
 * import { reviewPlan } from '@halfcup/core';
 * import { crowdAlong } from '@halfcup/core/raceday';
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
 * const [crowd] = crowdAlong(reviewed.value.analysis, 8 * 3600 + 20 * 60, 1000);
 * crowd && [...crowd.runners]; // → [0, 1, 71, 76]
 * ```
 */
export function crowdAlong(analysis: Analysis, time: Seconds, every: Metres = EVERY): CrowdAlong[] {
  want('crowdAlong', 'analysis', isAnalysis, analysis);
  want('crowdAlong', 'time', finite, time);
  want('crowdAlong', 'every', positive, every);
  return analysis.plan.races.flatMap(({ id, course }) => {
    const running = runningOf(analysis, id);
    return running === null
      ? []
      : [{ race: id, course, from: running.ends[0], every, runners: densityAt(running, time, every) }];
  });
}

/**
 * What a station is doing at a clock time: its phase, arrivals so far, cups poured, taken, standing and left, hands busy. `null` where
 * the plan has no race day. Poured = taken + standing and sent = poured + left. Throws a RangeError where the plan has no such station
 * or `time` is no number, and a TypeError for what is no analysis of `analyse`.
 * @example
 * ```ts
 * import { reviewPlan } from '@halfcup/core';
 * import { stateAt } from '@halfcup/core/raceday';
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
 * const state = stateAt(reviewed.value.analysis, 's1', 8 * 3600 + 12 * 60);
 * state && [state.phase, state.arrived]; // → ['open', { r: 84 }]
 * ```
 */
export function stateAt(analysis: Analysis, station: string, time: Seconds): StationState | null {
  want('stateAt', 'analysis', isAnalysis, analysis);
  want('stateAt', 'station', aText, station);
  want('stateAt', 'time', finite, time);
  const own = byId(analysis.plan.stations, station);
  const day = findById(analysis.day?.stations ?? [], station);
  if (day === undefined) return null;
  const { waste } = suppliesOf(analysis.plan, own);
  const { pourRate, handRate, fromTables } = crewOf(analysis.plan, own);
  return stationStateAt(day, time, { waste, pourRate, handRate, fromTables });
}
