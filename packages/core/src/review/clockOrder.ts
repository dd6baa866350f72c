/**
 * The clock of a course: at each place open, close, sweep, reopen; sweep and reopening later the farther along; at the finish
 * neither before the cutoff of a race.
 */
import type { ClockFault } from '../text/params/reviewTimes.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { cutoffFaults, disordered } from './clockFaults.ts';

const measureOf = (fault: ClockFault): number => (fault.is === 'falls' ? fault.to.measure : fault.measure);

/** A road that is open while runners may come is an error, a sweep that is there too early for the cutoff is not. */
const isGrave = (fault: ClockFault): boolean => fault.is !== 'cutoff' || fault.key === 'reopens';

export const clockOrder: Check = check(
  {
    code: 'clock-order',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: ({ plan }) => (plan.clock.length > 0 ? null : 'no-clock'),
  },
  (layout) => {
    const known = new Map(disordered(layout).map(({ course, faults }) => [course, faults]));
    return layout.plan.courses.flatMap(({ id: course }) => {
      const faults = [...(known.get(course) ?? []), ...cutoffFaults(layout, course)];
      const [first] = faults;
      if (first === undefined) return [];
      return [
        {
          params: { course, faults },
          where: { path: '/clock', course, measure: measureOf(first) },
          measured: faults.length,
          limit: 0,
          ...(faults.some(isGrave) ? {} : { severity: 'warning' as const }),
        },
      ];
    });
  },
);
