/** A cutoff that more than the slowest tenth of a race cannot meet. */
import { raceArrivals } from '../raceday/arrivals.ts';
import { type Check, COMMON_PRACTICE, dayCheck } from './check.ts';

/** Share of the starters who may be stopped. */
const MOST = 0.1;

export const cutoffStopsMany: Check = dayCheck(
  {
    code: 'cutoff-stops-many',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ plan }) =>
      plan.races.some(({ cutoff }) => cutoff !== undefined) || plan.clock.some(({ sweep }) => sweep !== undefined)
        ? null
        : 'no-cutoff',
  },
  ({ plan }, { races }) =>
    races.flatMap((running) => {
      const { race, start } = running.field;
      if (running.sweep === null || race.late === 'served') return [];
      const stopped = raceArrivals(running, [running.ends[1]]).out;
      const starters = start.length;
      if (stopped <= starters * MOST) return [];
      return [
        {
          params: { race: race.id, stopped, starters, most: MOST },
          where: { path: `/races/${plan.races.findIndex(({ id }) => id === race.id)}`, race: race.id },
          measured: stopped / starters,
          limit: MOST,
        },
      ];
    }),
);
