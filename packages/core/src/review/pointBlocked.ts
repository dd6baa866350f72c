/** Tables, signs or boxes that stand on a point where first aid, vehicles or supplies have to be: the station's own, or another's. */
import type { StationLayout } from '../layout/layout.ts';
import type { PlanPoint, PlanStation } from '../plan/plan.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { type Footprint, footprints } from './footprints.ts';
import { kindsOf } from './together.ts';
import { local, toLine } from './zones.ts';

/** What stays free around a point, metres. */
const FREE = 2;
/** No degree of latitude is shorter, metres. */
const DEGREE = 110_000;
const KEPT: ReadonlySet<string> = new Set(['medical', 'access', 'drop']);

export const pointBlocked: Check = check(
  {
    code: 'point-blocked',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ plan }) =>
      plan.stations.some(({ points }) => points.some(({ kind }) => KEPT.has(kind))) ? null : 'no-points',
  },
  (layout) => {
    const points = layout.plan.stations.flatMap((owner, index) =>
      owner.points.flatMap((point, k): Owned[] =>
        KEPT.has(point.kind) ? [{ point, owner, path: `/stations/${index}/points/${k}` }] : [],
      ),
    );
    return points.length === 0 ? [] : layout.stations.flatMap((station) => blockedBy(station, points));
  },
);

function blockedBy(station: StationLayout, points: readonly Owned[]): Case<'point-blocked'>[] {
  const standing = footprints(station);
  const reach = FREE + Math.max(0, ...standing.flatMap(({ line }) => line.map(([, north]) => Math.abs(north!))));
  // Latitudes tell of most points that they are far away.
  const near = points.filter(({ point }) => Math.abs(point.at[1] - station.at[1]) * DEGREE <= reach);
  return near.flatMap((one) => blocked(one, standing, station));
}

interface Owned {
  readonly point: PlanPoint;
  readonly owner: PlanStation;
  readonly path: string;
}

function blocked(
  { point, owner, path }: Owned,
  standing: readonly Footprint[],
  station: StationLayout,
): Case<'point-blocked'>[] {
  const spot = local(station.at, point.at);
  const near = standing
    .map(({ kind, line: [from, to] }) => ({ kind, distance: toLine(spot, from, to) }))
    .filter(({ distance }) => distance < FREE)
    .sort((a, b) => a.distance - b.distance);
  const [nearest] = near;
  if (nearest === undefined) return [];
  return [
    {
      params: {
        items: kindsOf(near),
        point: { kind: point.kind, name: point.name ?? null },
        station: owner.id === station.id ? null : owner.id,
        measured: nearest.distance,
        limit: FREE,
      },
      where: { ...atStation(station), path, item: nearest.kind, at: point.at },
      measured: nearest.distance,
      limit: FREE,
      unit: 'm',
    },
  ];
}
