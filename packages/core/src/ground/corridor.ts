/**
 * What lies within some distance of a plan's courses: points and segments held against the course's segments of their own cell of
 * a grid. Model: the plane about each point, which over 300 m is right to centimetres. Longitudes are taken in the courses' own turn.
 */
import type { Course } from '../course/course.ts';
import { ECCENTRICITY_2, EQUATORIAL_RADIUS, RADIANS } from '../geodesy/ellipsoid.ts';
import type { GroundLine } from './ground.ts';
import { comesWithin, squareToSegment } from './planeDistance.ts';
import { isInside } from './rings.ts';

/** West, south, east, north in degrees; west may be beyond −180, east beyond 180. */
export type Bounds = readonly [west: number, south: number, east: number, north: number];

/** Made by {@link corridorOf}. */
export interface Corridor {
  readonly courses: readonly Course[];
  /** Square of the reach, square metres. */
  readonly most: number;
  /** The reach in degrees, at least, each way. */
  readonly wide: number;
  readonly high: number;
  /** Of all that is within reach. */
  readonly bounds: Bounds;
  /** Segments of courses within twice the reach of each cell, which is as wide as the reach; four numbers each, degrees. */
  readonly cells: ReadonlyMap<number, readonly number[]>;
  /** Of small cells that were asked about, metres from their middle to the nearest course, as far as twice the reach. */
  readonly middles: Map<number, number>;
}

/** Small cells to the reach. */
const FINE = 8;

const COLUMNS = 2 ** 24;

/** Metres of a degree of longitude and of latitude. */
function scaleAt(lat: number): readonly [x: number, y: number] {
  const sin = Math.sin(lat * RADIANS);
  const root = Math.sqrt(1 - ECCENTRICITY_2 * sin * sin);
  const prime = EQUATORIAL_RADIUS / root;
  const meridian = (EQUATORIAL_RADIUS * (1 - ECCENTRICITY_2)) / (root * root * root);
  return [prime * Math.cos(lat * RADIANS) * RADIANS, meridian * RADIANS];
}

function extentOf(courses: readonly Course[]): Bounds {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { lon, lat } of courses)
    for (let i = 0; i < lon.length; i++) {
      west = Math.min(west, lon[i]!);
      east = Math.max(east, lon[i]!);
      south = Math.min(south, lat[i]!);
      north = Math.max(north, lat[i]!);
    }
  return [west, south, east, north];
}

/** Everything within `reach` metres of the courses, of which there is one at least. */
export function corridorOf(courses: readonly Course[], reach: number): Corridor {
  const [west, south, east, north] = extentOf(courses);
  // On the equator a degree of latitude is shortest.
  const high = reach / scaleAt(0)[1];
  const farthest = Math.min(Math.max(Math.abs(south), Math.abs(north)) + high, 89.9);
  const wide = high / Math.cos(farthest * RADIANS);
  const cells = new Map<number, number[]>();
  const bounds = [west - wide, south - high, east + wide, north + high] as const;
  const corridor: Corridor = { courses, most: reach * reach, wide, high, bounds, cells, middles: new Map() };
  for (const { lon, lat, skips } of courses) {
    const skipped = new Set(skips.map(({ vertex }) => vertex));
    for (let i = 0; i + 1 < lon.length; i++)
      if (!skipped.has(i)) enter(corridor, cells, [lon[i]!, lat[i]!, lon[i + 1]!, lat[i + 1]!]);
  }
  return corridor;
}

const rowOf = ({ bounds, high }: Corridor, lat: number): number => Math.floor((lat - bounds[1]) / high) + 4;
const columnOf = ({ bounds, wide }: Corridor, lon: number): number => Math.floor((lon - bounds[0]) / wide) + 4;

