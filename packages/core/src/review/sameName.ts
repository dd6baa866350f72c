/** Two stations of one name: on the radio and on paper nobody can tell them apart. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';

const plain = (name: string): string => name.trim().toLowerCase().replaceAll(/\s+/gu, ' ');

export const sameName: Check = check(
  {
    code: 'same-name',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.length > 1 ? null : 'one-station'),
  },
  ({ stations }) => {
    const names = [...new Set(stations.map(({ name }) => plain(name)))];
    return names.flatMap((name) => {
      const alike = stations.filter((station) => plain(station.name) === name);
      if (alike.length < 2) return [];
      return [
        {
          params: { name: alike[0]!.name.trim(), count: alike.length },
          where: { path: `/stations/${alike[1]!.index}/name` },
          measured: alike.length,
          limit: 1,
        },
      ];
    });
  },
);
