/** What is asked of points recorded on the ground; listed with the checks of a review that was given some. */
import type { CheckCode } from '../text/params/checks.ts';
import { COMMON_PRACTICE, type Rule, ruled } from './check.ts';

const placedRule = (code: CheckCode, severity: Rule['severity'], source: string = COMMON_PRACTICE): Rule =>
  ruled({ code, severity, source });

/** What is asked of points recorded on the ground, in the order in which it is reported. */
export const PLACED_RULES: readonly Rule[] = [
  placedRule('placed-hdop', 'note'),
  placedRule('placed-unknown', 'warning'),
  placedRule('placed-ambiguous', 'warning'),
  placedRule('placed-off-course', 'warning'),
  placedRule('placed-missing', 'warning'),
  placedRule('placed-swapped', 'warning'),
  placedRule('placed-far', 'error', `${COMMON_PRACTICE}; decided by JCGM 106:2012, guard bands`),
  placedRule('placed-distance', 'error', `${COMMON_PRACTICE}; decided by JCGM 106:2012, guard bands`),
  placedRule('placed-wheel-unread', 'warning'),
  placedRule('placed-wheel-unused', 'warning'),
  placedRule('placed-wheel-differs', 'warning'),
  placedRule('placed-wheel-needed', 'warning', 'JCGM 106:2012'),
  placedRule('placed-side', 'warning'),
  placedRule('placed-order', 'warning'),
];
