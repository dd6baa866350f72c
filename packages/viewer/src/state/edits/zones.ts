/** Zones drawn, moved and reshaped: their corners, and the commands. */
import type { LonLat, Plan } from '@halfcup/core';
import { eastNorth, fromEastNorth } from '@halfcup/core/geometry';
import type { OpenPlan } from '../store/store.ts';
import { rawPlan, setValue, valueAt, type Command } from './edits.ts';

export type Corners = readonly LonLat[];
type Zone = Plan['zones'][number];

/** A polygon needs as many. */
export const LEAST_CORNERS = 3;

/** About a centimetre on the ground. */
const written = ([lon, lat]: LonLat): [number, number] => [Number(lon.toFixed(7)), Number(lat.toFixed(7))];

const same = (a: LonLat | undefined, b: LonLat | undefined): boolean =>
  a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1];

/** Each corner once: a file may repeat the first at the end. */
export const cornersOf = ({ polygon }: Pick<Zone, 'polygon'>): Corners =>
  polygon.length > LEAST_CORNERS && same(polygon[0], polygon.at(-1)) ? polygon.slice(0, -1) : polygon;

/** A place some metres east and north of another. */
export function shifted(at: LonLat, east: number, north: number): LonLat {
  const [lon, lat] = fromEastNorth(at, east, north);
  return [lon, lat];
}

/** All corners as far as one place is from another. */
export function movedBy(corners: Corners, from: LonLat, to: LonLat): Corners {
  const { east, north } = eastNorth(from, to);
  return corners.map((corner) => shifted(corner, east, north));
}

/** The middle of the corners. */
export const middleOf = (corners: Corners): LonLat => [
  corners.reduce((sum, [lon]) => sum + lon, 0) / corners.length,
  corners.reduce((sum, [, lat]) => sum + lat, 0) / corners.length,
];

export const between = (a: LonLat, b: LonLat): LonLat => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Whether a place is in a polygon, by the edges that a line to the east of it crosses. */
export function isInside(corners: Corners, [lon, lat]: LonLat): boolean {
  return corners.reduce((inside, [lonA, latA], index) => {
    const [lonB, latB] = corners[(index + 1) % corners.length]!;
    const crossed = latA > lat !== latB > lat && lon < ((lonB - lonA) * (lat - latA)) / (latB - latA) + lonA;
    return crossed ? !inside : inside;
  }, false);
}

/** The zone at a place: of several the last, which lies on top; `null` where there is none. */
export function zoneAt(plan: Pick<Plan, 'zones'>, at: LonLat): number | null {
  const index = plan.zones.findLastIndex((zone) => isInside(cornersOf(zone), at));
  return index === -1 ? null : index;
}

export const zoneName = (plan: Pick<Plan, 'zones'>, index: number): string =>
  plan.zones[index]?.name || `Zone ${index + 1}`;

/** A new zone, to be kept clear until somebody says otherwise. */
export const addZone = (open: OpenPlan, corners: Corners): Command => {
  const zone = {
    name: `Zone ${open.document.plan.zones.length + 1}`,
    rule: 'keep-clear',
    polygon: corners.map(written),
  };
  return Array.isArray(valueAt(rawPlan(open.document), ['zones']))
    ? setValue(['zones', '-'], zone, `add ${zone.name}`)
    : setValue(['zones'], [zone], `add ${zone.name}`);
};

export function reshapeZone(open: OpenPlan, index: number, corners: Corners, merge?: string): Command {
  const { plan } = open.document;
  const before = plan.zones[index]?.polygon ?? [];
  const closed = before.length > LEAST_CORNERS && same(before[0], before.at(-1));
  const polygon = corners.map(written);
  return setValue(
    ['zones', index, 'polygon'],
    closed ? [...polygon, polygon[0]] : polygon,
    `reshape ${zoneName(plan, index)}`,
    merge,
  );
}

export const deleteZone = (open: OpenPlan, index: number): Command =>
  setValue(['zones', index], undefined, `delete ${zoneName(open.document.plan, index)}`);
