/** A station that its races pass, and that serves none of those passes. */
import { servesRace } from '../station/directions.ts';
import type { StationLayout } from '../layout/layout.ts';
import { type Check, COMMON_PRACTICE, atStation, check, isServing } from './check.ts';

export const stationUnserved: Check = check(
  {
    code: 'station-unserved',
    severity: 'warning',
    lost: true,
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const own = station.passes.filter((pass) => servesRace(station.station, pass.race));
      if (station.nearest !== null || isServing(station) || namesUnknown(station)) return [];
      const beyondEnd = own.length > 0 && own.every((pass) => pass.end !== undefined);
      const [first] = own;
      const where = first === undefined ? {} : { course: first.course, measure: first.measure };
      return [{ params: { beyondEnd }, where: { ...atStation(station), ...where } }];
    }),
);

/** Where the plan names a time that a race does not come past, that is why. */
const namesUnknown = ({ station: { passes: choice }, passes }: StationLayout): boolean =>
  typeof choice !== 'string' &&
  choice.some(({ race, pass: index }) => !passes.some((pass) => pass.race === race && pass.pass === index));
