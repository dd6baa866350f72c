/** Supplies set down far from their tables, or where nothing may stand. */
import { inverseLength } from '../geodesy/karney.ts';
import { type Layout, isTable } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { FAR, distanceTo } from './farFromCourses.ts';
import { type StationPoint, pointsOfKind } from './points.ts';
import { elsewhere } from './pointsElsewhere.ts';
import { depthIn, local, localZones } from './zones.ts';

/** Farthest that a crew carries it all, metres. */
const CARRY = 100;

export const dropFar: Check = check(
  {
    code: 'drop-far',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: (layout) => (pointsOfKind(layout, 'drop').length > 0 ? null : 'no-drop'),
  },
  (layout) => pointsOfKind(layout, 'drop').flatMap((drop) => [...inZone(drop, layout), ...farOff(drop, layout)]),
);

const nameOf = ({ point }: StationPoint): string | null => point.name ?? null;

function inZone(drop: StationPoint, { plan }: Layout): Case<'drop-far'>[] {
  const { station, point, key } = drop;
  const here = local(point.at, point.at);
  const zone = localZones(plan.zones, 'keep-clear', point.at).find((one) => depthIn(one, here) > 0);
  if (zone === undefined) return [];
  return [
    {
      params: { is: 'zone', name: nameOf(drop), zone: zone.name },
      where: { ...atStation(station, key), at: point.at },
      measured: depthIn(zone, here),
      limit: 0,
      unit: 'm',
    },
  ];
}

/** By the nearest end of a table, as the crow flies. */
function farOff(drop: StationPoint, layout: Layout): Case<'drop-far'>[] {
  const { station, point, key } = drop;
  const tables = (leadOf(station)?.items ?? []).filter(isTable).flatMap(({ at }) => at.filter((end) => end !== null));
  const distance = Math.min(
    ...[station.at, ...tables].map((end) => inverseLength(end[0], end[1], point.at[0], point.at[1])),
  );
  // At another station, or off every course, it has a finding of its own.
  if (distance <= CARRY || elsewhere(drop, layout) !== null || distanceTo(layout, point.at) > FAR) return [];
  return [
    {
      params: { is: 'far', name: nameOf(drop), distance, limit: CARRY },
      where: { ...atStation(station, key), at: point.at },
      measured: distance,
      limit: CARRY,
      unit: 'm',
    },
  ];
}
