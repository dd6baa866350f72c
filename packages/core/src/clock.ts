/**
 * The day by the clock: how thick the runners are along each course, and what each station is doing, at one time. Times are
 * seconds after midnight of the race's day (hours may pass 24), measures calibrated course distances in metres.
 */
import type { Analysis } from './analyse.ts';
import { byId, findById, leadOf } from './plan/lookups.ts';
import { crewOf, suppliesOf } from './plan/practice.ts';
import type { Run } from './raceday/day.ts';
import { densityAt } from './raceday/density.ts';
import { type OnTheMove, onTheMove, runSpan, sweepMeasure } from './raceday/onTheMove.ts';
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
  /** Who will still cross the start line. */
  readonly waiting: number;
  /** The sum of `runners`. */
  readonly onRoad: number;
  readonly finished: number;
  /** Whom the sweep has overtaken. */
  readonly stopped: number;
}

/** Stretches of this length, metres, where the caller names none. */
const EVERY = 100;

/**
 * Runners on the road at a clock time by stretches of `every` metres (100 unless told), for each race that has a field, and
 * how many wait, have finished or were stopped. Throws a RangeError where `time` is no number or `every` is not over 0, and a TypeError
 * for what is no analysis of `analyse`.
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
      : [{ race: id, course, from: running.ends[0], every, ...densityAt(running, time, every) }];
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
  const { waste, cup, fill } = suppliesOf(analysis.plan, own);
  const { pourRate, handRate, fromTables } = crewOf(analysis.plan, own);
  return stationStateAt(day, time, { waste, pourRate, handRate, fromTables, cup: cup * fill });
}

/** A vehicle that is on a course at a time. */
export interface VehicleAt extends OnTheMove {
  /** Its id. */
  readonly vehicle: string;
  readonly kind: Run['kind'];
  /** Id of the course. */
  readonly course: string;
}

/** A run with its course, and its vehicle's speed in metres a second; `null` where it stops nowhere. */
function drivenOf({ plan, stations }: Analysis, run: Run): { readonly course: string; readonly speed: number } | null {
  const first = findById(stations, run.stops[0]?.station ?? '');
  const lead = first === undefined ? undefined : leadOf(first);
  const vehicle = findById(plan.vehicles, run.vehicle);
  return lead === undefined || vehicle === undefined ? null : { course: lead.course, speed: vehicle.kmh / 3.6 };
}

/**
 * The vehicles of drop and collection that are on a course at a clock time, on the way or at a station, in the order of the runs; those
 * that are loaded or emptied, or drive back off the course, are left out. Throws a RangeError where `time` is no number, and a
 * TypeError for what is no analysis of `analyse`.
 * @example
 * ```ts
 * import { reviewPlan } from '@halfcup/core';
 * import { vehiclesAt } from '@halfcup/core/raceday';
 *
 * const reviewed = reviewPlan({
 *   plan: {
 *     format: 'halfcup-plan', version: 1,
 *     courses: [{ id: 'c', line: [[-17.4, -33.2], [-17.36, -33.2]] }],
 *     races: [{ id: 'r', course: 'c', cutoff: '08:40', waves: [{ time: '08:00', entrants: 200 }], finish: { median: '0:24:00', spread: 0.2 } }],
 *     stations: [{ id: 's1', on: { course: 'c', measure: '2 km', side: 'right' } }],
 *     vehicles: [{ id: 'v', name: 'Truck', kg: 3000, places: 4, kmh: 30, from: '05:00' }],
 *   },
 * });
 * if (!reviewed.ok) throw new Error(reviewed.findings[0]?.message);
 * vehiclesAt(reviewed.value.analysis, 5 * 3600 + 2 * 60); // → [{ vehicle: 'v', kind: 'drop', course: 'c', measure: 1000, at: null, next: 's1' }]
 * ```
 */
export function vehiclesAt(analysis: Analysis, time: Seconds): VehicleAt[] {
  want('vehiclesAt', 'analysis', isAnalysis, analysis);
  want('vehiclesAt', 'time', finite, time);
  return (analysis.day?.runs ?? []).flatMap((run) => {
    const driven = drivenOf(analysis, run);
    const at = driven === null ? null : onTheMove(run, driven.speed, time);
    return at === null ? [] : [{ vehicle: run.vehicle, kind: run.kind, course: driven!.course, ...at }];
  });
}

/** A race's sweep at a time. */
export interface SweepPlace {
  /** Id of the race. */
  readonly race: string;
  /** Id of its course. */
  readonly course: string;
  readonly measure: Metres;
}

