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
import type { Metres } from '../units.ts';
import type { Field, PassArrivals, RaceArrivals, StationArrivals } from './day.ts';
import { type Hills, hillsOf } from './hills.ts';
import { timeShare, workTo } from './pace.ts';
import { mergeSorted, sortNearly } from './sorting.ts';
import { type Sweep, sweepAt, sweepOf } from './sweep.ts';
import { type Shape, column, recordOf, listOf, want, finite } from '../wants.ts';
import { isEnds, isField, isHills, isSweep, isPassedStation, wantTable } from './shapes.ts';
import { isPlan } from '../plan/shapes.ts';

/** A field on its course. */
export interface RaceOnCourse {
  readonly field: Field;
  /** Calibrated measures of the start and the finish, metres. */
  readonly ends: readonly [start: Metres, finish: Metres];
  /** `null`: taken as level. */
  readonly hills: Hills | null;
  /** `null`: there is none. */
  readonly sweep: Sweep | null;
  /** Per starter, the measure of the first knot at which the sweep is ahead; `Infinity` where it never is, or where late runners are served. */
  readonly outFrom: Float64Array;
}

export const isRaceOnCourse: Shape = recordOf<RaceOnCourse>('a race that runRace gives', {
  field: isField,
  ends: isEnds,
  hills: isHills,
  sweep: isSweep,
  outFrom: column,
});

/** A station as race day sees it: its passes, seen and served. */
export interface PassedStation {
  readonly id: string;
  readonly passes: readonly StationPass[];
}

/**
 * Each field with its course's ends, hills and sweep, and what is wrong with those. Courses by id; throws where a field's is not among them.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { fieldOf, racesOnCourses } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier", "waves": [{ "time": "08:00", "entrants": 400 }], "finish": { "median": "50 min", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "used": { "water": 450 } }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const analysed = analyse(plan, { gpx: new Map() });
 * if (!analysed.ok) throw new Error(analysed.findings[0]?.message);
 * const { courses } = analysed.value;
 * const table = new Map(courses.map((indexed) => [indexed.course.id, indexed]));
 * const fields = plan.races.flatMap((race) => {
 *   const field = fieldOf(race, 9794, new Map());
 *   return field.ok ? [field.value] : [];
 * });
 * racesOnCourses(plan, table, fields).races.map(({ ends }) => ends); // → [[0, 9793.95]]
 * ```
 */
export function racesOnCourses(
  plan: Plan,
  courses: CourseTable,
  fields: readonly Field[],
): { readonly races: readonly RaceOnCourse[]; readonly findings: readonly Finding[] } {
  want('racesOnCourses', 'plan', isPlan, plan);
  want('racesOnCourses', 'fields', listOf(isField), fields);
  wantTable(
    'racesOnCourses',
    courses,
    fields.map(({ race }) => race.course),
  );
  const made = fields.map((field) => raceOnCourse(plan, courses.get(field.race.course)!.course, field));
  return { races: made.map(({ race }) => race), findings: made.flatMap(({ findings }) => findings) };
}

function raceOnCourse(
  plan: Plan,
  course: Course,
  field: Field,
): { readonly race: RaceOnCourse; readonly findings: readonly Finding[] } {
  const { id, division, gradient } = field.race;
  const ends = [startMeasure(course), courseLength(course)] as const;
  const { hills, findings } = gradient ? hillsOf(course, division, id) : { hills: null, findings: [] };
  const swept = sweepOf(field, course.id, ends, plan.clock);
  return { race: runRace(field, ends, hills, swept.sweep), findings: [...findings, ...swept.findings] };
}

/**
 * A field on a course whose calibrated measure runs between two ends, metres; `hills` and `sweep` are `null` where there are none.
 * @example
 * ```ts
 * import { fieldOf, runRace, timesAt } from '@halfcup/core/raceday';
 *
 * const race = { id: 'run', name: 'Pier run', course: 'pier', division: 'run', waves: [{ time: 8 * 3600, entrants: 400 }], finish: { median: 3000, spread: 0.2 }, show: 0.9, late: 'out', gradient: false } as const;
 * const field = fieldOf(race, 10_000, new Map());
 * if (!field.ok) throw new Error(field.findings[0]?.message);
 * const running = runRace(field.value, [0, 10_000], null, null);
 * timesAt(running, 10_000)[0]; // → 30449.3
 * ```
 */