/** Puts a segment into every cell within twice the reach, so that a line can be looked at by samples one reach apart. */
function enter(corridor: Corridor, cells: Map<number, number[]>, [ax, ay, bx, by]: Bounds): void {
  const { wide, high } = corridor;
  const left = columnOf(corridor, Math.min(ax, bx) - 2 * wide);
  const right = columnOf(corridor, Math.max(ax, bx) + 2 * wide);
  const low = rowOf(corridor, Math.min(ay, by) - 2 * high);
  const top = rowOf(corridor, Math.max(ay, by) + 2 * high);
  for (let row = low; row <= top; row++)
    for (let column = left; column <= right; column++) {
      const key = row * COLUMNS + column;
      const cell = cells.get(key);
      if (cell === undefined) cells.set(key, [ax, ay, bx, by]);
      else cell.push(ax, ay, bx, by);
    }
}

const cellAt = (corridor: Corridor, lon: number, lat: number): readonly number[] | undefined =>
  corridor.cells.get(rowOf(corridor, lat) * COLUMNS + columnOf(corridor, lon));

/** A longitude in the turn of the courses, where it is near them in any. */
function turned({ bounds: [west, , east] }: Corridor, lon: number): number {
  if (lon < west && lon + 360 <= east) return lon + 360;
  return lon > east && lon - 360 >= west ? lon - 360 : lon;
}

/** Square of the distance to the nearest segment of the position's cell, square metres; it may stop where `enough` is reached. */
function nearestSquare(corridor: Corridor, lon: number, lat: number, enough: number): number {
  const near = cellAt(corridor, lon, lat);
  if (near === undefined) return Infinity;
  const [mx, my] = scaleAt(lat);
  let least = Infinity;
  for (let k = 0; k < near.length && least > enough; k += 4) {
    const ax = (near[k]! - lon) * mx;
    const ay = (near[k + 1]! - lat) * my;
    const bx = (near[k + 2]! - lon) * mx;
    const by = (near[k + 3]! - lat) * my;
    const square = squareToSegment(0, 0, ax, ay, bx, by);
    if (square < least) least = square;
  }
  return least;
}

/** How far a position is from the courses at least and at most, metres, by its small cell; no more than twice the reach is told. */
function roughly(corridor: Corridor, lon: number, lat: number): readonly [least: number, most: number] {
  const { wide, high, bounds, middles, most } = corridor;
  const column = Math.floor(((lon - bounds[0]) / wide) * FINE);
  const row = Math.floor(((lat - bounds[1]) / high) * FINE);
  const y = bounds[1] + ((row + 0.5) / FINE) * high;
  const key = (row + 64) * COLUMNS + column + 64;
  let middle = middles.get(key);
  if (middle === undefined) {
    const x = bounds[0] + ((column + 0.5) / FINE) * wide;
    middle = Math.min(Math.sqrt(nearestSquare(corridor, x, y, 0)), 2 * Math.sqrt(most));
    middles.set(key, middle);
  }
  const [mx, my] = scaleAt(y);
  // A centimetre for the plane, which is another one at the middle.
  const slack = 0.5 * Math.hypot((wide / FINE) * mx, (high / FINE) * my) + 0.01;
  return [middle - slack, middle + slack];
}

const isOutside = ({ bounds: [west, south, east, north] }: Corridor, lon: number, lat: number): boolean =>
  lon < west || lon > east || lat < south || lat > north;

/** Whether a position is within reach of a course. */
export function holds(corridor: Corridor, given: number, lat: number): boolean {
  const lon = turned(corridor, given);
  if (isOutside(corridor, lon, lat)) return false;
  const [least, most] = roughly(corridor, lon, lat);
  const square = corridor.most;
  if (most * most <= square) return true;
  return least > 0 && least * least > square ? false : nearestSquare(corridor, lon, lat, square) <= square;
}

