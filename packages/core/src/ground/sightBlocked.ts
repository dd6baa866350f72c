/**
 * Whether a building stands between two points, seen at eye height over flat ground.
 * Model: a straight line in a local plane and the buildings' outlines, walls without thickness. A line is blocked where over 1 cm of it in a
 * row lies inside one building: to touch a corner, or to run along a wall, blocks nothing; courtyards are outside. An end inside a building
 * is blocked from there on. Hills, walls, hedges and vehicles are not known.
 */
import type { LonLat } from '../finding.ts';
import { type Frame, type Spot, frameAt, fromFrame, placeIn } from '../geodesy/frame.ts';
import { position, want } from '../wants.ts';
import { type Buildings, buildingsIn, isBuildings } from './buildings.ts';
import type { GroundArea } from './ground.ts';

/** Metres inside a building that count, and metres from a wall that are still the wall. */
const INSIDE = 0.01;
const WALL = 1e-6;

/** What is in the way. */
export interface SightBlock {
  readonly building: GroundArea;
  /** Where the line goes into it. */
  readonly at: LonLat;
  /** Metres from the first point to there. */
  readonly distance: number;
}

/** A ring in the plane of the line: x along it from its first point, y left of it, metres. */
interface Ring {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/**
 * The first building in the way from one point to another; `null` where none is known to be.
 * @returns `distance` and `at`: where the line goes into it, the first point itself where that lies inside.
 * @example
 * ```ts
 * import { indexBuildings, sightBlocked } from '@halfcup/core/ground';
 *
 * const walls = { lon: Float64Array.of(-30.099, -30.098, -30.098, -30.099), lat: Float64Array.of(12.199, 12.199, 12.201, 12.199) };
 * const house = { id: 'way/8', tags: { building: 'yes' }, rings: [walls] };
 * const source = { date: null, credit: 'own survey', licence: null };
 * const buildings = indexBuildings({ source, ways: [], areas: [house], points: [] });
 * sightBlocked([-30.1, 12.2], [-30.097, 12.2], buildings)?.building.id; // → 'way/8'
 * sightBlocked([-30.1, 12.198], [-30.097, 12.198], buildings); // → null
 * ```
 */
export function sightBlocked(from: LonLat, to: LonLat, buildings: Buildings): SightBlock | null {
  want('sightBlocked', 'from', position, from);
  want('sightBlocked', 'to', position, to);
  want('sightBlocked', 'buildings', isBuildings, buildings);
  const frame = frameAt(from[0], from[1]);
  const end: Spot = { east: 0, north: 0 };
  placeIn(frame, to[0], to[1], end);
  const length = Math.hypot(end.east, end.north);
  if (length <= INSIDE) return null;
  const [ux, uy] = [end.east / length, end.north / length];
  let first: SightBlock | null = null;
  for (const building of buildingsIn(buildings, boxOf(from, to))) {
    const distance = entryInto(building, frame, ux, uy, length);
    if (distance !== null && distance < (first?.distance ?? Infinity))
      first = { building, distance, at: fromFrame(frame, ux * distance, uy * distance) };
  }
  return first;
}

/** West, south, east, north; a hair wider, for a geodesic is no straight line of degrees. */
function boxOf(a: LonLat, b: LonLat): [number, number, number, number] {
  const hair = 1e-7 + 1e-3 * (Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]));
  return [
    Math.min(a[0], b[0]) - hair,
    Math.min(a[1], b[1]) - hair,
    Math.max(a[0], b[0]) + hair,
    Math.max(a[1], b[1]) + hair,
  ];
}

/** Metres along the line to where it is inside a building first; `null` where it never is. */
function entryInto({ rings }: GroundArea, frame: Frame, ux: number, uy: number, length: number): number | null {
  const turned = rings.map((ring) => turnedRing(ring, frame, ux, uy));
  const cuts = [0, length, ...turned.flatMap((ring) => cutsOf(ring, length))].sort((a, b) => a - b);
  let entry: number | null = null;
  for (let k = 0, start = 0; k + 1 < cuts.length; k++) {
    const next = cuts[k + 1]!;
    if (next - start <= WALL) continue;
    if (!isInside(turned, (start + next) / 2)) entry = null;
    else if (next - (entry ??= start) > INSIDE) return entry;
    start = next;
  }
  return null;
}

function turnedRing({ lon, lat }: GroundArea['rings'][number], frame: Frame, ux: number, uy: number): Ring {
  const x = new Float64Array(lon.length);
  const y = new Float64Array(lon.length);
  const spot: Spot = { east: 0, north: 0 };
  for (let i = 0; i < lon.length; i++) {
    placeIn(frame, lon[i]!, lat[i]!, spot);
    x[i] = spot.east * ux + spot.north * uy;
    y[i] = spot.north * ux - spot.east * uy;
  }
  return { x, y };
}

/** Where a ring meets the line, ends of walls that lie along it included. */
function cutsOf({ x, y }: Ring, length: number): number[] {
  const cuts: number[] = [];
  for (let i = 0; i + 1 < x.length; i++) {
    const [y0, y1] = [y[i]!, y[i + 1]!];
    if (Math.abs(y0) <= WALL) cuts.push(x[i]!);
    if (Math.abs(y1) <= WALL) cuts.push(x[i + 1]!);
    else if (y0 < 0 !== y1 < 0) cuts.push(x[i]! + ((x[i + 1]! - x[i]!) * y0) / (y0 - y1));
  }
  return cuts.filter((at) => at > 0 && at < length);
}

/** Whether a place of the line lies inside, and on no wall: by the walls ahead of it, of all rings. */
function isInside(rings: readonly Ring[], at: number): boolean {
  let inside = false;
  for (const { x, y } of rings)
    for (let i = 0; i + 1 < x.length; i++) {
      const [x0, y0, x1, y1] = [x[i]!, y[i]!, x[i + 1]!, y[i + 1]!];
      if (Math.abs(y0) <= WALL && Math.abs(y1) <= WALL && Math.min(x0, x1) <= at && at <= Math.max(x0, x1))
        return false;
      if (y0 > 0 !== y1 > 0 && x0 + ((x1 - x0) * y0) / (y0 - y1) > at) inside = !inside;
    }
  return inside;
}
