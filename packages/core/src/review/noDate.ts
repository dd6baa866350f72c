/** A plan without the day of its race. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';

export const noDate: Check = check({ code: 'no-date', severity: 'note', source: COMMON_PRACTICE }, ({ plan }) =>
  plan.date === undefined ? [{ params: { waivers: plan.waivers.length }, where: { path: '/date' } }] : [],
);
