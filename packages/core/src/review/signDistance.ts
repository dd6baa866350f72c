/** The advance sign's distance to the first table, as it stands, against the plan's own practice. */
import { isTable } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';

/** Rounding that is no deviation, metres. */
const SAME = 1e-6;

export const signDistance: Check = check(
  {
    code: 'sign-distance',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) =>
      station.directions.flatMap((direction) => {
        const sign = itemOf(direction, 'sign');
        const tables = direction.items.filter(isTable);
        if (sign === undefined || tables.length === 0) return [];
        if (strayedBy(sign, direction, station, layout) !== null) return [];
        const measured = Math.min(...tables.map((table) => table.from)) - sign.from;
        const { signAhead, signTolerance } = layout.plan.practice;
        const limit = [signAhead - signTolerance, signAhead + signTolerance] as const;
        if (measured >= limit[0] - SAME && measured <= limit[1] + SAME) return [];
        const first = tables.reduce((one, other) => (other.from < one.from ? other : one));
        const params = {
          measured,
          limit,
          to: first.kind === 'handOut' ? 'handOut' : 'table',
          byHand: sign.byHand === true,
          own: station.station.practice.signAhead ?? null,
        } as const;
        const where = {
          ...atStation(station, sign.byHand === true ? 'items/sign' : ''),
          course: direction.course,
          item: 'sign',
          measure: sign.from,
        };
        return [
          { params, where: sign.at[0] === null ? where : { ...where, at: sign.at[0] }, measured, limit, unit: 'm' },
        ];
      }),
    ),
);
