/**
 * The whole of race day: fields, arrivals, each station's day, totals, runs. Needs passes and practice
 * only; its tables and hand-out crew feed the layout.
 */
import { courseLength } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { FinishTimes, Plan } from '../plan/plan.ts';
import type { CourseTable } from '../station/directions.ts';
import type { Direction } from '../station/station.ts';
import { type PassedStation, arrivalsAt, racesOnCourses } from './arrivals.ts';
import { heatFindings } from './cups.ts';
import type { Field, RaceDay } from './day.ts';
import { fieldOf, resultsKey } from './field.ts';
import { totalsOf } from './packs.ts';
import { readResults } from './results.ts';
import { type RunSite, runsOf } from './runs.ts';
import { stationDay } from './stationDay.ts';

/** A station as race day sees it. */
export interface DayStation extends PassedStation {
  readonly directions: readonly Direction[];
}

/** Texts of the results files that a plan names, by the name it uses. */
export type ResultTexts = ReadonlyMap<string, string>;

/** Whether a plan says who runs: race day can be reckoned for it. */
export const hasField = ({ races }: Plan): boolean => races.some(({ waves }) => waves.length > 0);

/** Race day of a plan whose stations have been seen by their courses; stations in the plan's order. */
export function raceDayOf(plan: Plan, stations: readonly DayStation[], courses: CourseTable, texts: ResultTexts): RaceDay {
  const past = pastResults(plan, texts);
  const made = plan.races.map((race) => fieldOf(race, courseLength(courses.get(race.course)!.course), past.results));
  const fields: Field[] = made.flatMap((field) => (field.ok ? [field.value] : []));
  const running = racesOnCourses(plan, courses, fields);
  const arrivals = arrivalsAt(stations, running.races);
  const days = stations.map(({ id, directions }, k) => {
    const served = directions.filter((direction) => direction.passes.some((pass) => stations[k]!.passes[pass]!.served));
    return stationDay(plan, plan.stations.find((station) => station.id === id)!, arrivals[k]!, Math.max(served.length, 1));
  });
  const each = days.map(({ day }) => day);
  const ran = runsOf(plan, each, stations.flatMap(siteOf));
  return {
    stations: each,
    totals: totalsOf(each),
    runs: ran.runs,
    findings: [...past.findings, ...made.flatMap(({ findings }) => findings), ...running.findings, ...heatFindings(plan), ...days.flatMap(({ findings }) => findings), ...ran.findings],
  };
}

/** A station's place on the course of its lead direction; none where no race passes it. */
function siteOf({ id, directions }: DayStation): RunSite[] {
  const lead = directions.find((direction) => direction.lead);
  return lead === undefined ? [] : [{ station: id, course: lead.course, measure: lead.measure, side: lead.side }];
}

/** Every column of past results that a race or a wave names, each read once. */
function pastResults({ races }: Plan, texts: ResultTexts): { readonly results: ReadonlyMap<string, readonly number[]>; readonly findings: readonly Finding[] } {
  const results = new Map<string, readonly number[]>();
  const findings: Finding[] = [];
  const named = races.flatMap(({ finish, waves }) => [finish, ...waves.map((wave) => wave.finish)]).filter((one): one is Extract<FinishTimes, { csv: string }> => one !== undefined && 'csv' in one);
  for (const { csv, column } of named) {
    const key = resultsKey(csv, column);
    const text = texts.get(csv);
    if (results.has(key) || text === undefined) continue;
    const read = readResults(text, column, csv);
    findings.push(...read.findings);
    if (read.ok) results.set(key, read.value.times);
  }
  return { results, findings };
}
