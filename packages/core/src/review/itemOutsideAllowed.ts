/**
 * An item, or a part of it, outside every zone that the plan allows. Nearer to the edge of the
 * nearest one than the position error allows, the check cannot tell.
 */
import type { Position } from 'geojson';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check, doubt } from './check.ts';
import { type Standing, itemsStanding, linePoints } from './standing.ts';
import { isSure } from '../station/sides.ts';
import { asOne } from './together.ts';
import { type LocalZone, boundsApart, depthIn, encloses, local, localZones, zoneAbout } from './zones.ts';

/** Metres of stretch between places that are looked at. */
const STEP = 1;

export const itemOutsideAllowed: Check = check(
  {
    code: 'item-outside-allowed',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: ({ plan }) =>
      plan.zones.some((zone) => zone.rule === 'allowed' && encloses(zone)) ? null : 'no-allowed-zone',
  },
  (layout) =>
    layout.stations.flatMap((station) => {
      const zones = localZones(layout.plan.zones, 'allowed', station.at);
      const found = itemsStanding(station).flatMap((standing) => outside(standing, zones, station, layout));
      // Of those that are sure, where any is.
      const sure = found.filter(({ params }) => params.sure);
      return asOne(sure.length > 0 ? sure : found, (a, b) => b.measured - a.measured);
    }),
);

interface Outside extends Omit<Case<'item-outside-allowed'>, 'params' | 'measured'> {
  readonly params: Omit<Case<'item-outside-allowed'>['params'], 'items'>;
  readonly measured: number;
}

function outside(standing: Standing, zones: readonly LocalZone[], station: StationLayout, layout: Layout): Outside[] {
  const { item, direction } = standing;
  const points = linePoints(standing, layout, STEP);
  const line = points.map((at) => local(station.at, at));
  const about = zones.map((zone) => zoneAbout(zone, line));
  const places = points.map((at, k) => ({ at, away: awayFrom(about, line[k]!) }));
  const farthest = places.sort((a, b) => b.away - a.away)[0];
  if (farthest === undefined || farthest.away <= 0) return [];
  const sure = isSure(farthest.away, station.practice);
  const where = {
    ...atStation(station, item.byHand === true ? `items/${item.kind}` : ''),
    course: direction.course,
    item: item.kind,
    measure: item.from,
    at: farthest.at,
  };
  return [
    {
      params: { item: item.kind, away: farthest.away, sure },
      where,
      measured: farthest.away,
      limit: 0,
      unit: 'm',
      ...doubt(sure),
    },
  ];
}

/** Metres to the nearest zone; 0 or less inside one. Zones whose bounds are no nearer than what was found are not asked. */
function awayFrom(zones: readonly LocalZone[], place: Position): number {
  let deepest = -Infinity;
  for (const zone of zones) {
    if (deepest >= 0) break;
    if (0 - boundsApart(zone, [place]) > deepest) deepest = Math.max(deepest, depthIn(zone, place));
  }
  return 0 - deepest;
}
