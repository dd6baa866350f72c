/**
 * The whole job as one pure function: a plan and the files it names in, an Analysis out.
 * In stages that a caller can keep: courses depend on the plan's courses and the files only; who
 * passes where on those and the stations; race day on that; the layout on all; the review on the layout.
 */
import { type Course, courseLength, startMeasure } from './course/course.ts';
import type { IndexedCourse } from './course/segmentIndex.ts';
import { type Finding, type Result, bad, good } from './finding.ts';
import { type SeenStation, courseTable, laySeen, seeStation } from './layout/layStation.ts';
import type { Layout } from './layout/layout.ts';
import { type Sources as CourseSources, coursesOf } from './plan/courses.ts';
import type { Plan } from './plan/plan.ts';
import type { RaceDay } from './raceday/day.ts';
import { type ResultTexts, hasField, raceDayOf } from './raceday/raceDay.ts';
import { type CheckRun, reviewLayout } from './review/review.ts';
import { spacingOf } from './station/spacing.ts';

/** Files that a plan names, already read, by the name used in the plan. */
export interface Sources extends CourseSources {
  /** Texts of past results. */
  readonly results?: ResultTexts;
}

export interface Analysis extends Layout {
  /** `null` where no race of the plan has waves. */
  readonly day: RaceDay | null;
  /** Of the courses first, then of race day, then of the layout by check; waived ones marked. */
  readonly findings: readonly Finding[];
  /** Every check, also those that found nothing or could not run. */
  readonly checks: readonly CheckRun[];
}

/** First stage: the plan's courses, measured, indexed and calibrated. Errors: a missing file, a refused gap, a part beyond its course. */
export const courseStage = (plan: Plan, sources: CourseSources): Result<readonly IndexedCourse[]> => coursesOf(plan, sources);

/** Second stage: where each station stands and who passes it. Errors: a station at a measure that its course does not have. */
export function passStage(plan: Plan, courses: readonly IndexedCourse[]): Result<readonly SeenStation[]> {
  const table = courseTable(courses);
  const seen = plan.stations.map((_, index) => seeStation(plan, index, table));
  const findings = seen.flatMap((result) => result.findings);
  const stations = seen.flatMap((result) => (result.ok ? [result.value] : []));
  return stations.length < seen.length ? bad(findings) : good(stations, findings);
}

/** Third stage: race day, or `null` where no race of the plan has waves. */
export const dayStage = (plan: Plan, courses: readonly IndexedCourse[], seen: readonly SeenStation[], results: ResultTexts = new Map()): RaceDay | null =>
  hasField(plan) ? raceDayOf(plan, seen, courseTable(courses), results) : null;

const endsOf = (course: Course): [number, number] => [startMeasure(course), courseLength(course)];

/** Fourth stage: items and spacing, with the tables and the hand-out line of race day where there is one. Errors: see `passStage`. */
export function layoutStage(plan: Plan, courses: readonly IndexedCourse[], day: RaceDay | null = null): Result<Layout> {
  const seen = passStage(plan, courses);
  return seen.ok ? good(layoutOfSeen(plan, courses, seen.value, day), seen.findings) : seen;
}

function layoutOfSeen(plan: Plan, courses: readonly IndexedCourse[], seen: readonly SeenStation[], day: RaceDay | null): Layout {
  const table = courseTable(courses);
  const days = new Map(day?.stations.filter(({ quantiles }) => quantiles !== null).map((station) => [station.id, station]));
  const stations = seen.map((station) => laySeen(plan, station, table, days.get(station.id)));
  return { plan, courses, stations, spacing: plan.races.map((race) => spacingOf(race, endsOf(table.get(race.course)!.course), stations)) };
}

/** The whole job. Not ok where the plan cannot be used; what is wrong with a usable one is in `value.findings`. */
export function analyse(plan: Plan, sources: Sources): Result<Analysis> {
  const courses = courseStage(plan, sources);
  if (!courses.ok) return courses;
  const seen = passStage(plan, courses.value);
  if (!seen.ok) return bad([...courses.findings, ...seen.findings]);
  const day = dayStage(plan, courses.value, seen.value, sources.results);
  const layout = layoutOfSeen(plan, courses.value, seen.value, day);
  return good({ ...layout, day, ...reviewLayout(layout, [...courses.findings, ...seen.findings, ...(day?.findings ?? [])]) });
}
