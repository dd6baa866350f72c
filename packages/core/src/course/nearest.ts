/**
 * The nearest place of a course from far away, without looking at most of it: boxes whose nearest corner is
 * farther than the best so far are left out. Up to 50 km by plane series, then the exact frame of the few
 * segments that may be nearest; beyond, and towards the poles, by Karney and the triangle inequality.
 */
import type { LonLat } from '../finding.ts';
import { DEGREES, EQUATORIAL_RADIUS, RADIANS } from '../geodesy/ellipsoid.ts';
import { FAR_FRAME, placeAfar } from '../geodesy/farFrame.ts';
import { type Frame, type Spot, placeByGeodesic, placeBySeries } from '../geodesy/frame.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Course } from './course.ts';
import { pointOf, vertexAt } from './locate.ts';
import { type Minimum, minimumOf, skipFrom } from './minima.ts';
import { BRANCHES, type IndexedCourse, visitBoxes } from './segmentIndex.ts';

/** The nearest place in the point's frame, and where it is. */
export interface NearestPlace {
  readonly minimum: Minimum;
  readonly foot: LonLat;
}

/** How a search measures from its point. */
interface Metric {
  /** Metres, never more than the distance to the box at `k` of a level, as far as that is within `limit` metres. */
  readonly bound: (level: Float64Array, k: number, limit: number) => number;
  /** Writes where a vertex lies, metres from the point. */
  readonly place: (vertex: number, into: Spot) => void;
  /** How far a distance by `place` may be off. */
  readonly slack: (distance: number) => number;
  /** The same as `place`, exact. */
  readonly exact: (vertex: number, into: Spot) => void;
  /** Metres within which all this holds. */
  readonly reach: number;
}

/** Segments that may be the nearest, and how near. */
interface Search {
  readonly course: Course;
  readonly metric: Metric;
  readonly segments: { readonly vertex: number; readonly distance: number }[];
  /** What is farther, metres, is not the nearest. */
  limit: number;
}

/** The nearest place of a course, the first in running order where places are within `same` metres as near. */
export function nearestFar(indexed: IndexedCourse, frame: Frame, same: number): NearestPlace {
  const plane = planeMetric(indexed, frame);
  const near = plane === null ? null : search(indexed, plane);
  if (near !== null && near.limit <= FAR_FRAME) return nearestAmong(near, same);
  return nearestAmong(search(indexed, globeMetric(indexed.course, frame)), same);
}

/** Searches the box that seems nearest, then whatever may hold something nearer; only the first beyond 50 km in the plane, which ends there. */
function search(indexed: IndexedCourse, metric: Metric): Search {
  const found: Search = { course: indexed.course, metric, segments: [], limit: Infinity };
  const { levels } = indexed.boxes;
  const first = likelyBox(levels, metric);
  searchBox(found, first);
  if (metric.reach < found.limit) return found;
  visitBoxes(
    levels,
    (level, k) => metric.bound(level, k, found.limit) <= found.limit,
    (box) => {
      if (box !== first) searchBox(found, box);
    },
  );
  return found;
}

/** Down from the box around all, each time into the one with the least bound. */
function likelyBox(levels: readonly Float64Array[], { bound }: Metric): number {
  let box = 0;
  for (let depth = levels.length - 2; depth >= 0; depth--) {
    const level = levels[depth]!;
    const first = box * BRANCHES;
    const end = Math.min(first + BRANCHES, level.length / 4);
    let least = Infinity;
    for (let inner = first; inner < end; inner++) {
      const metres = bound(level, 4 * inner, Infinity);
      if (metres < least) {
        least = metres;
        box = inner;
      }
    }
  }
  return box;
}

function searchBox(found: Search, box: number): void {
  const { course, metric, segments } = found;
  const first = box * BRANCHES;
  const last = Math.min(first + BRANCHES, course.lon.length - 1);
  const from: Spot = { east: 0, north: 0 };
  const to: Spot = { east: 0, north: 0 };
  let skip = skipFrom(course, first);
  metric.place(first, from);
  for (let vertex = first; vertex < last; vertex++) {
    metric.place(vertex + 1, to);
    if (vertex === skip) skip = skipFrom(course, vertex + 1);
    else {
      const distance = distanceAt(from, to, Math.min(Math.max(shareOf(from, to), 0), 1));
      if (distance <= found.limit) {
        segments.push({ vertex, distance });
        found.limit = Math.min(found.limit, distance + 2 * metric.slack(distance));
      }
    }
    from.east = to.east;
    from.north = to.north;
  }
}

/** Where on a segment its foot lies: under 0 before it, over 1 behind it. */
function shareOf(from: Spot, to: Spot): number {
  const dx = to.east - from.east;
  const dy = to.north - from.north;
  const squared = dx * dx + dy * dy;
  return squared === 0 ? 0 : -(from.east * dx + from.north * dy) / squared;
}

function distanceAt(from: Spot, to: Spot, share: number): number {
  const x = from.east + share * (to.east - from.east);
  const y = from.north + share * (to.north - from.north);
  return Math.sqrt(x * x + y * y);
}

