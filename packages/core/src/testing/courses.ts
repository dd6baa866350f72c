/** Courses for tests: drawn by turtle along geodesics (Karney), or through given points. Not part of the package. */
import { buildCourse } from '../course/build.ts';
import type { Course, GapRule } from '../course/course.ts';
import { direct } from '../geodesy/karney.ts';
import type { LonLat, Result } from '../finding.ts';
import type { GpxSegment } from '../gpx/document.ts';

/** Azimuth in degrees and length in metres of one straight leg. */
export type TurtleLeg = readonly [azimuthDeg: number, length: number];

/** Where the drawn courses begin: mid-ocean, at a latitude where many races are run. */
export const ORIGIN: LonLat = [-17.4, -33.2];

/** The value of a result that must be good. */
export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.findings.map((finding) => finding.message).join('; '));
  return result.value;
}

/** The point at an azimuth and a length from another. */
export const from = (at: LonLat, azimuthDeg: number, length: number): LonLat =>
  direct(at[0], at[1], azimuthDeg, length);

/** Points of legs from an origin, each cut into steps of about `step` metres. */
export function turtlePoints(origin: LonLat, legs: readonly TurtleLeg[], step: number = 20): LonLat[] {
  const points: LonLat[] = [origin];
  for (const [azimuthDeg, length] of legs) {
    const start = points.at(-1)!;
    const pieces = Math.max(1, Math.round(length / step));
    for (let k = 1; k <= pieces; k++) points.push(from(start, azimuthDeg, (length * k) / pieces));
  }
  return points;
}

/** A course drawn by turtle: azimuth and length of each leg from an origin. */
export const turtle = (origin: LonLat, legs: readonly TurtleLeg[], step: number = 20, id: string = 'c'): Course =>
  courseThrough(turtlePoints(origin, legs, step), id);

/** Points, with an elevation each where there are any, as the reader of GPX gives them. */
export const segmentThrough = (
  points: readonly LonLat[],
  ele: readonly number[] = points.map(() => NaN),
): GpxSegment => ({
  lon: Float64Array.from(points, ([lon]) => lon),
  lat: Float64Array.from(points, ([, lat]) => lat),
  ele: Float64Array.from(ele),
});

export const courseThrough = (points: readonly LonLat[], id: string = 'c'): Course =>
  courseOfSegments([points], 'refuse', id);

/** A course of several segments, with what becomes of the gaps between them. */
export const courseOfSegments = (segments: readonly (readonly LonLat[])[], gaps: GapRule, id: string = 'c'): Course =>
  valueOf(buildCourse({ id, name: id, segments: segments.map((points) => segmentThrough(points)), gaps }));

/** Uniform in 0 … 1 (excluded), repeatable. */
export function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
}
