/**
 * Who arrives where and when: every starter's time at every served pass, less those whom the sweep has overtaken.
 * Model: pace.ts and sweep.ts. A runner is out where the sweep first overtakes them; on level road that is found at
 * the sweep's own knots and at the pass itself, since time grows convex with measure between them.
 */
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { Plan } from '../plan/plan.ts';
import type { CourseTable } from '../station/directions.ts';
import type { StationPass } from '../station/station.ts';
import type { Field, Quantiles, RaceArrivals, StationArrivals } from './day.ts';
import { type Hills, hillsOf } from './hills.ts';
import { timeShare, workTo } from './pace.ts';
import { type Sweep, sweepAt, sweepOf } from './sweep.ts';

/** A field on its course. */
export interface RaceOnCourse {
  readonly field: Field;
  /** Calibrated measures of the start and the finish, metres. */
  readonly ends: readonly [start: number, finish: number];
  readonly hills: Hills | null;
  readonly sweep: Sweep | null;
  /** Per starter, the measure of the first knot at which the sweep is ahead; `Infinity` where it never is, or where late runners are served. */
  readonly outFrom: Float64Array;
}

/** A station as race day sees it: its passes, seen and served. */
export interface PassedStation {
  readonly id: string;
  readonly passes: readonly StationPass[];
}

/** Length in seconds of the window of the peak. */
const WINDOW = 60;

/** Each field with its course's ends, hills and sweep, and what is wrong with those. */
export function racesOnCourses(plan: Plan, courses: CourseTable, fields: readonly Field[]): { readonly races: readonly RaceOnCourse[]; readonly findings: readonly Finding[] } {
  const made = fields.map((field) => raceOnCourse(plan, courses.get(field.race.course)!.course, field));
  return { races: made.map(({ race }) => race), findings: made.flatMap(({ findings }) => findings) };
}

function raceOnCourse(plan: Plan, course: Course, field: Field): { readonly race: RaceOnCourse; readonly findings: readonly Finding[] } {
  const { id, division, gradient } = field.race;
  const ends = [startMeasure(course), courseLength(course)] as const;
  const { hills, findings } = gradient ? hillsOf(course, division, id) : { hills: null, findings: [] };
  const swept = sweepOf(field, course.id, ends, plan.clock);
  return { race: runRace(field, ends, hills, swept.sweep), findings: [...findings, ...swept.findings] };
}

/** A field on a course whose calibrated measure runs between two ends, metres. */
export function runRace(field: Field, ends: readonly [start: number, finish: number], hills: Hills | null, sweep: Sweep | null): RaceOnCourse {
  const outFrom = new Float64Array(field.start.length).fill(Infinity);
  const race: RaceOnCourse = { field, ends, hills, sweep, outFrom };
  if (sweep === null || field.race.late === 'served') return race;
  sweep.measures.forEach((measure, k) => {
    if (measure < ends[0] || measure > ends[1]) return;
    timesAt(race, measure).forEach((time, i) => {
      if (time > sweep.times[k]!) outFrom[i] = Math.min(outFrom[i]!, measure);
    });
  });
  return race;
}

/** Clock time of every starter at a measure, in the order of the field, whether the sweep lets them get there or not. */
export function timesAt({ field, ends, hills }: RaceOnCourse, measure: number): Float64Array {
  const work = workTo((measure - ends[0]) / (ends[1] - ends[0]), hills);
  const total = workTo(1, hills);
  return field.finish.map((finish, i) => field.start[i]! + finish * timeShare(work, total, field.slow[i]!));
}

/** Arrivals at each station over its served passes, races in the order given; a race that no served pass is of is left out. */
export const arrivalsAt = (stations: readonly PassedStation[], races: readonly RaceOnCourse[]): StationArrivals[] => stations.map((station) => stationArrivals(station, races));

function stationArrivals({ id, passes }: PassedStation, races: readonly RaceOnCourse[]): StationArrivals {
  const served = races.map((race) => ({ race, measures: passes.filter((pass) => pass.served && pass.race === race.field.race.id).map(({ measure }) => measure) })).filter(({ measures }) => measures.length > 0);
  const swept = served.flatMap(({ race: { sweep }, measures }) => (sweep === null ? [] : measures.map((measure) => sweepAt(sweep, measure)).filter(Number.isFinite)));
  return { station: id, races: served.map(({ race, measures }) => raceArrivals(race, measures)), sweep: swept.length === 0 ? null : swept.reduce((a, b) => Math.max(a, b)) };
}

function raceArrivals(race: RaceOnCourse, measures: readonly number[]): RaceArrivals {
  const { field, sweep, outFrom } = race;
  const times = new Float64Array(field.start.length * measures.length);
  let count = 0;
  for (const measure of measures) {
    const until = sweep === null || field.race.late === 'served' ? Infinity : sweepAt(sweep, measure);
    timesAt(race, measure).forEach((time, i) => {
      if (time <= until && outFrom[i]! > measure) times[count++] = time;
    });
  }
  return { race: field.race.id, division: field.division, times: times.slice(0, count).sort(), out: times.length - count };
}

/** All arrivals of some races, ascending. */
export function mergedTimes(races: readonly RaceArrivals[]): Float64Array {
  const all = new Float64Array(races.reduce((sum, { times }) => sum + times.length, 0));
  let at = 0;
  for (const { times } of races) {
    all.set(times, at);
    at += times.length;
  }
  return all.sort();
}

/** First, 10, 50 and 90 % and last of ascending times; `null` of none. Linear between ranks: type 7 of Hyndman and Fan (1996). */
export function quantilesOf(times: Float64Array): Quantiles | null {
  if (times.length === 0) return null;
  const at = (share: number): number => {
    const rank = (times.length - 1) * share;
    const below = Math.floor(rank);
    return times[below]! + (times[Math.min(below + 1, times.length - 1)]! - times[below]!) * (rank - below);
  };
  return { first: times[0]!, p10: at(0.1), p50: at(0.5), p90: at(0.9), last: times.at(-1)! };
}

/**
 * Arrivals by clock minute and race, ascending; every race stands in every minute. Minutes are told by their start,
 * seconds after midnight; those in which nobody arrives are left out.
 */
export function perMinuteOf(races: readonly RaceArrivals[]): (readonly [minute: number, counts: Readonly<Record<string, number>>])[] {
  const minutes = new Map<number, number[]>();
  races.forEach(({ times }, r) => {
    for (const time of times) {
      const minute = Math.floor(time / 60) * 60;
      const counts = minutes.get(minute) ?? races.map(() => 0);
      counts[r]! += 1;
      minutes.set(minute, counts);
    }
  });
  const ascending = [...minutes].sort((a, b) => a[0] - b[0]);
  return ascending.map(([minute, counts]) => [minute, Object.fromEntries(races.map(({ race }, r) => [race, counts[r]!]))]);
}

/** The most arrivals in any 60 s (its end excluded) of ascending times, and the start of the first such window; `null` of none. */
export function peakOf(times: Float64Array): { readonly count: number; readonly at: number } | null {
  if (times.length === 0) return null;
  let peak = { count: 0, at: times[0]! };
  let end = 0;
  for (let from = 0; from < times.length; from++) {
    while (end < times.length && times[end]! < times[from]! + WINDOW) end++;
    if (end - from > peak.count) peak = { count: end - from, at: times[from]! };
  }
  return peak;
}
