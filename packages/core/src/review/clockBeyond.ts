/** Road times at a place that their course does not have: beyond its finish, or before its start. */
import { courseLength, startMeasure } from '../course/course.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanCourse } from '../plan/plan.ts';
import { type Case, type Check, COMMON_PRACTICE, check } from './check.ts';
import { courseOf } from './standing.ts';

/** Road times are given in round distances: so many metres, or so much of a course, is no fault; of a recorded line what it may wander. */
const ROUND = 100;
const DRAWN = 0.005;
const RECORDED = 0.03;

function casesOf({ id, drawn }: PlanCourse, layout: Layout): Case<'clock-beyond'>[] {
  const { course } = courseOf(layout, id);
  const [start, length] = [startMeasure(course), courseLength(course)];
  const room = Math.max(ROUND, (length - start) * (drawn === 'recorded' ? RECORDED : DRAWN));
  const beyond = ({ measure }: { readonly measure: number }): number => Math.max(measure - length, start - measure);
  const off = layout.plan.clock
    .map((entry, index) => ({ ...entry, index }))
    .filter((entry) => entry.course === id && beyond(entry) > room)
    .sort((a, b) => beyond(b) - beyond(a));
  const [worst] = off;
  if (worst === undefined) return [];
  return [
    {
      params: { course: id, measure: worst.measure, start, length, count: off.length },
      where: { path: `/clock/${worst.index}/measure`, course: id },
      measured: worst.measure,
      limit: [start, length],
      unit: 'm',
    },
  ];
}

export const clockBeyond: Check = check(
  {
    code: 'clock-beyond',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: ({ plan }) => (plan.clock.length > 0 ? null : 'no-clock'),
  },
  (layout) => layout.plan.courses.flatMap((course) => casesOf(course, layout)),
);
