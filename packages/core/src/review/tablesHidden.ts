/** A course that swings away between sign and tables, so that the sign does not show them. */
import { isTable } from '../layout/layout.ts';
import { swingFromChord } from '../layout/sight.ts';
import { type Check, COMMON_PRACTICE, atStation, metres, named, stationCheck } from './check.ts';

const WIDEST = 10;

export const tablesHidden: Check = stationCheck(
  { code: 'tables-hidden', severity: 'note', source: COMMON_PRACTICE },
  (station, { courses }) =>
    station.directions.flatMap((direction) => {
      const sign = direction.items.find((item) => item.kind === 'sign');
      const first = direction.items.find(isTable);
      if (sign === undefined || first === undefined || first.from <= sign.from) return [];
      const { course } = courses.find((indexed) => indexed.course.id === direction.course)!;
      const swing = swingFromChord(course, sign.from, first.from);
      if (swing === null || swing <= WIDEST) return [];
      const message = `Between the sign and the tables of ${named(station)} the course swings ${metres(swing)} away from the straight line: the tables may be hidden (over ${metres(WIDEST)}). Look on the ground.`;
      return [
        {
          message,
          where: { ...atStation(station), course: direction.course, item: 'sign', measure: sign.from },
          measured: swing,
          limit: WIDEST,
          unit: 'm',
        },
      ];
    }),
);
