/**
 * A pass of a race that the station serves, by the same tables, that the default leaves unserved:
 * runners on their way back, or on another leg. Where the plan lists passes, or asks for all, it has
 * said what it means.
 */
import { servesRace } from '../station/directions.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const seenNotServed: Check = check(
  {
    code: 'seen-not-served',
    severity: 'note',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const seen = station.passes.filter(
        (pass) => !pass.served && pass.end === undefined && servesRace(station.station, pass.race),
      );
      if (station.station.passes !== 'lead' || seen.length === 0) return [];
      const nearest = seen.reduce((near, pass) => (pass.distance < near.distance ? pass : near), seen[0]!);
      const list = seen
        .map(
          ({ race, pass, measure, distance }) =>
            `race "${race}" at ${metres(measure)} (pass ${pass}, ${metres(distance)} from the pin)`,
        )
        .join('; ');
      const message = `Runners who pass ${named(station)} in another direction than the lead's are not served: ${list}. Only the lead direction is, unless the plan says otherwise: list all served passes under "passes", be it to serve these too or to confirm that they are not.`;
      return [
        {
          message,
          where: {
            ...atStation(station, 'passes'),
            course: nearest.course,
            race: nearest.race,
            measure: nearest.measure,
          },
          measured: nearest.distance,
          limit: station.practice.snapRadius,
          unit: 'm',
        },
      ];
    }),
);
