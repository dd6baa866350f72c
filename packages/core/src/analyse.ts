/**
 * The whole job as one pure function: a plan and the files it names in, an Analysis out.
 * In stages that a caller can keep: courses depend on the plan's courses and the files only;
 * the layout on those and the plan; the review on the layout.
 */
import { type Course, courseLength, startMeasure } from './course/course.ts';
import type { IndexedCourse } from './course/segmentIndex.ts';
import { type Finding, type Result, bad, good } from './finding.ts';
import { courseTable, layStation } from './layout/layStation.ts';
import type { Layout } from './layout/layout.ts';
import { type Sources, coursesOf } from './plan/courses.ts';
import type { Plan } from './plan/plan.ts';
import { type CheckRun, reviewLayout } from './review/review.ts';
import { spacingOf } from './station/spacing.ts';

export interface Analysis extends Layout {
  /** Of the courses first, then of the layout by check; waived ones marked. */
  readonly findings: readonly Finding[];
  /** Every check, also those that found nothing or could not run. */
  readonly checks: readonly CheckRun[];
}

/** First stage: the plan's courses, measured, indexed and calibrated. Errors: a missing file, a refused gap, a part beyond its course. */
export const courseStage = (plan: Plan, sources: Sources): Result<readonly IndexedCourse[]> => coursesOf(plan, sources);

const endsOf = (course: Course): [number, number] => [startMeasure(course), courseLength(course)];

/** Second stage: passes, directions, items and spacing. Errors: a station at a measure that its course does not have. */
export function layoutStage(plan: Plan, courses: readonly IndexedCourse[]): Result<Layout> {
  const table = courseTable(courses);
  const laid = plan.stations.map((_, index) => layStation(plan, index, table));
  const findings = laid.flatMap((result) => result.findings);
  const stations = laid.flatMap((result) => (result.ok ? [result.value] : []));
  if (stations.length < laid.length) return bad(findings);
  const spacing = plan.races.map((race) => spacingOf(race, endsOf(table.get(race.course)!.course), stations));
  return good({ plan, courses, stations, spacing }, findings);
}

/** The whole job. Not ok where the plan cannot be used; what is wrong with a usable one is in `value.findings`. */
export function analyse(plan: Plan, sources: Sources): Result<Analysis> {
  const courses = courseStage(plan, sources);
  if (!courses.ok) return courses;
  const layout = layoutStage(plan, courses.value);
  if (!layout.ok) return bad([...courses.findings, ...layout.findings]);
  return good({ ...layout.value, ...reviewLayout(layout.value, [...courses.findings, ...layout.findings]) });
}
