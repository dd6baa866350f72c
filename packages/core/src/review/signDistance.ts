/** The advance sign's distance to the first table, as it stands, against the plan's own practice. */
import { isTable } from '../layout/layout.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

/** Rounding that is no deviation, metres. */
const SAME = 1e-6;

export const signDistance: Check = check(
  {
    code: 'sign-distance',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  ({ plan, stations }) =>
    stations.flatMap((station) =>
      station.directions.flatMap((direction) => {
        const sign = direction.items.find((item) => item.kind === 'sign');
        const tables = direction.items.filter(isTable);
        if (sign === undefined || tables.length === 0) return [];
        const measured = Math.min(...tables.map((table) => table.from)) - sign.from;
        const { signAhead, signTolerance } = plan.practice;
        const limit = [signAhead - signTolerance, signAhead + signTolerance] as const;
        if (measured >= limit[0] - SAME && measured <= limit[1] + SAME) return [];
        const own = station.station.practice.signAhead;
        const how =
          sign.byHand === true
            ? ' It was placed by hand.'
            : own === undefined
              ? ''
              : ` The station itself asks for ${metres(own)}: waive this if that is meant, or take its "signAhead" out.`;
        const wheel = sign.wheel === null ? '' : ` (${metres(-sign.wheel[0])} by wheel from the chalk mark)`;
        const first = tables.reduce((one, other) => (other.from < one.from ? other : one));
        const reference = first.kind === 'handOut' ? 'the hand-out line' : 'the first table';
        const message = `The sign of ${named(station)} stands ${measured < 0 ? `${metres(-measured)} behind` : `${metres(measured)} before`} ${reference}${wheel}; expected ${metres(limit[0])} to ${metres(limit[1])}.${how} Move the sign or the tables.`;
        const where = {
          ...atStation(station, sign.byHand === true ? 'items/sign' : ''),
          course: direction.course,
          item: 'sign',
          measure: sign.from,
        };
        return [
          { message, where: sign.at[0] === null ? where : { ...where, at: sign.at[0] }, measured, limit, unit: 'm' },
        ];
      }),
    ),
);
