/**
 * The whole of race day: fields, arrivals, each station's day, totals, runs. Needs passes and practice
 * only; its tables and hand-out crew feed the layout.
 */
import { courseLength } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import { leadOf } from '../plan/lookups.ts';
import type { FinishTimes, Plan } from '../plan/plan.ts';
import type { CourseTable } from '../station/directions.ts';
import type { Direction } from '../station/station.ts';
import type { Metres } from '../units.ts';
import {
  type Drinks,
  type PassedStation,
  type RaceOnCourse,
  arrivalsAfter,
  legStart,
  racesOnCourses,
} from './arrivals.ts';
import { heatFindings } from './cups.ts';
import { drinksFinding, stationDayFindings, unusedFindings } from './dayFindings.ts';
import type { RaceDay, StationDay } from './day.ts';
import { fieldOf } from './field.ts';
import { type PastResults, resultsKey } from './finishSource.ts';
import { hillsOf } from './hills.ts';
import { oneOfRoom } from './oneOfRoom.ts';
import { totalsOf } from './packs.ts';
import { type PastTimes, readResults } from './results.ts';
import { resupplyOf } from './resupply.ts';
import { type RunSite, runsOf } from './runs.ts';
import { stationDay } from './stationDay.ts';
import { weatherFindings } from './weather.ts';
import { isPlanNames, isPlan } from '../plan/shapes.ts';
import { want, aText, listOf, mapOf } from '../wants.ts';
import { isDayStation, wantTable } from './shapes.ts';

/** A station as race day sees it. */
export interface DayStation extends PassedStation {
  readonly directions: readonly Direction[];
}

/** Texts of the results files that a plan names, by the name it uses. */
export type ResultTexts = ReadonlyMap<string, string>;

/** Whether a plan says who runs, by the waves of at least one race: race day can be worked out for it. */
export function hasField(plan: Plan): boolean {
  want('hasField', 'plan', isPlanNames, plan);
  const { races } = plan;
  return races.some(({ waves }) => waves.length > 0);
}

/** Who runs on the courses: what the day of every station is made from. */
export interface Fields {
  readonly races: readonly RaceOnCourse[];
  /** Of past results, then of the fields, then of their courses and sweeps. */
  readonly findings: readonly Finding[];
}

/** The day of one station, with what is to be said of it. */
export interface DayFound {
  readonly day: StationDay;
  /** The legs that end at the station's served passes, metres: the day is the same while these are. */
  readonly legs: readonly (readonly [from: Metres, to: Metres])[];
  readonly findings: readonly Finding[];
}

/**
 * Race day of a plan from the passes of its stations, in the plan's order; `courses` by id, `texts` of past results by the name that the
 * plan uses. What cannot be reckoned is among the findings; throws where a race's course is not among `courses`.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { raceDayOf } from '@halfcup/core/raceday';
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
 * const { stations, courses } = analysed.value;
 * const table = new Map(courses.map((indexed) => [indexed.course.id, indexed]));
 * const day = raceDayOf(plan, stations, table, new Map());
 * day.stations.map(({ id, arrivals, cups }) => ({ id, arrivals, cups })); // → [{ id: 's1', arrivals: 360, cups: { water: 576, sportsDrink: 288 } }]
 * day.totals.crew; // → 6
 * ```
 */
export function raceDayOf(
  plan: Plan,
  stations: readonly DayStation[],
  courses: CourseTable,
  texts: ResultTexts,
): RaceDay {
  want('raceDayOf', 'plan', isPlan, plan);
  want('raceDayOf', 'stations', listOf(isDayStation), stations);
  wantTable(
    'raceDayOf',
    courses,
    plan.races.map(({ course }) => course),
  );
  want('raceDayOf', 'texts', mapOf(aText), texts);
  const fields = fieldsOf(plan, courses, texts);
  return raceDayFrom(plan, stations, fields, daysOf(plan, stations, fields));
}

/** The fields of all races that have one, on their courses: of the plan, its races and its clock enter. */
export function fieldsOf(plan: Plan, courses: CourseTable, texts: ResultTexts): Fields {
  const past = pastResults(plan, texts);
  const made = plan.races.map((race) => {
    const { course } = courses.get(race.course)!;
    const hills = race.gradient ? hillsOf(course, race.division, race.id).hills : null;
    return fieldOf(race, courseLength(course), past.results, hills);
  });
  const running = racesOnCourses(
    plan,
    courses,
    made.flatMap((field) => (field.ok ? [field.value] : [])),
  );
  return {
    races: running.races,
    // A race without waves is no fault of the day: the review lists them, `no-entrants`.
    findings: [...past.findings, ...made.flatMap(({ findings }) => findings), ...running.findings].filter(
      ({ code }) => code !== 'race-without-waves',
    ),
  };
}

