/** Tables laid out farther beside the course line than a road is wide, because the pin stands there. */
import { isTable } from '../layout/layout.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

/** Half of a wide road and its verge, metres. */
const WIDEST = 15;

export const tablesFarOff: Check = check(
  {
    code: 'tables-far-off',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const lead = station.directions.find((direction) => direction.lead);
      const table = lead?.items.find(isTable);
      if (lead === undefined || table === undefined || Math.abs(table.offset) <= WIDEST) return [];
      const away = Math.abs(table.offset);
      const message = `The tables of ${named(station)} would stand ${metres(away)} beside the course line, where its pin is; expected at most ${metres(WIDEST)}. Put the pin at the kerb, or give the "width" of the road.`;
      return [
        {
          message,
          where: { ...atStation(station), course: lead.course, measure: lead.measure },
          measured: away,
          limit: WIDEST,
          unit: 'm',
        },
      ];
    }),
);