/** Whether any of the straight line between two positions, the short way round, is within reach of a course. */
export function meets(corridor: Corridor, fromLon: number, fromLat: number, toLon: number, toLat: number): boolean {
  const { bounds } = corridor;
  if (Math.max(fromLat, toLat) < bounds[1] || Math.min(fromLat, toLat) > bounds[3]) return false;
  const step = toLon - fromLon;
  const from = turned(corridor, fromLon);
  const to = from + (step > 180 ? step - 360 : step < -180 ? step + 360 : step);
  if (Math.max(from, to) < bounds[0] || Math.min(from, to) > bounds[2]) return false;
  if (holds(corridor, from, fromLat) || holds(corridor, to, toLat)) return true;
  return !isFarFrom(corridor, [from, fromLat, to, toLat]) && comesNear(corridor, [from, fromLat, to, toLat]);
}

/** Whether a line is too short to come near, by how far its first end is: so are most of those that are beside the corridor. */
function isFarFrom(corridor: Corridor, [ax, ay, bx, by]: Bounds): boolean {
  if (isOutside(corridor, ax, ay)) return false;
  const [mx, my] = scaleAt(Math.abs(ay) < Math.abs(by) ? ay : by);
  const length = Math.hypot((bx - ax) * mx, (by - ay) * my);
  const [least] = roughly(corridor, ax, ay);
  return least - length > Math.sqrt(corridor.most);
}

/** Of a line neither of whose ends is near: by samples no farther apart than the reach; the whole line is held against the courses about each. */
function comesNear(corridor: Corridor, [ax, ay, bx, by]: Bounds): boolean {
  const { wide, high, most, bounds } = corridor;
  // Only what is within the bounds, so that a line across an ocean costs no more than one across the town.
  const [first, last] = insideShares([ax, ay, bx, by], bounds);
  const steps = Math.ceil((last - first) * Math.max(Math.abs(bx - ax) / wide, Math.abs(by - ay) / high));
  for (let k = 0; k <= steps; k++) {
    const share = first + (steps === 0 ? 0 : (k / steps) * (last - first));
    const [x, y] = [ax + share * (bx - ax), ay + share * (by - ay)];
    const near = cellAt(corridor, x, y);
    if (near === undefined) continue;
    const [mx, my] = scaleAt(y);
    const line: Bounds = [(ax - x) * mx, (ay - y) * my, (bx - x) * mx, (by - y) * my];
    for (let n = 0; n < near.length; n += 4) {
      const a = [(near[n]! - x) * mx, (near[n + 1]! - y) * my] as const;
      const b = [(near[n + 2]! - x) * mx, (near[n + 3]! - y) * my] as const;
      if (comesWithin([...a, ...b], line, most)) return true;
    }
  }
  return false;
}

/** Which shares of a line lie within bounds, by Liang and Barsky (1984, doi:10.1145/357332.357333); from over to where none does. */
function insideShares([ax, ay, bx, by]: Bounds, [west, south, east, north]: Bounds): readonly [number, number] {
  let [first, last] = [0, 1];
  for (const [from, step, least, most] of [
    [ax, bx - ax, west, east],
    [ay, by - ay, south, north],
  ] as const) {
    if (step === 0) continue;
    const [a, b] = [(least - from) / step, (most - from) / step];
    first = Math.max(first, Math.min(a, b));
    last = Math.min(last, Math.max(a, b));
  }
  return last < first ? [0, 0] : [first, last];
}

/** Whether any of a closed ring, or of what it encloses, is within reach of a course. */
export function meetsArea(corridor: Corridor, ring: GroundLine): boolean {
  const { lon, lat } = ring;
  for (let i = 0; i + 1 < lon.length; i++) if (meets(corridor, lon[i]!, lat[i]!, lon[i + 1]!, lat[i + 1]!)) return true;
  // No edge is near: each course is inside as a whole, or outside.
  const turns = [-360, 0, 360];
  return corridor.courses.some((course) => turns.some((turn) => isInside(ring, course.lon[0]! + turn, course.lat[0]!)));
}
