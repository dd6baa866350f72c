/**
 * Wheel distance: what a measuring wheel shows when it is walked along the kerb, not along the
 * course line. On smooth stretches (b − a) less o times the sum of signed turns, turns towards
 * the station's side positive. Recorded tracks are smoothed over 10 m first.
 */
import { bisectRight } from 'd3-array';
import type { Course } from '../course/course.ts';
import { azimuthAfter, azimuthBefore, placeAtRaw } from '../course/locate.ts';
import { rawOf } from '../course/scale.ts';
import { RADIANS, wrapDegrees } from '../geodesy/ellipsoid.ts';

/** The wheel's reading, metres, signed as `to` − `from`, and how far it may be off. */
export interface WheelReading {
  readonly length: number;
  readonly margin: number;
}

/** Uncertainty of the offset, metres: 1 where the course is the road's centre, else half the road, 4 where its width is unknown. */
export const offsetUncertainty = (course: Course, width: number | undefined): number =>
  course.drawn === 'centre' ? 1 : width === undefined ? 4 : width / 2;

/** Wheel reading between two calibrated measures at a lateral offset (left positive); `null` where an end is off the course. */
export function wheelBetween(course: Course, from: number, to: number, offset: number, uncertainty: number): WheelReading | null {
  if (placeAtRaw(course, rawOf(course, from)) === null || placeAtRaw(course, rawOf(course, to)) === null) return null;
  const sign = to < from ? -1 : 1;
  const turn = turnBetween(course, Math.min(from, to), Math.max(from, to));
  return { length: to - from - sign * offset * turn.net, margin: turn.total * uncertainty };
}

/** Net turn to the left and total turn between two measures, radians. */
function turnBetween(course: Course, from: number, to: number): { net: number; total: number } {
  const first = bisectRight(course.raw, rawOf(course, from));
  const end = rawOf(course, to);
  let net = 0;
  let total = 0;
  for (let i = Math.max(first, 1); i < course.raw.length - 1 && course.raw[i]! < end; i++) {
    if (course.skips.some((skip) => skip.vertex === i || skip.vertex === i - 1)) continue;
    const left = wrapDegrees(azimuthBefore(course, i) - azimuthAfter(course, i)) * RADIANS;
    net += left;
    total += Math.abs(left);
  }
  return { net, total };
}
