/** Tables that do not go with what a station serves: none for a kind that it serves, or some for one that it does not. */
import type { Served } from '../plan/plan.ts';
import { itemWord } from '../station/wording.ts';
import { type Check, COMMON_PRACTICE, atStation, check, named } from './check.ts';

const KINDS: readonly Served[] = ['gel', 'sportsDrink', 'water'];

export const tablesMismatch: Check = check(
  {
    code: 'tables-mismatch',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const { serves, tables } = station.station;
      return KINDS.flatMap((kind) => {
        const count = tables[kind];
        if (count === undefined || serves.includes(kind) === count > 0) return [];
        const word = itemWord(kind).toLowerCase();
        const message = serves.includes(kind)
          ? `${named(station)} serves ${word} on 0 tables: nothing of it is laid out, and its sign does not name it. Give it a table, or take it out of "serves".`
          : `${named(station)} has ${count} tables of ${word}, which it does not serve: they are not laid out. Add it to "serves", or take the tables out.`;
        return [{ message, where: { ...atStation(station, `tables/${kind}`), item: kind }, measured: count }];
      });
    }),
);
