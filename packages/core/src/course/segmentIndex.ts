/**
 * One index of a course, built once: boxes of runs of 16 segments in a packed R-tree (flatbush),
 * and the standing-still tangles. Finds every stretch of the course near a point in
 * time that does not grow with the course's length. 2.3 bytes a point.
 */
import Flatbush from 'flatbush';
import type { LonLat } from '../finding.ts';
import { ECCENTRICITY_2, EQUATORIAL_RADIUS, RADIANS } from '../geodesy/ellipsoid.ts';
import type { Course } from './course.ts';
import { type Tangle, tanglesOf } from './tangles.ts';
import { wantCourse } from './course.ts';

/** A course with what makes finding on it fast; made by {@link indexCourse}, once a course. */
export interface IndexedCourse {
  readonly course: Course;
  /** Boxes of runs of 16 segments, degrees. */
  readonly boxes: Flatbush;
  /** Stretches where a recorder stood still, in running order. */
  readonly tangles: readonly Tangle[];
}

/** A run of vertices, both ends included. */
export interface VertexRun {
  readonly first: number;
  readonly last: number;
}

const SEGMENTS_A_BOX = 16;

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
  const { lon, lat } = course;
  const segments = lon.length - 1;
  const boxes = new Flatbush(Math.ceil(segments / SEGMENTS_A_BOX));
  for (let first = 0; first < segments; first += SEGMENTS_A_BOX) {
    const last = Math.min(first + SEGMENTS_A_BOX, segments);
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
    boxes.add(west, south, east, north);
  }
  boxes.finish();
  return { course, boxes, tangles: tanglesOf(course) };
}

/** Runs of vertices that hold every segment within `radius` metres of a point, in running order, touching runs merged. */
export function nearRuns({ course, boxes }: IndexedCourse, [lon, lat]: LonLat, radius: number): VertexRun[] {
  // The polar radius of curvature is the largest, the equatorial meridian's the smallest: both err to the safe side.
  const halfHeight = radius / (EQUATORIAL_RADIUS * (1 - ECCENTRICITY_2)) / RADIANS + 1e-7;
  const farthest = Math.min(Math.abs(lat) + halfHeight, 90);
  const cosine = Math.cos(farthest * RADIANS);
  const halfWidth = cosine < 1e-6 ? 360 : radius / (EQUATORIAL_RADIUS * cosine) / RADIANS + 1e-7;
  const hits = new Set<number>();
  const turns = Math.round((boxes.minX + boxes.maxX) / 2 / 360);
  for (const turn of [turns - 1, turns, turns + 1]) {
    const x = lon + 360 * turn;
    for (const box of boxes.search(x - halfWidth, lat - halfHeight, x + halfWidth, lat + halfHeight)) hits.add(box);
  }
  return merged(
    [...hits].sort((a, b) => a - b),
    course.lon.length - 1,
  );
}

function merged(ascending: readonly number[], segments: number): VertexRun[] {
  const runs: { first: number; last: number }[] = [];
  for (const box of ascending) {
    const first = box * SEGMENTS_A_BOX;
    const last = Math.min(first + SEGMENTS_A_BOX, segments);
    const open = runs.at(-1);
    if (open !== undefined && open.last === first) open.last = last;
    else runs.push({ first, last });
  }
  return runs;
}
