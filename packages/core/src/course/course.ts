/**
 * A course: one directed line on the ground as columns of numbers, with its raw measure
 * (WGS 84 geodesic length, slope ignored) and the scale that turns raw into calibrated measure.
 */
import type { LonLat } from '../finding.ts';
import type { Degrees, Metres } from '../units.ts';

/** What the line on paper stands for: the road's centre, the shortest way a runner can take, or a recorded track. */
export type Drawn = 'centre' | 'shortest' | 'recorded';

/** What happens to a gap of over 50 m between segments: refused, joined by a straight line, or skipped (adds no measure). */
export type GapRule = 'refuse' | 'join' | 'skip';

/** A jump between two points that carries no course: items cannot stand in it. */
export interface Skip {
  /** Vertex before the jump. */
  readonly vertex: number;
  /** Raw measure of the jump, metres. */
  readonly raw: Metres;
  /** Ground length of the jump, metres. */
  readonly length: Metres;
}

/** Piecewise linear from raw to calibrated measure; both ascend, at least two knots; the last factor holds beyond. */
export interface Scale {
  /** Raw measures of the knots. */
  readonly raw: readonly Metres[];
  /** Calibrated measures of the same knots. */
  readonly measure: readonly Metres[];
}

/** One directed line on the ground, start to finish: n vertices as columns, with the scale that turns raw into calibrated measure. */
export interface Course {
  readonly id: string;
  readonly name: string;
  /** What the line stands for. */
  readonly drawn: Drawn;
  /** Degrees, continuous: beyond ±180 where the course crosses the antimeridian. n values. */
  readonly lon: Float64Array;
  /** Degrees. n values. */
  readonly lat: Float64Array;
  /** Metres, interpolated on vertices that subdividing added; `null` unless every given point has one. */
  readonly ele: Float64Array | null;
  /** Raw measure at each vertex, metres, ascending from 0. n values. */
  readonly raw: Float64Array;
  readonly scale: Scale;
  /** In running order. */
  readonly skips: readonly Skip[];
  /** Points as given, before duplicates were dropped and long segments subdivided. */
  readonly points: number;
  /** Points dropped because they repeat the one before. */
  readonly duplicates: number;
  /** Joined or skipped gaps: `after` is the index of the given point before the gap, `length` in metres. */
  readonly gaps: readonly { readonly after: number; readonly length: Metres }[];
}

/** One time that one course runs by a point. Measures are calibrated. */
export interface Pass {
  /** Of the foot, metres from the start of the course. */
  readonly measure: Metres;
  /** From the point to its foot, metres. */
  readonly distance: Metres;
  /** Lateral, metres, left of the running direction positive. */
  readonly offset: Metres;
  readonly side: Side;
  /** Probability that the sign of `offset` is true, 0.5 to 1. */
  readonly confidence: number;
  /** Running direction at the foot, degrees clockwise from north, 0 to 360. */
  readonly azimuthDeg: Degrees;
  /** The nearest point of the course. */
  readonly foot: LonLat;
  /** The point lies beyond this end of the course. */
  readonly end?: 'start' | 'finish';
}

/** Side of the course as runners see it; `unclear` where the errors of position do not tell. */
export type Side = 'left' | 'right' | 'unclear';

/**
 * Calibrated measure of the start of a course, metres: 0 unless a mark there says otherwise.
 * @example
 * ```ts
 * import { buildCourse, startMeasure } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * startMeasure(built.value); // → 0
 * ```
 */
export const startMeasure = (course: Course): Metres => course.scale.measure[0] ?? 0;

/**
 * Calibrated measure of the finish, metres: the course's length where it starts at 0.
 * @example
 * ```ts
 * import { buildCourse, courseLength } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * courseLength(built.value); // → 2176.434
 * ```
 */
export const courseLength = (course: Course): Metres => course.scale.measure.at(-1) ?? 0;

/**
 * Raw measure of the finish, metres: the geodesic length of the line, whatever its marks say.
 * @example
 * ```ts
 * import { buildCourse, rawLength } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * rawLength(built.value); // → 2176.434
 * ```
 */
export const rawLength = (course: Course): Metres => course.raw.at(-1) ?? 0;
