/** A station that its races pass, and that serves none of those passes. */
import { servesRace } from '../station/directions.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

export const stationUnserved: Check = check(
  {
    code: 'station-unserved',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const own = station.passes.filter((pass) => servesRace(station.station, pass.race));
      if (own.length === 0 || station.passes.some((pass) => pass.served)) return [];
      const beyondEnd = own.every((pass) => pass.end !== undefined);
      return [
        { params: { beyondEnd }, where: { ...atStation(station), course: own[0]!.course, measure: own[0]!.measure } },
      ];
    }),
);