/** Measures at which each race is served a drink: at the served passes of stations with water or sports drink. */
function drinksOf(plan: Plan, stations: readonly DayStation[]): Drinks {
  const drinks = new Map<string, number[]>();
  stations.forEach(({ passes }, index) => {
    if (!plan.stations[index]!.serves.some((kind) => kind !== 'gel')) return;
    for (const { race, measure, served } of passes) {
      if (!served) continue;
      if (!drinks.has(race)) drinks.set(race, []);
      drinks.get(race)!.push(measure);
    }
  });
  for (const measures of drinks.values()) measures.sort((a, b) => a - b);
  return drinks;
}

type Leg = DayFound['legs'][number];

/** The legs that end at a station's served passes, of the races that have a field. */
const legsOf = (station: DayStation, { races }: Fields, drinks: Drinks): Leg[] =>
  races.flatMap(({ field, ends }) =>
    station.passes
      .filter(({ race, served }) => served && race === field.race.id)
      .map(({ measure }): Leg => [legStart(drinks.get(field.race.id) ?? [], measure, ends[0]), measure]),
  );

/** The days of all stations; `known` are those of a plan before, by index, where all but the legs stands as it did. */
export function daysOf(
  plan: Plan,
  stations: readonly DayStation[],
  fields: Fields,
  known: (index: number) => DayFound | undefined = () => undefined,
): DayFound[] {
  const drinks = drinksOf(plan, stations);
  return stations.map((station, index) => {
    const legs = legsOf(station, fields, drinks);
    const before = known(index);
    return before !== undefined && sameLegs(before.legs, legs)
      ? before
      : { ...dayAt(plan, index, station, fields, drinks), legs };
  });
}

const sameLegs = (a: readonly Leg[], b: readonly Leg[]): boolean =>
  a.length === b.length && a.every(([from, to], k) => from === b[k]![0] && to === b[k]![1]);

/** The day of the plan's station at `index`: of the plan, that station, practice, supplies and crew enter. */
function dayAt(
  plan: Plan,
  index: number,
  station: DayStation,
  { races }: Fields,
  drinks: Drinks,
): Pick<DayFound, 'day' | 'findings'> {
  const arrivals = arrivalsAfter(station, races, drinks);
  const served = station.directions.filter((direction) =>
    direction.passes.some((pass) => station.passes[pass]!.served),
  );
  return stationDay(plan, plan.stations[index]!, arrivals, Math.max(served.length, 1));
}

/** Race day from the days of its stations: totals, runs and what is to be said of the whole. */
export function raceDayFrom(
  plan: Plan,
  stations: readonly DayStation[],
  fields: Fields,
  days: readonly DayFound[],
): RaceDay {
  const each = days.map(({ day }) => day);
  const sites = stations.flatMap(siteOf);
  const ran = runsOf(plan, each, sites);
  const resupply = resupplyOf(plan, each, sites);
  const fitted = fields.races.flatMap(({ field }) => field.fitted ?? []);
  return {
    stations: each,
    totals: totalsOf(each),
    runs: ran.runs,
    ...(resupply.length === 0 ? {} : { resupply }),
    ...(fitted.length === 0 ? {} : { fitted }),
    findings: [
      ...fields.findings,
      ...heatFindings(plan),
      ...weatherFindings(plan),
      ...oneOfRoom(days.flatMap(({ day, findings }) => [...findings, ...stationDayFindings(plan, day)])),
      ...drinksFinding(
        days.map(({ day, legs }) => ({ ...day, shortestLeg: Math.min(...legs.map(([from, to]) => to - from)) })),
      ),
      ...unusedFindings(plan),
      ...ran.findings,
    ],
  };
}

/** A station's place on the course of its lead direction; none where no race passes it. */
function siteOf(station: DayStation): RunSite[] {
  const lead = leadOf(station);
  return lead === undefined
    ? []
    : [{ station: station.id, course: lead.course, measure: lead.measure, side: lead.side }];
}

/** Every column of past results that a race or a wave names, each read once. */
function pastResults(
  { races }: Plan,
  texts: ResultTexts,
): { readonly results: PastResults; readonly findings: readonly Finding[] } {
  const results = new Map<string, PastTimes>();
  const tried = new Set<string>();
  const findings: Finding[] = [];
  const named = races
    .flatMap(({ finish, waves }) => [finish, ...waves.map((wave) => wave.finish)])
    .filter((one): one is Extract<FinishTimes, { csv: string }> => one !== undefined && 'csv' in one);
  for (const { csv, column } of named) {
    const key = resultsKey(csv, column);
    const text = texts.get(csv);
    if (tried.has(key) || text === undefined) continue;
    tried.add(key);
    const read = readResults(text, column, csv);
    findings.push(...read.findings);
    if (read.ok) results.set(key, read.value);
  }
  return { results, findings };
}
