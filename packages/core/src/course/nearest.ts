/**
 * The nearest place of a course, however far, without looking at most of it: the few segments that may be
 * nearest are found by series (`planeSearch.ts`), beyond 50 km and towards the poles by Karney and the triangle
 * inequality over boxes, and measured exactly.
 */
import type { LonLat } from '../finding.ts';
import { RADIANS, wrapDegrees } from '../geodesy/ellipsoid.ts';
import { placeAfar } from '../geodesy/farFrame.ts';
import { type Frame, type Spot, placeByGeodesic } from '../geodesy/frame.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Course } from './course.ts';
import { pointOf, vertexAt } from './locate.ts';
import { type Minimum, minimumOf, skipFrom } from './minima.ts';
import { nearestByPlane } from './planeSearch.ts';
import { BRANCHES, type IndexedCourse, visitBoxes } from './segmentIndex.ts';

/** The nearest place in the point's frame, and where it is. */
export interface NearestPlace {
  readonly minimum: Minimum;
  readonly foot: LonLat;
}

/** Writes where a vertex lies, metres from the point, exact. */
type Place = (vertex: number, into: Spot) => void;

/** The nearest place of a course, the first in running order where places are within `same` metres as near. */
export function nearestPlace(indexed: IndexedCourse, frame: Frame, same: number): NearestPlace {
  const { course } = indexed;
  const near = nearestByPlane(indexed, frame);
  if (near !== null)
    return nearestAmong(course, near, same, (vertex, into) => {
      placeAfar(frame, wrapDegrees(course.lon[vertex]! - frame.lon), course.lat[vertex]! - frame.lat, into);
    });
  const place: Place = (vertex, into) => placeByGeodesic(frame, course.lon[vertex]!, course.lat[vertex]!, into);
  return nearestAmong(course, nearestByGeodesics(indexed, frame, place), same, place);
}

/** Where on a segment its foot lies: under 0 before it, over 1 behind it. */
function shareOf(from: Spot, to: Spot): number {
  const dx = to.east - from.east;
  const dy = to.north - from.north;
  const squared = dx * dx + dy * dy;
  return squared === 0 ? 0 : -(from.east * dx + from.north * dy) / squared;
}

function distanceTo(from: Spot, to: Spot, share: number): number {
  const inside = share < 0 ? 0 : share > 1 ? 1 : share;
  const x = from.east + inside * (to.east - from.east);
  const y = from.north + inside * (to.north - from.north);
  return Math.sqrt(x * x + y * y);
}

/** The nearest of some segments in running order, by their exact places. */
function nearestAmong(course: Course, segments: readonly number[], same: number, place: Place): NearestPlace {
  const from: Spot = { east: 0, north: 0 };
  const to: Spot = { east: 0, north: 0 };
  const best = { vertex: -1, share: 0, distance: Infinity, from: { east: 0, north: 0 }, to: { east: 0, north: 0 } };
  let placed = -1;
  for (const vertex of segments) {
    if (placed === vertex) copySpot(to, from);
    else place(vertex, from);
    place(vertex + 1, to);
    placed = vertex + 1;
    const share = shareOf(from, to);
    const distance = distanceTo(from, to, share);
    // Where the course goes on coming nearer, the end of the segment before is no place of its own.
    const goesOn = share > 0 && best.share >= 1 && best.vertex + 1 === vertex;
    if (best.vertex >= 0 && !(distance < best.distance - (goesOn ? 0 : same))) continue;
    best.vertex = vertex;
    best.share = share;
    best.distance = distance;
    copySpot(from, best.from);
    copySpot(to, best.to);
  }
  return placeOn(course, place, best);
}

function copySpot(spot: Spot, into: Spot): void {
  into.east = spot.east;
  into.north = spot.north;
}

/** Where on a segment the nearest place is: `share` under 0 before it, over 1 behind it. */
interface OnSegment {
  readonly vertex: number;
  readonly share: number;
  readonly from: Spot;
  readonly to: Spot;
}

