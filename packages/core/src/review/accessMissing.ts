/** A station that no truck is told how to reach: neither an access nor a drop point. */
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

export const accessMissing: Check = check(
  {
    code: 'access-missing',
    lost: true,
    severity: 'note',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.some(({ station }) => station.points.length > 0) ? null : 'no-points'),
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      if (station.station.points.some(({ kind }) => kind === 'access' || kind === 'drop')) return [];
      return [{ params: {}, where: atStation(station) }];
    }),
);
