/** Races of which nobody says who runs and when: nothing of their day is worked out or checked. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';

export const noEntrants: Check = check(
  { code: 'no-entrants', severity: 'warning', source: COMMON_PRACTICE },
  ({ plan: { races } }) => {
    const without = races.filter(({ waves }) => waves.length === 0).map(({ id }) => id);
    if (without.length === 0) return [];
    return [
      {
        params: { races: without, all: without.length === races.length },
        where: { path: '/races' },
        measured: without.length,
        limit: 0,
      },
    ];
  },
);
