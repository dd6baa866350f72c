/** A share of starters that is a slip of the pen: 0.09 for 0.9. That nobody starts is found by itself. */
import { type Check, COMMON_PRACTICE, check, noWaves } from './check.ts';

/** Fewer than this share of the entrants never start: common practice, no source. */
const LEAST = 0.5;

export const showLow: Check = check(
  { code: 'show-low', severity: 'warning', source: COMMON_PRACTICE, missing: noWaves },
  ({ plan }) =>
    plan.races.flatMap(({ id, show, waves }, k) =>
      waves.length === 0 || show === 0 || show >= LEAST
        ? []
        : [
            {
              params: { race: id, show, least: LEAST },
              where: { path: `/races/${k}/show`, race: id },
              measured: show,
              limit: LEAST,
            },
          ],
    ),
);
