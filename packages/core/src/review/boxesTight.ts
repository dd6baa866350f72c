/** Trash boxes nearer to one another than a box is wide. */
import type { StationLayout } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

/** Of one box along the road, metres: common practice, no source. */
const BOX = 0.9;

/** The least distance between two neighbouring boxes of a station, with how many there are in that row. */
function tightest(station: StationLayout): {
  readonly station: StationLayout;
  readonly boxes: number;
  readonly apart: number;
} {
  const rows = station.directions.map((direction) => {
    const boxes = itemOf(direction, 'trash')?.boxes ?? [];
    const gaps = boxes.slice(1).map(({ measure }, k) => Math.abs(measure - boxes[k]!.measure));
    return { station, boxes: boxes.length, apart: gaps.reduce((least, gap) => Math.min(least, gap), Infinity) };
  });
  return rows.reduce((a, b) => (b.apart < a.apart ? b : a), { station, boxes: 0, apart: Infinity });
}

/** One finding: where the rule is bent, all stations are tight. */
export const boxesTight: Check = check(
  { code: 'boxes-tight', severity: 'warning', source: COMMON_PRACTICE },
  ({ stations }) => {
    const tight = stations
      .map((station) => tightest(station))
      .filter(({ apart }) => apart < BOX - 1e-6)
      .sort((a, b) => a.apart - b.apart);
    const [worst] = tight;
    if (worst === undefined) return [];
    const { station, boxes, apart } = worst;
    const alone = tight.length === 1 ? { ...atStation(station, 'boxes'), item: 'trash' } : { path: '/stations' };
    return [
      {
        params: { boxes, apart, least: BOX, stations: tight.map((one) => one.station.id) },
        where: alone,
        measured: apart,
        limit: BOX,
        unit: 'm',
      },
    ];
  },
);
