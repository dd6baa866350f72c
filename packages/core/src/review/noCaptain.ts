/** Stations without a captain, or whose captain has neither call sign nor telephone. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';

const isEmpty = (text: string | undefined): boolean => (text ?? '').trim() === '';

export const noCaptain: Check = check(
  {
    code: 'no-captain',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.length > 0 ? null : 'no-stations'),
  },
  ({ stations }) => {
    const unnamed = stations.filter(({ station }) => isEmpty(station.people.captain));
    const unreached = stations.filter(
      ({ station: { people } }) => !isEmpty(people.captain) && isEmpty(people.radio) && isEmpty(people.phone),
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
