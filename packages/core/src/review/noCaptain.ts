/** Stations without a captain, or whose captain has neither call sign nor telephone. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { saysNothing } from '../plan/placeholder.ts';

export const noCaptain: Check = check(
  {
    code: 'no-captain',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.length > 0 ? null : 'no-stations'),
  },
  ({ stations }) => {
    const unnamed = stations.filter(({ station }) => saysNothing(station.people.captain));
    const unreached = stations.filter(
      ({ station: { people } }) =>
        !saysNothing(people.captain) && saysNothing(people.radio) && saysNothing(people.phone),
    );
    if (unnamed.length + unreached.length === 0) return [];
    const ids = (list: typeof stations): string[] => list.map(({ id }) => id);
    const all = unnamed.length === stations.length;
    return [
      {
        params: { all, unnamed: ids(unnamed), unreached: ids(unreached) },
        where: { path: '/stations' },
        measured: unnamed.length + unreached.length,
        limit: 0,
      },
    ];
  },
);
