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
  readonly raw: readonly number[];
  readonly measure: readonly number[];
}

export interface Course {
  readonly id: string;
  readonly name: string;
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
  readonly skips: readonly Skip[];
  /** Points as given, before duplicates were dropped and long segments subdivided. */
  readonly points: number;
  readonly duplicates: number;
  /** Joined or skipped gaps: `after` is the index of the given point before the gap. */
  readonly gaps: readonly { readonly after: number; readonly length: number }[];
}

/** One time that one course runs by a point. Measures are calibrated. */
export interface Pass {
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
  readonly foot: LonLat;
  /** The point lies beyond this end of the course. */
  readonly end?: 'start' | 'finish';
}

export type Side = 'left' | 'right' | 'unclear';

/** Calibrated measure of the start, metres: 0 unless a mark there says otherwise. */
export const startMeasure = (course: Course): Metres => course.scale.measure[0] ?? 0;
/** Calibrated measure of the finish, metres. */
export const courseLength = (course: Course): Metres => course.scale.measure.at(-1) ?? 0;
/** Raw measure of the finish, metres. */
export const rawLength = (course: Course): Metres => course.raw.at(-1) ?? 0;
