/** An item that a hand has placed on the other side of the road than the station's tables. */
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';
import { isContradicted } from './sideContradicted.ts';
import { asOne } from './together.ts';

export const itemAcross: Check = check(
  {
    code: 'item-across',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    // Where the declared side is contradicted by the pin, items by the pin stand across for the same cause.
    layout.stations.flatMap((station) =>
      (isContradicted(station) ? [] : station.directions).flatMap((direction) => {
        const { course, side, items } = direction;
        const found = items.flatMap((item) => {
          if (item.byHand !== true || item.side === 'unclear' || side === 'unclear' || item.side === side) return [];
          if (strayedBy(item, direction, station, layout) !== null) return [];
          const where = { ...atStation(station, `items/${item.kind}`), course, item: item.kind, measure: item.from };
          return [
            {
              params: { item: item.kind, offset: item.offset, side: item.side, tables: side },
              where: item.at[0] === null ? where : { ...where, at: item.at[0] },
              measured: item.offset,
              unit: 'm',
            },
          ];
        });
        return asOne(found, (a, b) => Math.abs(b.measured) - Math.abs(a.measured));
      }),
    ),
);
