/** An item that a hand has placed on the other side of the road than the station's tables. */
import { itemWord } from '../station/wording.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const itemAcross: Check = check(
  {
    code: 'item-across',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  ({ stations }) =>
    stations.flatMap((station) =>
      station.directions.flatMap(({ course, side, items }) =>
        items.flatMap((item) => {
          if (item.byHand !== true || item.side === 'unclear' || side === 'unclear' || item.side === side) return [];
          const message = `${itemWord(item.kind)} of ${named(station)} was placed by hand ${metres(Math.abs(item.offset))} to the ${item.side} of the course; its tables stand on the ${side}. Move it across, or declare the other side.`;
          const where = { ...atStation(station, `items/${item.kind}`), course, item: item.kind, measure: item.from };
          return [
            {
              message,
              where: item.at[0] === null ? where : { ...where, at: item.at[0] },
              measured: item.offset,
              unit: 'm',
            },
          ];
        }),
      ),
    ),
);
