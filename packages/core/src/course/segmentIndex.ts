/**
 * One index of a course, built once: boxes of runs of 16 segments, of 16 such boxes and so on, and the
 * standing-still tangles. Finds every stretch of the course near a point in time that hardly grows with
 * the course's length. 2.2 bytes a point.
 */
import type { LonLat } from '../finding.ts';
import { ECCENTRICITY_2, EQUATORIAL_RADIUS, RADIANS } from '../geodesy/ellipsoid.ts';
import type { Course } from './course.ts';
import { type Tangle, tanglesOf } from './tangles.ts';
import { wantCourse } from './course.ts';

/** Boxes around runs of a course, level by level: 16 segments each, then 16 boxes of the level before, up to one around all. */
export interface Boxes {
  /** West, south, east and north of each box, degrees, in running order. */
  readonly levels: readonly Float64Array[];
}

/** A course with what makes finding on it fast; made by {@link indexCourse}, once a course. */
export interface IndexedCourse {
  readonly course: Course;
  /** Boxes of its runs. */
  readonly boxes: Boxes;
  /** Stretches where a recorder stood still, in running order. */
  readonly tangles: readonly Tangle[];
}

/** A run of vertices, both ends included. */
export interface VertexRun {
  readonly first: number;
  readonly last: number;
}

/** So many segments are in a box, and so many boxes in one of the next level. */
export const BRANCHES = 16;

/**
 * Indexes a course, so that its passes by a point are found in a time that hardly grows with its length. The course is not copied.
 * @example
 * ```ts
 * import { buildCourse, indexCourse, nearestOn } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const indexed = indexCourse(built.value);
 * nearestOn(indexed, [-30.0975, 12.21]).measure; // → 272.06
 * ```
 */
export function indexCourse(course: Course): IndexedCourse {
  wantCourse('indexCourse', course);
  return { course, boxes: boxesOf(course.lon, course.lat), tangles: tanglesOf(course) };
}

function boxesOf(lon: Float64Array, lat: Float64Array): Boxes {
  let level = runBoxes(lon, lat);
  const levels = [level];
  while (level.length > 4) {
    level = boxesAround(level);
    levels.push(level);
  }
  return { levels };
}

function runBoxes(lon: Float64Array, lat: Float64Array): Float64Array {
  const segments = lon.length - 1;
  const boxes = new Float64Array(4 * Math.ceil(segments / BRANCHES));
  for (let first = 0, to = 0; first < segments; first += BRANCHES, to += 4) {
    const last = Math.min(first + BRANCHES, segments);
    let west = lon[first]!;
    let east = west;
    let south = lat[first]!;
    let north = south;
    for (let i = first + 1; i <= last; i++) {
      const x = lon[i]!;
      const y = lat[i]!;
      if (x < west) west = x;
      else if (x > east) east = x;
      if (y < south) south = y;
      else if (y > north) north = y;
    }
    boxes[to] = west;
    boxes[to + 1] = south;
    boxes[to + 2] = east;
    boxes[to + 3] = north;
  }
  return boxes;
}

function boxesAround(inner: Float64Array): Float64Array {
  const boxes = new Float64Array(4 * Math.ceil(inner.length / 4 / BRANCHES));
  for (let k = 0; k < inner.length; k += 4) {
    const to = 4 * Math.floor(k / 4 / BRANCHES);
    const opens = k % (4 * BRANCHES) === 0;
    boxes[to] = opens ? inner[k]! : Math.min(boxes[to]!, inner[k]!);
    boxes[to + 1] = opens ? inner[k + 1]! : Math.min(boxes[to + 1]!, inner[k + 1]!);
    boxes[to + 2] = opens ? inner[k + 2]! : Math.max(boxes[to + 2]!, inner[k + 2]!);
    boxes[to + 3] = opens ? inner[k + 3]! : Math.max(boxes[to + 3]!, inner[k + 3]!);
  }
  return boxes;
}

/** A part of the plane of longitudes and latitudes, in the turns of the course's own longitudes; east of west where empty. */
export interface Window {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** The least window that surely holds whatever of the course is within `radius` metres of a point; where longitudes meet it in two turns, both and all between. */
export function windowAround({ boxes }: IndexedCourse, [lon, lat]: LonLat, radius: number): Window {
  const root = boxes.levels[boxes.levels.length - 1]!;
  // The polar radius of curvature is the largest, the equatorial meridian's the smallest: both err to the safe side.
  const halfHeight = radius / (EQUATORIAL_RADIUS * (1 - ECCENTRICITY_2)) / RADIANS + 1e-7;
  const farthest = Math.min(Math.abs(lat) + halfHeight, 90);
  const cosine = Math.cos(farthest * RADIANS);
  const halfWidth = cosine < 1e-6 ? 360 : radius / (EQUATORIAL_RADIUS * cosine) / RADIANS + 1e-7;
  const firstTurn = Math.ceil((root[0]! - halfWidth - lon) / 360);
  const lastTurn = Math.floor((root[2]! + halfWidth - lon) / 360);
  if (firstTurn > lastTurn) return NOWHERE;
  return {
    west: lon + 360 * firstTurn - halfWidth,
    south: lat - halfHeight,
    east: lon + 360 * lastTurn + halfWidth,
    north: lat + halfHeight,
  };
}

const NOWHERE: Window = { west: Infinity, south: Infinity, east: -Infinity, north: -Infinity };

/** Goes through the boxes in running order, into those that are `wanted`, and tells `leaf` the number of each of the first level's that is. */
export function visitBoxes(
  levels: readonly Float64Array[],
  wanted: (level: Float64Array, k: number) => boolean,
  leaf: (box: number) => void,
): void {
  const top = levels.length - 1;
  let depth = top;
  let level = levels[top]!;
  let box = 0;
  while (4 * box < level.length) {
    if (wanted(level, 4 * box)) {
      if (depth > 0) {
        level = levels[--depth]!;
        box *= BRANCHES;
        continue;
      }
      leaf(box);
    }
    box++;
    while (box % BRANCHES === 0 && depth < top) {
      level = levels[++depth]!;
      box /= BRANCHES;
    }
  }
}

/** Runs of vertices that hold every segment that meets a window, in running order, touching runs merged. */
export function runsIn({ course, boxes: { levels } }: IndexedCourse, window: Window): VertexRun[] {
  const { west, south, east, north } = window;
  const runs: { first: number; last: number }[] = [];
  const segments = course.lon.length - 1;
  let open: { first: number; last: number } | null = null;
  visitBoxes(
    levels,
    (level, k) => level[k]! <= east && level[k + 2]! >= west && level[k + 1]! <= north && level[k + 3]! >= south,
    (box) => {
      const first = box * BRANCHES;
      const last = Math.min(first + BRANCHES, segments);
      if (open !== null && open.last === first) open.last = last;
      else runs.push((open = { first, last }));
    },
  );
  return runs;
}
