/**
 * Between raw and calibrated measure: piecewise linear through the scale's knots,
 * the first and last factors holding beyond the ends.
 */
import type { Metres } from '../units.ts';
import { finite, want } from '../wants.ts';
import type { Course } from './course.ts';
import { wantCourse } from './course.ts';

/** How many of the values, which ascend, are at most `value`. (d3-array's compares through functions: a quarter of a whole search for passes.) */
export function bisectRight(values: ArrayLike<number>, value: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (values[middle]! <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Piecewise linear through knots that ascend, at least two; the end pieces go on beyond the ends. */
export function interpolate(from: readonly number[], to: readonly number[], value: number): number {
  const k = Math.min(Math.max(bisectRight(from, value) - 1, 0), from.length - 2);
  const x0 = from[k]!;
  const x1 = from[k + 1]!;
  const y0 = to[k]!;
  const y1 = to[k + 1]!;
  if (value === x1) return y1;
  return x1 === x0 ? y0 : y0 + ((value - x0) / (x1 - x0)) * (y1 - y0);
}

/** As `measureOf`, unasked: NaN for what is no number. */
export const toMeasure = (course: Course, raw: Metres): Metres =>
  interpolate(course.scale.raw, course.scale.measure, raw);

/** As `rawOf`, unasked: NaN for what is no number. */
export const toRaw = (course: Course, measure: Metres): Metres =>
  interpolate(course.scale.measure, course.scale.raw, measure);

/**
 * Calibrated measure, metres, of a raw one; beyond the ends of the course the first and the last factor hold.
 * @example
 * ```ts
 * import { buildCourse, calibrate, indexCourse, measureOf } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const calibrated = calibrate(indexCourse(built.value), { marks: [], length: 2200 });
 * if (!calibrated.ok) throw new Error(calibrated.findings[0]?.message);
 * measureOf(calibrated.value.course, 1000); // → 1010.828
 * ```
 */
export function measureOf(course: Course, raw: Metres): Metres {
  wantCourse('measureOf', course);
  want('measureOf', 'the raw measure in metres', finite, raw);
  return toMeasure(course, raw);
}

/**
 * Raw measure, metres, of a calibrated one: the inverse of {@link measureOf}.
 * @example
 * ```ts
 * import { buildCourse, calibrate, indexCourse, rawOf } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const calibrated = calibrate(indexCourse(built.value), { marks: [], length: 2200 });
 * if (!calibrated.ok) throw new Error(calibrated.findings[0]?.message);
 * rawOf(calibrated.value.course, 1010.828); // → 1000
 * ```
 */
export function rawOf(course: Course, measure: Metres): Metres {
  wantCourse('rawOf', course);
  want('rawOf', 'the measure in metres', finite, measure);
  return toRaw(course, measure);
}
