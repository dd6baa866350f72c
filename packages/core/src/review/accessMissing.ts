/** A station that no truck is told how to reach: neither an access nor a drop point. */
import { type Check, COMMON_PRACTICE, atStation, check, named } from './check.ts';

export const accessMissing: Check = check(
  {
    code: 'access-missing',
    severity: 'note',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.some(({ station }) => station.points.length > 0) ? null : 'no-points'),
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      if (station.station.points.some(({ kind }) => kind === 'access' || kind === 'drop')) return [];
      const message = `${named(station)} has no access and no drop point; expected one, so that supplies and an ambulance know where to drive. Add it to "points".`;
      return [{ message, where: atStation(station) }];
    }),
);
