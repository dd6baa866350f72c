/** What is asked of points recorded on the ground; listed with the checks of a review that was given some. */
import { COMMON_PRACTICE, type Rule } from './check.ts';

export const PLACED_RULES: readonly Rule[] = [
  { code: 'placed-hdop', severity: 'note', title: 'Recorded errors are more than 0', source: COMMON_PRACTICE },
  {
    code: 'placed-unknown',
    severity: 'warning',
    title: 'Every recorded point is something that the plan has',
    source: COMMON_PRACTICE,
  },
  {
    code: 'placed-ambiguous',
    severity: 'warning',
    title: 'Every recorded point is one thing only',
    source: COMMON_PRACTICE,
  },
  {
    code: 'placed-off-course',
    severity: 'warning',
    title: 'Every recorded point stands by the course',
    source: COMMON_PRACTICE,
  },
  {
    code: 'placed-missing',
    severity: 'warning',
    title: 'Every sign, table and trash drop was recorded',
    source: COMMON_PRACTICE,
  },
  {
    code: 'placed-distance',
    severity: 'error',
    title: 'Recorded signs and trash drops keep their distance from the tables',
    source: `${COMMON_PRACTICE}; decided by JCGM 106:2012, guard bands`,
  },
  {
    code: 'placed-wheel-unread',
    severity: 'warning',
    title: 'Every wheel reading says a length',
    source: COMMON_PRACTICE,
  },
  {
    code: 'placed-wheel-unused',
    severity: 'warning',
    title: 'Every wheel reading can be held against course distance',
    source: COMMON_PRACTICE,
  },
  { code: 'placed-wheel-differs', severity: 'warning', title: 'Wheel and positions agree', source: COMMON_PRACTICE },
  {
    code: 'placed-wheel-needed',
    severity: 'warning',
    title: 'The errors are smaller than the tolerance',
    source: 'JCGM 106:2012',
  },
  {
    code: 'placed-side',
    severity: 'warning',
    title: 'Everything stands on its side of the road',
    source: COMMON_PRACTICE,
  },
  {
    code: 'placed-order',
    severity: 'warning',
    title: 'Runners meet sign, tables and trash in the planned order',
    source: COMMON_PRACTICE,
  },
];
