/** Tables laid out farther beside the course line than a road is wide, because the pin stands there or the width given puts them there. */
import { isTable } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

/** Half of a wide road and its verge, metres. */
export const WIDEST = 15;

export const tablesFarOff: Check = check(
  {
    code: 'tables-far-off',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) => {
      const lead = leadOf(station);
      const table = lead?.items.find(isTable);
      if (lead === undefined || table === undefined || Math.abs(table.offset) <= WIDEST) return [];
      const away = Math.abs(table.offset);
      return [
        {
          params: { measured: away, limit: WIDEST, road: station.station.width ?? null },
          where: {
            ...atStation(station, station.station.width === undefined ? '' : 'width'),
            course: lead.course,
            measure: lead.measure,
          },
          measured: away,
          limit: WIDEST,
          unit: 'm',
        },
      ];
    }),
);
