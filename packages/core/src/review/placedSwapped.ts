/**
 * Two stations whose names look exchanged: every point named after the one was recorded where the plan has the other, and none where
 * it has its own; and the same the other way round. *Where* is within `placedWithin` and the error of both places. A table of each
 * must be among the points: signs alone, which stand far from their stations, say too little.
 */
import type { Finding } from '../finding.ts';
import { type StationLayout, isTable } from '../layout/layout.ts';
import { marginOf } from './placedGround.ts';
import { type Exchanged, type Matched, type Target, distanceTo } from './placedMatch.ts';
import { type PlacedPoint, makePlaced } from './placedPoint.ts';

/** Two stations with exchanged names, in the plan's order; `point`: one named after the first. */
export interface Swap {
  readonly stations: readonly [StationLayout, StationLayout];
  readonly point: PlacedPoint;
}

/** Each pair of stations whose names look exchanged; a station is in one pair at most. */
export function swapsOf(
  matched: readonly Matched[],
  targets: readonly Target[],
  stations: readonly StationLayout[],
): Swap[] {
  const recorded = stations.flatMap((station) => {
    const points = matched.filter(({ target }) => target.station === station);
    const known = points.some(({ target }) => isTable(target));
    return known && points.every((one) => !isBy(one, station, targets)) ? [{ station, points }] : [];
  });
  const swaps: Swap[] = [];
  const taken = new Set<StationLayout>();
  recorded.forEach((one, k) => {
    if (taken.has(one.station)) return;
    const other = recorded
      .slice(k + 1)
      .find(
        ({ station, points }) =>
          !taken.has(station) &&
          one.points.every((point) => isBy(point, station, targets)) &&
          points.every((point) => isBy(point, one.station, targets)),
      );
    if (other === undefined) return;
    taken.add(one.station).add(other.station);
    swaps.push({ stations: [one.station, other.station], point: one.points[0]!.point });
  });
  return swaps;
}

/** Whether a point stands where the plan has the thing of that kind at a station, or, where it has none, anything. */
function isBy({ point, target }: Matched, station: StationLayout, targets: readonly Target[]): boolean {
  const own = targets.filter((one) => one.station === station);
  const alike = own.filter(({ kind }) => kind === target.kind);
  const { placedWithin, pinR95 } = station.practice;
  const within = placedWithin + marginOf(point.r95, pinR95);
  return (alike.length > 0 ? alike : own).some((one) => distanceTo(one, point) <= within);
}

/** Which station is meant by whose name. */
export const exchangedBy = (swaps: readonly Swap[]): Exchanged =>
  new Map(swaps.flatMap(({ stations: [one, other] }) => [[one, other] as const, [other, one] as const]));

/** One finding for a pair. */
export const swapFinding = ({ stations: [one, other], point }: Swap): Finding =>
  makePlaced(
    'placed-swapped',
    { station: one.id, other: other.id },
    { severity: 'warning', where: { ...point.where, station: one.id } },
  );
