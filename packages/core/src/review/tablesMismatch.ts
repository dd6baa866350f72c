/** Tables that do not go with what a station serves: none for a kind that it serves, or some for one that it does not. */
import type { Served } from '../plan/plan.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

const KINDS: readonly Served[] = ['gel', 'sportsDrink', 'water'];

export const tablesMismatch: Check = check(
  {
    code: 'tables-mismatch',
    lost: true,
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const { serves, tables } = station.station;
      return KINDS.flatMap((kind) => {
        const count = tables[kind];
        if (count === undefined || serves.includes(kind) === count > 0) return [];
        return [
          {
            params: { item: kind, tables: count },
            where: { ...atStation(station, `tables/${kind}`), item: kind },
            measured: count,
          },
        ];
      });
    }),
);