export function runRace(
  field: Field,
  ends: readonly [start: Metres, finish: Metres],
  hills: Hills | null,
  sweep: Sweep | null,
): RaceOnCourse {
  want('runRace', 'field', isField, field);
  want('runRace', 'ends', isEnds, ends);
  want('runRace', 'hills', isHills, hills);
  want('runRace', 'sweep', isSweep, sweep);
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

/**
 * Clock time (seconds after midnight) of every starter at a calibrated measure, in the order of the field, whether the sweep lets them
 * get there or not. The pace slows over the second half, and goes with the hills where the race has some. Throws a RangeError where the
 * measure is beyond the race's ends.
 * @example
 * ```ts
 * import { fieldOf, runRace, timesAt } from '@halfcup/core/raceday';
 *
 * const race = { id: 'run', name: 'Pier run', course: 'pier', division: 'run', waves: [{ time: 8 * 3600, entrants: 400 }], finish: { median: 3000, spread: 0.2 }, show: 0.9, late: 'out', gradient: false } as const;
 * const field = fieldOf(race, 10_000, new Map());
 * if (!field.ok) throw new Error(field.findings[0]?.message);
 * const running = runRace(field.value, [0, 10_000], null, null);
 * const halfway = timesAt(running, 5000);
 * halfway.length; // → 360
 * halfway[0]; // → 29615.5
 * ```
 */
export function timesAt(race: RaceOnCourse, measure: Metres): Float64Array {
  want('timesAt', 'race', isRaceOnCourse, race);
  want('timesAt', 'measure', finite, measure);
  const { field, ends, hills } = race;
  const { start, finish, slow } = field;
  const work = workTo((measure - ends[0]) / (ends[1] - ends[0]), hills);
  const total = workTo(1, hills);
  const times = new Float64Array(start.length);
  for (let i = 0; i < times.length; i++) times[i] = start[i]! + finish[i]! * timeShare(work, total, slow[i]!);
  return times;
}

/**
 * Arrivals at each station over its served passes, races in the order given; a race that no served pass is of is left out.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { arrivalsAt, fieldOf, runRace } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier", "waves": [{ "time": "08:00", "entrants": 400 }], "finish": { "median": "50 min", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "used": { "water": 450 } }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const analysed = analyse(plan, { gpx: new Map() });
 * if (!analysed.ok) throw new Error(analysed.findings[0]?.message);
 * const { stations } = analysed.value;
 * const field = fieldOf(plan.races[0]!, 9794, new Map());
 * if (!field.ok) throw new Error(field.findings[0]?.message);
 * const [at] = arrivalsAt(stations, [runRace(field.value, [0, 9794], null, null)]);
 * at?.races.map(({ race, times }) => [race, times.length, times[0]]); // → [['run', 360, 29524.03]]
 * ```
 */
export function arrivalsAt(stations: readonly PassedStation[], races: readonly RaceOnCourse[]): StationArrivals[] {
  want('arrivalsAt', 'stations', listOf(isPassedStation), stations);
  want('arrivalsAt', 'races', listOf(isRaceOnCourse), races);
  return stations.map((station) => stationArrivals(station, races));
}

function stationArrivals(
  { id, passes }: PassedStation,
  races: readonly RaceOnCourse[],
  drinks?: Drinks,
): StationArrivals {
  const served = races
    .map((race) => ({
      race,
      measures: passes.filter((pass) => pass.served && pass.race === race.field.race.id).map(({ measure }) => measure),
    }))
    .filter(({ measures }) => measures.length > 0);
  const swept = served.flatMap(({ race: { sweep }, measures }) =>
    sweep === null ? [] : measures.map((measure) => sweepAt(sweep, measure)).filter(Number.isFinite),
  );
  return {
    station: id,
    races: served.map(({ race, measures }) => raceArrivals(race, measures, drinks?.get(race.field.race.id))),
    sweep: swept.length === 0 ? null : swept.reduce((a, b) => Math.max(a, b)),
  };
}

/** Measures at which each race is served a drink, ascending. */
export type Drinks = ReadonlyMap<string, readonly Metres[]>;

/** Arrivals at a station, with the time since the last drink where `drinks` are known. */
export const arrivalsAfter = (
  station: PassedStation,
  races: readonly RaceOnCourse[],
  drinks: Drinks,
): StationArrivals => stationArrivals(station, races, drinks);

/** Closer than this two passes are one place to drink, metres. */
const SAME_PLACE = 1;

/** Where the leg begins that ends at a measure: at the last drink before it, else at the start. */
export const legStart = (drinks: readonly Metres[], measure: Metres, start: Metres): Metres =>
  drinks.findLast((before) => before < measure - SAME_PLACE && before > start) ?? start;

/** Arrivals of one race at measures, a runner once for each; by pass where it is known where the race was served before. */
export function raceArrivals(
  race: RaceOnCourse,
  measures: readonly Metres[],
  drinks?: readonly Metres[],
): RaceArrivals {
  const { field } = race;
  const each = measures.map((measure) =>
    passArrivals(race, measure, drinks === undefined ? null : legStart(drinks, measure, race.ends[0])),
  );
  const times = each.length === 1 ? each[0]!.times : mergeSorted(each.map((pass) => pass.times));
  return {
    race: field.race.id,
    division: field.division,
    times,
    ...(drinks === undefined ? {} : { byPass: each }),
    out: field.start.length * measures.length - times.length,
  };
}

/** Who gets to a measure and when, and their mean time from `since` on; 0 where that is `null`. */
function passArrivals(race: RaceOnCourse, measure: Metres, since: Metres | null): PassArrivals {
  const { field, sweep, outFrom } = race;
  const until = sweep === null || field.race.late === 'served' ? Infinity : sweepAt(sweep, measure);
  const all = timesAt(race, measure);
  const before = since === null ? all : timesAt(race, since);
  const times = new Float64Array(all.length);
  let [count, sum] = [0, 0];
  for (let i = 0; i < all.length; i++) {
    if (all[i]! > until || outFrom[i]! <= measure) continue;
    times[count++] = all[i]!;
    sum += all[i]! - before[i]!;
  }
  return { times: sortNearly(times.subarray(0, count)), leg: count === 0 ? 0 : sum / count };
}
