/**
 * A plan's zones against places on the ground, in metres of a local frame (so that the antimeridian
 * is no edge). Inside or not, and whether a line meets a zone, by @turf's planar predicates;
 * accuracy: that of the frame, under 1 mm within 1 km.
 */
import { booleanIntersects } from '@turf/boolean-intersects';
import { booleanPointInPolygon } from '@turf/boolean-point-in-polygon';
import type { LineString, Polygon, Position } from 'geojson';
import type { LonLat } from '../finding.ts';
import { wrapDegrees } from '../geodesy/ellipsoid.ts';
import { placeAfar } from '../geodesy/farFrame.ts';
import { type Frame, type Spot, eastNorth, frameAt, placeByGeodesic } from '../geodesy/frame.ts';
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
  const frame = frameAt(origin[0], origin[1]);
  return zones
    .filter((zone) => zone.rule === rule && encloses(zone))
    .map(({ name, polygon }) => {
      const ring = polygon.map((at) => placeFrom(frame, at));
      const [first] = polygon;
      const last = polygon.at(-1)!;
      const closed = first![0] === last[0] && first![1] === last[1];
      return { name, shape: { type: 'Polygon', coordinates: [closed ? ring : [...ring, ring[0]!]] }, box: boxOf(ring) };
    });
}

/** Degrees from the origin beyond which a corner is placed by its geodesic, which takes twenty times as long. */
const AFAR = 0.4;

function placeFrom(frame: Frame, [lon, lat]: LonLat): Position {
  const spot: Spot = { east: 0, north: 0 };
  const [dLon, dLat] = [wrapDegrees(lon - frame.lon), lat - frame.lat];
  if (frame.temperate && Math.abs(dLon) < AFAR && Math.abs(dLat) < AFAR) placeAfar(frame, dLon, dLat, spot);
  else placeByGeodesic(frame, lon, lat, spot);
  return [spot.east, spot.north];
}

/** Whether a zone has three places or more that differ. */
export function encloses({ polygon }: PlanZone): boolean {
  const found: LonLat[] = [];
  for (const [lon, lat] of polygon) {
    if (!found.some((at) => at[0] === lon && at[1] === lat)) found.push([lon, lat]);
    if (found.length === 3) return true;
  }
  return false;
}

function boxOf(places: readonly Position[]): Box {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const place of places) {
    west = Math.min(west, place[0]!);
    south = Math.min(south, place[1]!);
    east = Math.max(east, place[0]!);
    north = Math.max(north, place[1]!);
  }
  return [west, south, east, north];
}

/**
 * A zone as the places of a line meet it: without corners that are so far away that they change neither what is inside nor
 * what is nearest. Between two corners beyond one side of all that matters, those on that side are left out.
 */
export function zoneAbout(zone: LocalZone, line: readonly Position[]): LocalZone {
  const ring = zone.shape.coordinates[0]!;
  if (ring.length <= FEW || line.length === 0) return zone;
  const [west, south, east, north] = boxOf(line);
  const [x, y] = line[0]!;
  let nearest = Infinity;
  for (const corner of ring) nearest = Math.min(nearest, Math.hypot(corner[0]! - x!, corner[1]! - y!));
  // No place of the line is farther than this from the zone's edge.
  const reach = (nearest + Math.hypot(east - west, north - south)) * (1 + 1e-9);
  const beyond = (at: Position): number =>
    (at[0]! < west - reach ? 1 : 0) |
    (at[0]! > east + reach ? 2 : 0) |
    (at[1]! < south - reach ? 4 : 0) |
    (at[1]! > north + reach ? 8 : 0);
  const sides = ring.map(beyond);
  const kept = [ring[0]!];
  let before = sides[0]!;
  for (let k = 1; k < ring.length; k++) {
    if (k < ring.length - 1 && (before & sides[k]! & sides[k + 1]!) !== 0) continue;
    kept.push(ring[k]!);
    before = sides[k]!;
  }
  return { ...zone, shape: { type: 'Polygon', coordinates: [kept] } };
}

/** Corners of a zone that are not worth a choice. */
const FEW = 50;

/** Metres that a line keeps away from a zone's bounds: never more than from the zone itself; 0 where the bounds meet. */
export function boundsApart({ box }: LocalZone, line: readonly Position[]): number {
  const other = boxOf(line);
  const gap = (low: number, high: number): number => Math.max(box[low]! - other[high]!, other[low]! - box[high]!, 0);
  return Math.hypot(gap(0, 2), gap(1, 3));
}

/** Metres from the zone's edge, positive inside, negative outside. */
export function depthIn({ shape }: LocalZone, at: Position): number {
  const ring = shape.coordinates[0]!;
  let edge = Infinity;
  for (let k = 1; k < ring.length; k++) edge = Math.min(edge, toLine(at, ring[k - 1]!, ring[k]!));
  return booleanPointInPolygon(at, shape) ? edge : 0 - edge;
}

/** The deepest that a line of places comes into a zone: metres inside; 0 where it only crosses a corner between two places; negative: how near it comes outside. */
export function deepestIn(zone: LocalZone, line: readonly Position[]): number {
  const about = zoneAbout(zone, line);
  const deepest = line.reduce((most, at) => Math.max(most, depthIn(about, at)), -Infinity);
  if (deepest >= 0 || line.length < 2) return deepest;
  return meetsEdge(about, line) ? 0 : deepest;
}

/** Whether a line meets a zone's edge: asked of those edges one by one whose bounds meet the line's. */
function meetsEdge({ shape }: LocalZone, line: readonly Position[]): boolean {
  const ring = shape.coordinates[0]!;
  const [west, south, east, north] = boxOf(line);
  const drawn: LineString = { type: 'LineString', coordinates: [...line] };
  return ring.slice(1).some((to, k) => {
    const [x0, y0, x1, y1] = boxOf([ring[k]!, to]);
    if (x0 > east || x1 < west || y0 > north || y1 < south) return false;
    return booleanIntersects(drawn, { type: 'LineString', coordinates: [ring[k]!, to] });
  });
}

/** Metres from a place to a straight line. */
export function toLine(at: Position, from: Position, to: Position): number {
  const [dx, dy] = [to[0]! - from[0]!, to[1]! - from[1]!];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : ((at[0]! - from[0]!) * dx + (at[1]! - from[1]!) * dy) / length2;
  const share = Math.min(Math.max(along, 0), 1);
  return Math.hypot(at[0]! - from[0]! - share * dx, at[1]! - from[1]! - share * dy);
}
