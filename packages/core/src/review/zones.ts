/**
 * A plan's zones against places on the ground, in metres of a local frame (so that the antimeridian
 * is no edge). Inside or not, and whether a line meets a zone, by @turf's planar predicates;
 * accuracy: that of the frame, under 1 mm within 1 km.
 */
import { booleanIntersects } from '@turf/boolean-intersects';
import { booleanPointInPolygon } from '@turf/boolean-point-in-polygon';
import type { Polygon, Position } from 'geojson';
import type { LonLat } from '../finding.ts';
import { eastNorth } from '../geodesy/frame.ts';
import type { PlanZone } from '../plan/plan.ts';

/** A zone in metres from an origin; its ring closed. */
export interface LocalZone {
  readonly name: string;
  readonly shape: Polygon;
  readonly box: Box;
}

/** West, south, east and north, metres. */
type Box = readonly [number, number, number, number];

/** A place in metres from an origin. */
export function local(origin: LonLat, at: LonLat): Position {
  const { east, north } = eastNorth(origin, at);
  return [east, north];
}

/** The zones of one rule around an origin, open rings closed; zones with fewer than three places enclose nothing and are left out. */
export function localZones(zones: readonly PlanZone[], rule: PlanZone['rule'], origin: LonLat): LocalZone[] {
  return zones
    .filter((zone) => zone.rule === rule && encloses(zone))
    .map(({ name, polygon }) => {
      const ring = polygon.map((at) => local(origin, at));
      const [first] = polygon;
      const last = polygon.at(-1)!;
      const closed = first![0] === last[0] && first![1] === last[1];
      return { name, shape: { type: 'Polygon', coordinates: [closed ? ring : [...ring, ring[0]!]] }, box: boxOf(ring) };
    });
}

/** Whether a zone has three places or more that differ. */
export const encloses = ({ polygon }: PlanZone): boolean =>
  new Set(polygon.map(([lon, lat]) => `${lon},${lat}`)).size >= 3;

function boxOf(places: readonly Position[]): Box {
  const [x, y] = [places.map((place) => place[0]!), places.map((place) => place[1]!)];
  return [Math.min(...x), Math.min(...y), Math.max(...x), Math.max(...y)];
}

/** Metres that a line keeps away from a zone's bounds: never more than from the zone itself; 0 where the bounds meet. */
export function boundsApart({ box }: LocalZone, line: readonly Position[]): number {
  const other = boxOf(line);
  const gap = (low: number, high: number): number => Math.max(box[low]! - other[high]!, other[low]! - box[high]!, 0);
  return Math.hypot(gap(0, 2), gap(1, 3));
}

/** Metres from the zone's edge, positive inside, negative outside. */
export function depthIn({ shape }: LocalZone, at: Position): number {
  const ring = shape.coordinates[0]!;
  const edge = Math.min(...ring.slice(1).map((to, k) => toLine(at, ring[k]!, to)));
  return booleanPointInPolygon(at, shape) ? edge : 0 - edge;
}

/** The deepest that a line of places comes into a zone: metres inside; 0 where it only crosses a corner between two places; negative: how near it comes outside. */
export function deepestIn(zone: LocalZone, line: readonly Position[]): number {
  const deepest = Math.max(...line.map((at) => depthIn(zone, at)));
  if (deepest >= 0 || line.length < 2) return deepest;
  return booleanIntersects({ type: 'LineString', coordinates: [...line] }, zone.shape) ? 0 : deepest;
}

/** Metres from a place to a straight line. */
export function toLine(at: Position, from: Position, to: Position): number {
  const [dx, dy] = [to[0]! - from[0]!, to[1]! - from[1]!];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : ((at[0]! - from[0]!) * dx + (at[1]! - from[1]!) * dy) / length2;
  const share = Math.min(Math.max(along, 0), 1);
  return Math.hypot(at[0]! - from[0]! - share * dx, at[1]! - from[1]! - share * dy);
}
