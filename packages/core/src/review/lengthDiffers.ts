/**
 * A course whose stated length and whose drawn line disagree by more than the tolerance of course measurement.
 * Source: IAAF rule 240 (2004–05, 2009) and USATF: uncertainty at most 0.1 %, 42 m of a marathon.
 */
import { rawLength, startMeasure } from '../course/course.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { PlanCourse } from '../plan/plan.ts';
import { type Check, type Found, check, metres } from './check.ts';

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

function differing({ id, name, length, drawn }: PlanCourse, index: number, courses: readonly IndexedCourse[]): Found[] {
  if (length === undefined) return [];
  const { course } = courses.find((indexed) => indexed.course.id === id)!;
  const stated = length - startMeasure(course);
  const raw = rawLength(course);
  const allowed = stated * TOLERANCE;
  if (Math.abs(raw - stated) <= allowed) return [];
  const way = raw > stated ? 'longer' : 'shorter';
  const why = drawn === 'recorded' ? ' A recorded track wanders and usually runs long.' : '';
  const message = `Course "${name}" is stated as ${metres(stated)}, but its line is ${metres(raw)}: ${metres(Math.abs(raw - stated))} ${way}, where ${metres(allowed)} is the tolerance of course measurement.${why} Course distances are stretched to the stated length; mend the line or the length. No GPX file certifies a course: only a measurement on the road does.`;
  return [
    {
      message,
      where: { path: `/courses/${index}/length`, course: id },
      measured: raw,
      limit: [stated - allowed, stated + allowed],
      unit: 'm',
    },
  ];
}
