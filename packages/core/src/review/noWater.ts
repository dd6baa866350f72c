/** A race that is served along its course, and nowhere plain water. One that is served nowhere: `race-unserved`. */
import { servedOn } from '../layout/stretches.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';

export const noWater: Check = check(
  { code: 'no-water', severity: 'error', source: COMMON_PRACTICE },
  ({ plan, stations }) => {
    const stops = stations.flatMap(({ station, passes }) =>
      passes.filter(({ served }) => served).map(({ race }) => ({ race, water: servedOn(station).includes('water') })),
    );
    const dry = plan.races
      .map(({ id }) => id)
      .filter((id) => {
        const own = stops.filter(({ race }) => race === id);
        return own.length > 0 && !own.some(({ water }) => water);
      });
    return dry.length === 0
      ? []
      : [
          {
            params: { races: dry },
            where: { path: '/stations', ...(dry.length === 1 ? { race: dry[0]! } : {}) },
            measured: dry.length,
            limit: 0,
          },
        ];
  },
);
