/**
 * A course whose stated length and whose drawn line disagree by more than the tolerance of course measurement.
 * Source: IAAF rule 240 (2004–05, 2009) and USATF: uncertainty at most 0.1 %, 42 m of a marathon.
 */
import { rawLength, startMeasure } from '../course/course.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { PlanCourse } from '../plan/plan.ts';
import { courseById } from '../plan/lookups.ts';
import { type Case, type Check, check } from './check.ts';

const TOLERANCE = 0.001;

export const lengthDiffers: Check = check(
  {
    code: 'length-differs',
    severity: 'warning',
    source: 'World Athletics (IAAF) rule 240 and USATF course measurement: 0.1 %, 42 m of a marathon (read)',
    missing: ({ plan }) => (plan.courses.some(({ length }) => length !== undefined) ? null : 'no-length'),
  },
  ({ plan, courses }) => plan.courses.flatMap((course, index) => differing(course, index, courses)),
);

function differing(
  { id, length, drawn }: PlanCourse,
  index: number,
  courses: readonly IndexedCourse[],
): Case<'length-differs'>[] {
  if (length === undefined) return [];
  const { course } = courseById(courses, id);
  const stated = length - startMeasure(course);
  const raw = rawLength(course);
  const allowed = stated * TOLERANCE;
  if (Math.abs(raw - stated) <= allowed) return [];
  return [
    {
      params: { stated, line: raw, allowed, recorded: drawn === 'recorded' },
      where: { path: `/courses/${index}/length`, course: id },
      measured: raw,
      limit: [stated - allowed, stated + allowed],
      unit: 'm',
    },
  ];
}
