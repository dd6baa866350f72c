/** A course that swings away between sign and tables, so that the sign does not show them. */
import { isTable } from '../layout/layout.ts';
import { swingFromChord } from '../layout/sight.ts';
import { courseById, itemOf } from '../plan/lookups.ts';
import { tablesBehind } from './unseen.ts';
import { type Check, COMMON_PRACTICE, atStation, stationCheck } from './check.ts';

const WIDEST = 10;

export const tablesHidden: Check = stationCheck(
  { code: 'tables-hidden', severity: 'note', source: COMMON_PRACTICE },
  (station, ground) =>
    station.directions.flatMap((direction) => {
      const sign = itemOf(direction, 'sign');
      const first = direction.items.find(isTable);
      if (sign === undefined || first === undefined || first.from <= sign.from) return [];
      // Where the map has the buildings, they tell.
      if (tablesBehind(direction, sign, first, ground) !== null) return [];
      const { course } = courseById(ground.courses, direction.course);
      const swing = swingFromChord(course, sign.from, first.from);
      if (swing === null || swing <= WIDEST) return [];
      return [
        {
          params: { measured: swing, limit: WIDEST },
          where: { ...atStation(station), course: direction.course, item: 'sign', measure: sign.from },
          measured: swing,
          limit: WIDEST,
          unit: 'm',
        },
      ];
    }),
);
