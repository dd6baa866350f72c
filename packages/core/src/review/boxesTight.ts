/** Trash boxes nearer to one another than a box is wide. */
import type { LaidDirection, StationLayout } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, stationCheck } from './check.ts';

/** Of one box along the road, metres: common practice, no source. */
const BOX = 0.9;

function tightIn(direction: LaidDirection, station: StationLayout): Case<'boxes-tight'>[] {
  const boxes = itemOf(direction, 'trash')?.boxes ?? [];
  const gaps = boxes.slice(1).map(({ measure }, k) => Math.abs(measure - boxes[k]!.measure));
  const apart = gaps.reduce((least, gap) => Math.min(least, gap), Infinity);
  if (apart >= BOX - 1e-6) return [];
  return [
    {
      params: { boxes: boxes.length, apart, least: BOX },
      where: { ...atStation(station, 'boxes'), item: 'trash', course: direction.course, measure: boxes[0]!.measure },
      measured: apart,
      limit: BOX,
      unit: 'm',
    },
  ];
}

/** By the direction in which they are tightest. */
export const boxesTight: Check = stationCheck(
  { code: 'boxes-tight', severity: 'warning', source: COMMON_PRACTICE },
  (station) =>
    station.directions
      .flatMap((direction) => tightIn(direction, station))
      .sort((a, b) => a.measured! - b.measured!)
      .slice(0, 1),
);
