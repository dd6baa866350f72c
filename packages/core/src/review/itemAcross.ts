/** An item that a hand has placed on the other side of the road than the station's tables. */
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

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
          const where = { ...atStation(station, `items/${item.kind}`), course, item: item.kind, measure: item.from };
          return [
            {
              params: { item: item.kind, offset: item.offset, side: item.side, tables: side },
              where: item.at[0] === null ? where : { ...where, at: item.at[0] },
              measured: item.offset,
              unit: 'm',
            },
          ];
        }),
      ),
    ),
);
