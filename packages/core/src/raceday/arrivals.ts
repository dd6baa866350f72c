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
import type { Field, RaceArrivals, StationArrivals } from './day.ts';
import { type Hills, hillsOf } from './hills.ts';
import { timeShare, workTo } from './pace.ts';
import { sortNearly } from './sorting.ts';
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
  const { start, finish, slow } = field;
  const work = workTo((measure - ends[0]) / (ends[1] - ends[0]), hills);
  const total = workTo(1, hills);
  const times = new Float64Array(start.length);
  for (let i = 0; i < times.length; i++) times[i] = start[i]! + finish[i]! * timeShare(work, total, slow[i]!);
  return times;
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
    const all = timesAt(race, measure);
    for (let i = 0; i < all.length; i++) if (all[i]! <= until && outFrom[i]! > measure) times[count++] = all[i]!;
  }
  return { race: field.race.id, division: field.division, times: sortNearly(times.subarray(0, count)), out: times.length - count };
}
