/**
 * Lines for maps: a course as drawn, and the line beside a course along which an item stands;
 * cut in two at the antimeridian as RFC 7946, section 3.1.9 asks.
 */
import { bisectRight } from 'd3-array';
import type { Course } from '../course/course.ts';
import { pointAt, vertexAt } from '../course/locate.ts';
import { toMeasure, toRaw } from '../course/scale.ts';
import type { LonLat } from '../finding.ts';

/** The runs of a course between its skipped gaps, every vertex, longitudes within ±180. */
export function courseRuns(course: Course): LonLat[][] {
  const runs: LonLat[][] = [[]];
  for (let i = 0; i < course.lon.length; i++) {
    runs.at(-1)!.push(vertexAt(course, i));
    if (course.skips.some((skip) => skip.vertex === i)) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

/** The line `offset` metres to the left of a course between two measures, from one given end to the other. */
export function lineBeside(
  course: Course,
  from: number,
  to: number,
  offset: number,
  ends: readonly [LonLat, LonLat],
): LonLat[] {
  const last = toRaw(course, to);
  const between: LonLat[] = [];
  for (let i = bisectRight(course.raw, toRaw(course, from)); i < course.raw.length && course.raw[i]! < last; i++) {
    const place = pointAt(course, toMeasure(course, course.raw[i]!), offset);
    if (place !== null) between.push(place.at);
  }
  return [ends[0], ...between, ends[1]];
}

/** A line in pieces, none of which crosses the antimeridian; neighbours in the line lie less than 180° apart. */
export function cutAtAntimeridian(line: readonly LonLat[]): LonLat[][] {
  const pieces: LonLat[][] = [[]];
  line.forEach(([lon, lat], k) => {
    const before = line[k - 1];
    if (before !== undefined && Math.abs(lon - before[0]) > 180) {
      const edge = before[0] > 0 ? 180 : -180;
      const there = lon + 2 * edge;
      const share = there === before[0] ? 0 : (edge - before[0]) / (there - before[0]);
      const crossing = before[1] + (lat - before[1]) * share;
      addPoint(pieces.at(-1)!, [edge, crossing]);
      pieces.push([[-edge, crossing]]);
    }
    addPoint(pieces.at(-1)!, [lon, lat]);
  });
  return pieces.filter((piece) => piece.length > 1);
}

function addPoint(piece: LonLat[], point: LonLat): void {
  const last = piece.at(-1);
  if (last === undefined || last[0] !== point[0] || last[1] !== point[1]) piece.push(point);
}
