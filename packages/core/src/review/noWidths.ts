/** Stations whose road has no width: room beside the tables cannot be checked there. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';

export const noWidths: Check = check(
  {
    code: 'no-widths',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.length > 0 ? null : 'no-stations'),
  },
  ({ stations }) => {
    const without = stations.filter(({ station }) => station.width === undefined);
    if (without.length === 0) return [];
    const all = without.length === stations.length;
    return [
      {
        params: { all, stations: without.map(({ id }) => id) },
        where: { path: '/stations' },
        measured: without.length,
        limit: 0,
      },
    ];
  },
);
