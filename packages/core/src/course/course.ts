/**
 * A course: one directed line on the ground as columns of numbers, with its raw measure
 * (WGS 84 geodesic length, slope ignored) and the scale that turns raw into calibrated measure.
 */
import type { LonLat } from '../finding.ts';
import type { Degrees, Metres } from '../units.ts';
import {
  type Shape,
  type Shapes,
  type Wrong,
  aNumber,
  aText,
  column,
  finite,
  listOf,
  maybe,
  oneOf,
  orNull,
  position,
  recordOf,
  refuse,
  remembered,
  want,
} from '../wants.ts';

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
  /**
   * Why the side is `unclear`: the errors of position do not tell it, the course turns so sharply at the foot that it has no sides
   * there, or the point lies on the line. Absent where the side is told.
   */
  readonly why?: 'position' | 'turn' | 'onLine';
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

export const isDrawn: Shape = oneOf('centre', 'shortest', 'recorded');
export const isGapRule: Shape = oneOf('refuse', 'join', 'skip');

const columns: Shape = recordOf<Course>('the course that buildCourse gives', {
  id: aText,
  name: aText,
  drawn: isDrawn,
  lon: column,
  lat: column,
  ele: orNull(column),
  raw: column,
  scale: recordOf<Scale>('a scale { raw, measure }', { raw: listOf(finite, 2), measure: listOf(finite, 2) }),
  skips: listOf(recordOf('a skipped gap', { vertex: finite, raw: finite, length: finite })),
  points: finite,
  duplicates: finite,
  gaps: listOf(recordOf('a gap', { after: finite, length: finite })),
});

const uneven = (found: string): Wrong => ({ path: '', expected: 'columns of equal length', found, range: true });

/** A course whose columns fit each other. */
export const isCourse: Shape = remembered((value) => {
  const found = columns(value);
  if (found !== null) return found;
  const { lon, lat, raw, ele, scale } = value as Course;
  const n = lon.length;
  if (n < 2 || lat.length !== n || raw.length !== n || (ele !== null && ele.length !== n))
    return uneven(`lon of ${n}, lat of ${lat.length}, raw of ${raw.length}`);
  return scale.raw.length === scale.measure.length ? null : uneven('a scale of unequal columns');
});

/** Refuses what is no course: an indexed one, most of all. */
export function wantCourse(who: string, value: unknown): void {
  const found = isCourse(value);
  if (found === null) return;
  if (isCourse((value as { readonly course?: unknown } | null | undefined)?.course) === null)
    throw new TypeError(`${who} wants the course itself, not what indexCourse returns: that holds it as \`course\``);
  refuse(who, 'the course', found);
}

/** Refuses what is no place on a course: a course and a number of metres. */
export function wantMeasure(who: string, course: unknown, measure: unknown): void {
  wantCourse(who, course);
  if (typeof measure !== 'number') want(who, 'the measure in metres', aNumber, measure);
}

export const PASS_SHAPES: Shapes<Pass> = {
  measure: finite,
  distance: finite,
  offset: finite,
  side: oneOf('left', 'right', 'unclear'),
  why: maybe(oneOf('position', 'turn', 'onLine')),
  confidence: finite,
  azimuthDeg: finite,
  foot: position,
  end: maybe(oneOf('start', 'finish')),
};
export const isPass: Shape = recordOf('a pass', PASS_SHAPES);

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
export function startMeasure(course: Course): Metres {
  wantCourse('startMeasure', course);
  return course.scale.measure[0] ?? 0;
}

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
export function courseLength(course: Course): Metres {
  wantCourse('courseLength', course);
  return course.scale.measure.at(-1) ?? 0;
}

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
export function rawLength(course: Course): Metres {
  wantCourse('rawLength', course);
  return course.raw.at(-1) ?? 0;
}
