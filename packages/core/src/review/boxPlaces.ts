/** Where trash boxes stand badly: in a bend, where runners cut in or swing out over them, or in the way of another leg. */
import { eastNorth } from '../geodesy/frame.ts';
import type { Item, LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { type Bend, SHARP, sharpBend } from './bends.ts';
import { type Case, type Check, COMMON_PRACTICE, type Ground, atStation, check, stationCheck } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';
import { type OtherLeg, halfRoad, otherLegs } from './otherLegs.ts';
import { courseOf, tableEnds } from './standing.ts';

/** A corner so near the first or the last box, metres, is at it. */
const AT_BOX = 5;

export const boxInBend: Check = stationCheck(
  {
    code: 'box-in-bend',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (station, ground) => station.directions.flatMap((direction) => inBend(direction, station, ground)),
);

/** The sharpest bend at the boxes of any served course, unless it is so near the tables that it is found with them. */
function inBend(direction: LaidDirection, station: StationLayout, ground: Ground): Case<'box-in-bend'>[] {
  const trash = itemOf(direction, 'trash');
  const tables = tableEnds(direction);
  if (trash === undefined || tables === null || (trash.boxes ?? []).length === 0) return [];
  const served = direction.passes.map((k) => station.passes[k]!).filter((pass) => pass.served);
  const bends = served.flatMap(({ course, measure }) => {
    const shift = measure - direction.measure;
    const first = Math.max(trash.from - AT_BOX, tables[1] + station.practice.bendClear);
    const bend = sharpBend(courseOf(ground, course), first + shift, trash.to + AT_BOX + shift);
    return bend === null ? [] : [{ bend, course, after: bend.measure - shift - tables[1] }];
  });
  const [sharpest] = bends.sort((a, b) => Math.abs(b.bend.turn) - Math.abs(a.bend.turn));
  return sharpest === undefined ? [] : [bendFound(sharpest, station)];
}

function bendFound(
  { bend, course, after }: { readonly bend: Bend; readonly course: string; readonly after: number },
  station: StationLayout,
): Case<'box-in-bend'> {
  return {
    params: { turn: bend.turn, most: SHARP, after },
    where: { ...atStation(station), course, item: 'trash', measure: bend.measure, at: bend.at },
    measured: Math.abs(bend.turn),
    limit: SHARP,
    unit: '°',
  };
}

export const boxOnLeg: Check = check(
  {
    code: 'box-on-leg',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (layout) => layout.stations.flatMap((station) => station.directions.flatMap((one) => onLegs(one, station, layout))),
);

/** A box in the way of a leg: how near its line. */
interface InWay {
  readonly leg: OtherLeg;
  readonly box: number;
  readonly distance: number;
  readonly measure: number;
}

function onLegs(direction: LaidDirection, station: StationLayout, layout: Layout): Case<'box-on-leg'>[] {
  const trash = itemOf(direction, 'trash');
  if (trash === undefined || strayedBy(trash, direction, station, layout) !== null) return [];
  const found = otherLegs(direction, layout).flatMap((leg) => boxesInWay(leg, trash, halfRoad(station)));
  const [nearest] = found.toSorted((a, b) => a.distance - b.distance);
  if (nearest === undefined) return [];
  const limit = halfRoad(station);
  const at = trash.boxes![nearest.box]!.at!;
  return [
    {
      params: {
        boxes: new Set(found.map(({ box }) => box)).size,
        courses: [...new Set([nearest, ...found].map(({ leg }) => leg.course.id))],
        at: nearest.measure,
        measured: nearest.distance,
        limit,
      },
      where: { ...atStation(station), course: nearest.leg.course.id, item: 'trash', measure: nearest.measure, at },
      measured: nearest.distance,
      limit,
      unit: 'm',
    },
  ];
}

/** Boxes nearer to a leg than half a road, where the leg is on its way to or from their side of the road: on the road itself it is met by all boxes. */
function boxesInWay(leg: OtherLeg, trash: Item, half: number): InWay[] {
  const side = trash.side === 'left' ? 1 : trash.side === 'right' ? -1 : 0;
  if (![leg.comes, leg.goes].some((end) => end.is === 'side' && end.side === side)) return [];
  const off = leg.places.filter(({ lateral }) => lateral * side >= Math.abs(trash.offset) / 2);
  return (trash.boxes ?? []).flatMap((box, k) => {
    if (box.at === null) return [];
    const { east, north } = eastNorth(leg.origin, box.at);
    const near = off
      .map(({ at, measure }) => ({ measure, distance: Math.hypot(at[0] - east, at[1] - north) }))
      .sort((a, b) => a.distance - b.distance)[0];
    return near === undefined || near.distance >= half ? [] : [{ leg, box: k, ...near }];
  });
}