/** The nearest of the segments found, by their exact places. */
function nearestAmong({ course, metric, segments, limit }: Search, same: number): NearestPlace {
  const from: Spot = { east: 0, north: 0 };
  const to: Spot = { east: 0, north: 0 };
  let nearest = -1;
  let least = Infinity;
  let share = 0;
  const maybe = segments.filter(({ distance }) => distance <= limit).sort((a, b) => a.vertex - b.vertex);
  for (const { vertex } of maybe) {
    metric.exact(vertex, from);
    metric.exact(vertex + 1, to);
    const reached = shareOf(from, to);
    const distance = distanceAt(from, to, Math.min(Math.max(reached, 0), 1));
    if (!(distance < least - same) && nearest >= 0) continue;
    nearest = vertex;
    least = distance;
    share = reached;
  }
  return placeOn(course, metric, nearest, share);
}

/** The place on the segment after `vertex`, at a vertex with the tangents of both its segments. */
function placeOn(course: Course, { exact }: Metric, vertex: number, share: number): NearestPlace {
  const skips = (segment: number): boolean => skipFrom(course, segment) === segment;
  const finish = course.lon.length - 1;
  const ends = vertex + 1 === finish || skips(vertex + 1);
  const i = share >= 1 && !ends ? vertex + 1 : vertex;
  const inside = i > vertex ? 0 : Math.min(Math.max(share, 0), 1);
  const [from, to, back]: [Spot, Spot, Spot] = [
    { east: 0, north: 0 },
    { east: 0, north: 0 },
    { east: 0, north: 0 },
  ];
  exact(i, from);
  exact(i + 1, to);
  const through = inside === 0 && i > 0 && !skips(i - 1);
  if (through) exact(i - 1, back);
  const before = through ? { east: from.east - back.east, north: from.north - back.north } : null;
  const end = share < 0 && i === 0 ? 'start' : share > 1 && i === vertex && i + 1 === finish ? 'finish' : undefined;
  const foot = inside === 1 ? vertexAt(course, i + 1) : pointOf(course, { vertex: i, share: inside, raw: 0 });
  return { minimum: minimumOf(course, i, inside, from, to, before, end), foot };
}

/** Up to 50 km and 80° of latitude; `null` where the course is of another place. */
function planeMetric({ course, boxes: { levels } }: IndexedCourse, frame: Frame): Metric | null {
  const [west, , east] = levels.at(-1)! as unknown as [number, number, number];
  if (!frame.temperate || east - west > 180) return null;
  const { lat, sin, cos, meridian } = frame;
  const lon = frame.lon + 360 * Math.round(((west + east) / 2 - frame.lon) / 360);
  // Of the third order are 2 + 3·tan² parts in 24 of the distance over the radius squared; half as much again is left for what follows.
  const third = (2 + (3 * sin * sin) / (cos * cos)) / 16 / (EQUATORIAL_RADIUS * EQUATORIAL_RADIUS);
  const parallelAt = (at: number): number => {
    const u = 0.5 * RADIANS * (at - lat);
    return frame.parallel + u * (frame.parallel1 + u * frame.parallel2);
  };
  return {
    bound: (level, k, limit) => {
      const reach = (Math.min(limit, FAR_FRAME) / meridian) * 1.001 * DEGREES;
      const south = level[k + 1]!;
      const north = level[k + 3]!;
      const dLon = Math.max(level[k]! - lon, lon - level[k + 2]!, 0);
      const dLat = Math.max(south - lat, lat - north, 0);
      // The parallel is shortest at one edge of the part of the box that is within reach.
      const low = Math.min(Math.max(south, lat - reach), lat + reach);
      const high = Math.min(Math.max(north, lat - reach), lat + reach);
      const x = Math.min(parallelAt(low), parallelAt(high)) * dLon * RADIANS;
      const y = 0.9998 * meridian * dLat * RADIANS;
      return Math.sqrt(x * x + y * y);
    },
    place: (vertex, into) => placeBySeries(frame, course.lon[vertex]! - lon, course.lat[vertex]! - lat, into),
    slack: (distance) => 0.01 + third * distance * distance * distance,
    exact: (vertex, into) => placeAfar(frame, course.lon[vertex]! - lon, course.lat[vertex]! - lat, into),
    reach: FAR_FRAME,
  };
}

/** No radius of curvature is longer, metres: the polar one. */
const LONGEST_RADIUS = 6_399_594;

/** Anywhere. */
function globeMetric({ lon, lat }: Course, frame: Frame): Metric {
  const place = (vertex: number, into: Spot): void => placeByGeodesic(frame, lon[vertex]!, lat[vertex]!, into);
  return {
    bound: (level, k) => {
      const [west, south, east, north] = [level[k]!, level[k + 1]!, level[k + 2]!, level[k + 3]!];
      // From the middle of the box along its meridian, then along a parallel, no point of it is farther away.
      const widest = south <= 0 && north >= 0 ? 1 : Math.cos(Math.min(Math.abs(south), Math.abs(north)) * RADIANS);
      const half = 0.5 * RADIANS * LONGEST_RADIUS * (north - south + (east - west) * widest);
      return inverseLength(frame.lon, frame.lat, (west + east) / 2, (south + north) / 2) - half;
    },
    place,
    slack: () => 0.01,
    exact: place,
    reach: Infinity,
  };
}
