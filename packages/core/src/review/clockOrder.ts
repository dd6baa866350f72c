/** The clock of a course: at each place open, close, sweep, reopen; sweep and reopening later the farther along. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { disordered } from './clockFaults.ts';

export const clockOrder: Check = check(
  {
    code: 'clock-order',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: ({ plan }) => (plan.clock.length > 0 ? null : 'no-clock'),
  },
  (layout) =>
    disordered(layout).map(({ course, faults }) => {
      const [first] = faults;
      const measure = first!.is === 'order' ? first!.measure : first!.to.measure;
      return {
        params: { course, faults },
        where: { path: '/clock', course, measure },
        measured: faults.length,
        limit: 0,
      };
    }),
);
