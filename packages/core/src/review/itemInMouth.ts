/**
 * Signs, tables or boxes in the mouth of a street that vehicles use, by the map: on the side where it leaves the course, its half width
 * and 5 m on either side.
 */
import type { Junction } from '../ground/along.ts';
import type { StationLayout } from '../layout/layout.ts';
import { TRAFFIC_CODE, alongOf, casesOf, dayOfMap, noMap, reachInto, spansOf } from './byMap.ts';
import { type Case, type Check, type Ground, stationCheck } from './check.ts';

export const itemInMouth: Check = stationCheck(
  { code: 'item-in-mouth', severity: 'warning', source: TRAFFIC_CODE, missing: noMap },
  inMouths,
);

function inMouths(station: StationLayout, ground: Ground): Case<'item-in-mouth'>[] {
  if (ground.ground === undefined) return [];
  const map = dayOfMap(ground.ground);
  const met = spansOf(station).flatMap((span) =>
    (alongOf(ground, span.direction)?.junctions ?? []).flatMap((junction) => {
      const { mouth, vehicles, access, sides, node } = junction;
      const { side } = span.item;
      const by = vehicles && !access && (side === 'unclear' || sides.includes(side)) ? reachInto(span, mouth) : 0;
      return by > 0 ? [{ span, thing: junction, id: node, by }] : [];
    }),
  );
  return casesOf<'item-in-mouth', Junction>(met, station, ({ thing, by }, items) => ({
    params: { map, items, name: thing.names[0] ?? null, overlap: by },
    measured: by,
    limit: 0,
    unit: 'm',
  }));
}
