/** Fewer people on the roster than a station needs while it serves. Plans without a roster are not asked for one. */
import { byId } from '../plan/lookups.ts';
import { presenceAt } from '../raceday/rostered.ts';
import { type Check, COMMON_PRACTICE, atStation, dayCheck } from './check.ts';

export const rosterShort: Check = dayCheck(
  { code: 'roster-short', severity: 'warning', source: COMMON_PRACTICE },
  ({ plan, stations }, { day }) => {
    if ((plan.people?.crew ?? []).length === 0) return [];
    return day.stations.flatMap((own) => {
      const station = byId(stations, own.id);
      const found = presenceAt(plan, station.station, own);
      if (found === null || found.there >= found.needed) return [];
      const { there, at, needed } = found;
      return [
        {
          params: { there, at, needed },
          where: atStation(station, 'crew'),
          measured: there,
          limit: needed,
          unit: 'people',
        },
      ];
    });
  },
);
