/** A station that its races pass, and that serves none of those passes. */
import { servesRace } from '../station/directions.ts';
import { type Check, COMMON_PRACTICE, atStation, check, named } from './check.ts';

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
      const ends = own.every((pass) => pass.end !== undefined);
      const why = ends ? 'its pin lies beyond an end of the course' : 'the plan lists no pass that exists';
      const message = `${named(station)} serves nobody: ${why}. Move its pin beside the course, or name the pass in "passes".`;
      return [{ message, where: { ...atStation(station), course: own[0]!.course, measure: own[0]!.measure } }];
    }),
);