/**
 * Where the sweep of each race is at a clock time; races without one, and sweeps that have not left or are through, are left out. Throws
 * a RangeError where `time` is no number, and a TypeError for what is no analysis of `analyse`.
 * @example
 * ```ts
 * import { reviewPlan } from '@halfcup/core';
 * import { sweepsAt } from '@halfcup/core/raceday';
 *
 * const reviewed = reviewPlan({
 *   plan: {
 *     format: 'halfcup-plan', version: 1,
 *     courses: [{ id: 'c', line: [[-17.4, -33.2], [-17.36, -33.2]] }],
 *     races: [{ id: 'r', course: 'c', cutoff: '08:40', waves: [{ time: '08:00', entrants: 200 }], finish: { median: '0:24:00', spread: 0.2 } }],
 *     stations: [{ id: 's1', on: { course: 'c', measure: '2 km', side: 'right' } }],
 *     vehicles: [{ id: 'v', name: 'Truck', kg: 3000, places: 4, kmh: 30, from: '05:00' }],
 *   },
 * });
 * if (!reviewed.ok) throw new Error(reviewed.findings[0]?.message);
 * sweepsAt(reviewed.value.analysis, 8 * 3600 + 20 * 60).map(({ race, measure }) => [race, measure]); // → [['r', 1857.218]]
 * ```
 */
export function sweepsAt(analysis: Analysis, time: Seconds): SweepPlace[] {
  want('sweepsAt', 'analysis', isAnalysis, analysis);
  want('sweepsAt', 'time', finite, time);
  return analysis.plan.races.flatMap(({ id, course }) => {
    const sweep = runningOf(analysis, id)?.sweep ?? null;
    const measure = sweep === null ? null : sweepMeasure(sweep, time);
    return measure === null ? [] : [{ race: id, course, measure }];
  });
}

/**
 * From when to when there is something to see on race day, seconds after midnight: from the first start, crew or vehicle, whichever
 * comes first, until the last finish, packed station or collection. Whom the sweep stops does not count. `null` without a race day. Throws a TypeError for what is no analysis
 * of `analyse`.
 * @example
 * ```ts
 * import { reviewPlan } from '@halfcup/core';
 * import { clockSpan } from '@halfcup/core/raceday';
 * import { formatClock } from '@halfcup/core/units';
 *
 * const reviewed = reviewPlan({
 *   plan: {
 *     format: 'halfcup-plan', version: 1,
 *     courses: [{ id: 'c', line: [[-17.4, -33.2], [-17.36, -33.2]] }],
 *     races: [{ id: 'r', course: 'c', cutoff: '08:40', waves: [{ time: '08:00', entrants: 200 }], finish: { median: '0:24:00', spread: 0.2 } }],
 *     stations: [{ id: 's1', on: { course: 'c', measure: '2 km', side: 'right' } }],
 *     vehicles: [{ id: 'v', name: 'Truck', kg: 3000, places: 4, kmh: 30, from: '05:00' }],
 *   },
 * });
 * if (!reviewed.ok) throw new Error(reviewed.findings[0]?.message);
 * clockSpan(reviewed.value.analysis)?.map((time) => formatClock(time)); // → ['05:00:00', '09:12:27']
 * ```
 */
export function clockSpan(analysis: Analysis): readonly [from: Seconds, to: Seconds] | null {
  want('clockSpan', 'analysis', isAnalysis, analysis);
  if (analysis.day === null) return null;
  const { stations, runs } = analysis.day;
  const runners = analysis.plan.races.flatMap(({ id }) => {
    const running = runningOf(analysis, id);
    if (running === null) return [];
    const { start, finish, race } = running.field;
    // Whom the sweep stops does not finish.
    const last = race.late === 'served' ? Infinity : (running.sweep?.times.at(-1) ?? Infinity);
    const finished = start.reduce((latest, time, i) => Math.max(latest, time + finish[i]!), -Infinity);
    return [[start.reduce((first, time) => Math.min(first, time), Infinity), Math.min(finished, last)] as const];
  });
  const crews = stations.flatMap(({ crewAt, openUntil, packedAt = openUntil }) =>
    crewAt === null || packedAt === null ? [] : [[crewAt, packedAt] as const],
  );
  const vehicles = runs.flatMap((run) => {
    const driven = drivenOf(analysis, run);
    return driven === null ? [] : [runSpan(run, driven.speed)];
  });
  const all = [...runners, ...crews, ...vehicles].filter(([from, to]) => Number.isFinite(from) && Number.isFinite(to));
  if (all.length === 0) return null;
  return all.reduce(([from, to], [first, last]) => [Math.min(from, first), Math.max(to, last)] as const);
}
