/** First aid along the courses: a point anywhere, and one in the second half of each course that is longer than a leg may be. */
import { courseLength, startMeasure } from '../course/course.ts';
import { passesOf } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { Layout } from '../layout/layout.ts';
import { findCourse } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, check } from './check.ts';
import { type StationPoint, pointsOfKind } from './points.ts';

/** As far from a course a medical point is one of its own, metres. */
const NEAR = 250;

export const noMedical: Check = check(
  {
    code: 'no-medical',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.length > 0 ? null : 'no-stations'),
  },
  (layout) => {
    const medical = pointsOfKind(layout, 'medical');
    const where = { path: '/stations' };
    const of = (count: number): Pick<Case<'no-medical'>, 'measured' | 'limit'> => ({ measured: count, limit: 0 });
    if (medical.length === 0) return [{ params: { none: true, courses: [] }, where, ...of(raced(layout).length) }];
    const courses = raced(layout).filter((course) => lacksLate(course, medical, layout));
    return courses.length === 0
      ? []
      : [{ params: { none: false, courses: courses.map(({ course }) => course.id) }, where, ...of(courses.length) }];
  },
);

/** Courses that a race runs on. */
const raced = ({ plan, courses }: Layout): IndexedCourse[] =>
  [...new Set(plan.races.map(({ course }) => course))].map((id) => findCourse(courses, id)!);

/** On a short course help comes from its ends. */
function lacksLate(indexed: IndexedCourse, medical: readonly StationPoint[], { plan }: Layout): boolean {
  const [start, length] = [startMeasure(indexed.course), courseLength(indexed.course)];
  if (length - start <= plan.practice.maxSpacing) return false;
  const half = (start + length) / 2;
  return !medical.some(
    ({ point, station }) =>
      station.passes.some((pass) => pass.course === indexed.course.id && pass.measure >= half) ||
      passesOf(indexed, point.at, { snapRadius: NEAR }).some(({ measure }) => measure >= half),
  );
}
