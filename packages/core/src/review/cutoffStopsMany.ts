/** A cutoff that more than the slowest tenth of a race cannot meet. */
import { type RaceOnCourse, raceArrivals } from '../raceday/arrivals.ts';
import { type Check, COMMON_PRACTICE, dayCheck } from './check.ts';

/** Share of the starters who may be stopped. */
const MOST = 0.1;

/** Starters who are not at the finish before the sweep, nor before a cutoff that is earlier than that. */
function stoppedOf(running: RaceOnCourse): number {
  const { field, ends } = running;
  const { cutoff = Infinity } = field.race;
  const { times } = raceArrivals(running, [ends[1]]);
  return field.start.length - times.filter((time) => time <= cutoff).length;
}

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
      // A cutoff before the last start is an error by itself.
      if (running.sweep === null || race.late === 'served') return [];
      const stopped = stoppedOf(running);
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
