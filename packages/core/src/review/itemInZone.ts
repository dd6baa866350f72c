/**
 * An item inside a zone that the plan keeps clear. Tables and signs in it are errors, and so is a
 * box of the trash drop; where only the stretch between two boxes crosses it, a warning (cups fall
 * there). Nearer to the zone's edge than the position error allows, inside or outside, the check
 * cannot tell.
 */
import type { Position } from 'geojson';
import type { LonLat } from '../finding.ts';
import type { Item, StationLayout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check, doubt } from './check.ts';
import { type Standing, itemsStanding, linePoints } from './standing.ts';
import { isSure } from '../station/sides.ts';
import { asOne } from './together.ts';
import { type LocalZone, boundsApart, deepestIn, depthIn, encloses, local, localZones, zoneAbout } from './zones.ts';

/** Metres of stretch between places that are looked at. */
const STEP = 1;

export const itemInZone: Check = check(
  {
    code: 'item-in-zone',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: ({ plan }) =>
      plan.zones.some((zone) => zone.rule === 'keep-clear' && encloses(zone)) ? null : 'no-keep-clear-zone',
  },
  (layout) =>
    layout.stations.flatMap((station) => {
      const zones = localZones(layout.plan.zones, 'keep-clear', station.at);
      const lines = itemsStanding(station).map((standing) => {
        const points = linePoints(standing, layout, STEP);
        return { standing, points, line: points.map((at) => local(station.at, at)) };
      });
      return zones.flatMap((zone) => {
        const met = lines.filter(({ line }) => line.length > 0 && mayMeet(zone, line, station));
        // All that stands at a station asks for the same part of a large zone.
        const about = zoneAbout(
          zone,
          met.flatMap(({ standing, line }) => [...line, ...boxPlaces(standing.item, station)]),
        );
        const found = met.flatMap(({ standing, points, line }) => inZone(standing, about, points[0]!, line, station));
        const [one] = asOne(found, gravest);
        if (one === undefined) return [];
        const inside = found.filter(({ severity }) => severity === one.severity).every((each) => each.inside);
        const { inside: _each, ...rest } = one;
        return [{ ...rest, params: { ...one.params, inside } }];
      });
    }),
);

const GRAVITY = { error: 0, warning: 1, note: 2 } as const;

/** What an item in a zone is found with, before those of one zone become one. */
interface InZone extends Omit<Case<'item-in-zone'>, 'params' | 'severity' | 'measured'> {
  readonly params: Omit<Case<'item-in-zone'>['params'], 'items'>;
  readonly severity: keyof typeof GRAVITY;
  /** From end to end. */
  readonly inside: boolean;
  readonly measured: number;
}

const gravest = (a: InZone, b: InZone): number => GRAVITY[a.severity] - GRAVITY[b.severity] || b.measured - a.measured;

/** Most zones are far from most items: their bounds tell. */
function mayMeet(zone: LocalZone, line: readonly Position[], { practice }: StationLayout): boolean {
  const apart = boundsApart(zone, line);
  return apart === 0 || !isSure(apart, practice);
}

const boxPlaces = ({ boxes = [] }: Item, station: StationLayout): Position[] =>
  boxes.flatMap(({ at }) => (at === null ? [] : [local(station.at, at)]));

function inZone(
  { item, direction }: Standing,
  zone: LocalZone,
  at: LonLat,
  line: readonly Position[],
  station: StationLayout,
): InZone[] {
  const deepest = deepestIn(zone, line);
  const sure = isSure(deepest, station.practice);
  if (deepest < 0 && sure) return [];
  const boxes = boxPlaces(item, station).map((place) => depthIn(zone, place));
  const between = boxes.length > 0 && boxes.every((depth) => depth < 0);
  const where = {
    ...atStation(station, item.byHand === true ? `items/${item.kind}` : ''),
    course: direction.course,
    item: item.kind,
    measure: item.from,
  };
  const severity = deepest < 0 ? 'note' : between ? 'warning' : 'error';
  return [
    {
      params: { item: item.kind, zone: zone.name, depth: deepest, betweenBoxes: between, sure },
      where: { ...where, at },
      severity,
      inside: line.every((place) => depthIn(zone, place) > 0),
      measured: deepest,
      limit: 0,
      unit: 'm',
      ...doubt(sure),
    },
  ];
}