/** The place, at a vertex with the tangents of both its segments. */
function placeOn(course: Course, place: Place, { vertex, share, from, to }: OnSegment): NearestPlace {
  const skips = (segment: number): boolean => skipFrom(course, segment) === segment;
  const finish = course.lon.length - 1;
  const other: Spot = { east: 0, north: 0 };
  if (share >= 1 && vertex + 1 < finish && !skips(vertex + 1)) {
    place(vertex + 2, other);
    const before: Spot = { east: to.east - from.east, north: to.north - from.north };
    return {
      minimum: minimumOf(course, vertex + 1, 0, to, other, before, undefined),
      foot: vertexAt(course, vertex + 1),
    };
  }
  if (share <= 0 && vertex > 0 && !skips(vertex - 1)) {
    place(vertex - 1, other);
    const before: Spot = { east: from.east - other.east, north: from.north - other.north };
    return { minimum: minimumOf(course, vertex, 0, from, to, before, undefined), foot: vertexAt(course, vertex) };
  }
  const end = share < 0 && vertex === 0 ? 'start' : share > 1 && vertex + 1 === finish ? 'finish' : undefined;
  const inside = Math.min(Math.max(share, 0), 1);
  return {
    minimum: minimumOf(course, vertex, inside, from, to, null, end),
    foot: pointOf(course, { vertex, share: inside, raw: 0 }),
  };
}

/** No radius of curvature is longer, metres: the polar one. */
const LONGEST_RADIUS = 6_399_594;
/** Metres: what is not farther than this beyond the least may be the nearest. */
const SLACK = 0.01;

/** Segments that may be the nearest, in running order, from anywhere: first down into the box that seems nearest, then whatever may hold something nearer. */
function nearestByGeodesics({ course, boxes: { levels } }: IndexedCourse, frame: Frame, place: Place): number[] {
  const found: { vertex: number; distance: number }[] = [];
  let limit = Infinity;
  const from: Spot = { east: 0, north: 0 };
  const to: Spot = { east: 0, north: 0 };
  const searchBox = (box: number): void => {
    const last = Math.min((box + 1) * BRANCHES, course.lon.length - 1);
    place(box * BRANCHES, from);
    for (let vertex = box * BRANCHES; vertex < last; vertex++) {
      place(vertex + 1, to);
      const distance = skipFrom(course, vertex) === vertex ? Infinity : distanceTo(from, to, shareOf(from, to));
      copySpot(to, from);
      if (!(distance <= limit)) continue;
      found.push({ vertex, distance });
      limit = Math.min(limit, distance + SLACK);
    }
  };
  const first = likelyBox(levels, frame);
  searchBox(first);
  visitBoxes(
    levels,
    (level, k) => boundOf(frame, level, k) <= limit,
    (box) => {
      if (box !== first) searchBox(box);
    },
  );
  const near = found.filter(({ distance }) => distance <= limit);
  return near.map(({ vertex }) => vertex).sort((a, b) => a - b);
}

function likelyBox(levels: readonly Float64Array[], frame: Frame): number {
  let box = 0;
  for (const level of levels.slice(0, -1).reverse()) {
    const inner = Array.from(
      { length: Math.min(BRANCHES, level.length / 4 - box * BRANCHES) },
      (_, k) => box * BRANCHES + k,
    );
    const bounds = inner.map((k) => boundOf(frame, level, 4 * k));
    box = inner[bounds.indexOf(Math.min(...bounds))]!;
  }
  return box;
}

/** Metres, never more than the distance to the box at `k` of a level: by the triangle inequality over its middle. */
function boundOf({ lon, lat }: Frame, level: Float64Array, k: number): number {
  const [west, south, east, north] = level.subarray(k, k + 4) as unknown as [number, number, number, number];
  // From the middle along its meridian, then along a parallel, no point of the box is farther away than this.
  const widest = south <= 0 && north >= 0 ? 1 : Math.cos(Math.min(Math.abs(south), Math.abs(north)) * RADIANS);
  const half = 0.5 * RADIANS * LONGEST_RADIUS * (north - south + (east - west) * widest);
  return inverseLength(lon, lat, (west + east) / 2, (south + north) / 2) - half;
}
