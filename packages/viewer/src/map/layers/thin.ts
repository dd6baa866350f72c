/**
 * A course with only the vertices that its drawn line needs. For drawing only: what is computed keeps every vertex.
 * Method: from each kept vertex a cone of the directions that pass all vertices since within the tolerance
 * (J. Sklansky and V. Gonzalez, Pattern Recognition 12, 1980); one pass, no recursion.
 */
import type { Course } from '@halfcup/core/stages';
import { keep } from '../../state/view/derive.ts';

/** Courses with fewer vertices are drawn as they are. */
const FEW = 20_000;
/** More than these take the map longer than a person waits. */
const MANY = 150_000;
/** Metres: a pixel at the deepest zoom, and the most that is given up for a course of very many vertices, well under what a receiver is sure of. */
const FINEST = 0.02;
const COARSEST = 0.32;

const METRES_A_DEGREE = 111_320;

/** Indexes of the vertices to keep, both ends among them; no vertex left out lies further than twice `tolerance` metres from the line that is left. */
export function keptVertices(
  lon: Float64Array,
  lat: Float64Array,
  tolerance: number,
  must: ReadonlySet<number>,
): number[] {
  const last = lon.length - 1;
  const kept = [0];
  let anchor = 0;
  let [low, high] = [-Infinity, Infinity];
  let heading = 0;
  let farthest = 0;
  for (let i = 1; i <= last; i++) {
    const east = (lon[i]! - lon[anchor]!) * METRES_A_DEGREE * Math.cos((lat[anchor]! * Math.PI) / 180);
    const north = (lat[i]! - lat[anchor]!) * METRES_A_DEGREE;
    const distance = Math.hypot(east, north);
    const fresh = low === -Infinity;
    const angle = Math.atan2(north, east);
    if (fresh) heading = angle;
    const turned = Math.atan2(Math.sin(angle - heading), Math.cos(angle - heading));
    const inCone = fresh || (turned >= low && turned <= high);
    // A line that turns back inside the cone would lose its tip.
    if ((distance > tolerance && !inCone) || distance < farthest - tolerance) {
      kept.push(i - 1);
      anchor = i - 1;
      [low, high, farthest] = [-Infinity, Infinity, 0];
      i--;
      continue;
    }
    if (must.has(i)) {
      kept.push(i);
      anchor = i;
      [low, high, farthest] = [-Infinity, Infinity, 0];
      continue;
    }
    farthest = Math.max(farthest, distance);
    if (distance <= tolerance) continue;
    const half = Math.asin(tolerance / distance);
    low = Math.max(low, turned - half);
    high = Math.min(high, turned + half);
  }
  if (kept.at(-1) !== last) kept.push(last);
  return kept;
}

const columnOf = (column: Float64Array, kept: readonly number[]): Float64Array =>
  Float64Array.from(kept, (i) => column[i]!);

/** The same course, measures and all, over fewer vertices; the very same record where it has few. */
export const drawnCourse: (course: Course) => Course = keep((course) => {
  if (course.lon.length < FEW) return course;
  const must = new Set(course.skips.flatMap(({ vertex }) => [vertex, vertex + 1]));
  let tolerance = FINEST;
  let kept = keptVertices(course.lon, course.lat, tolerance, must);
  while (kept.length > MANY && tolerance < COARSEST) {
    tolerance *= 2;
    kept = keptVertices(course.lon, course.lat, tolerance, must);
  }
  const at = new Map(kept.map((vertex, index) => [vertex, index]));
  return {
    ...course,
    lon: columnOf(course.lon, kept),
    lat: columnOf(course.lat, kept),
    ele: course.ele === null ? null : columnOf(course.ele, kept),
    raw: columnOf(course.raw, kept),
    skips: course.skips.map((skip) => ({ ...skip, vertex: at.get(skip.vertex)! })),
  };
});
