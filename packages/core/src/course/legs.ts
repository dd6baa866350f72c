/** What lies between two places of one course: the way, and the climb. */
import type { LonLat } from '../finding.ts';
import type { Metres } from '../units.ts';
import { type Course, courseLength, isCourse, startMeasure } from './course.ts';
import { elevationOf, slicePlaces } from './locate.ts';
import { passesOf } from './passes.ts';
import { rawOf } from './scale.ts';
import type { IndexedCourse } from './segmentIndex.ts';
import { aNumber, either, position, want } from '../wants.ts';
import { wantOnCourse } from './indexedShape.ts';

/** A course distance, or a position. */
const place = either(aNumber, position);

/** The way along a course from one place to another. */
export interface CourseLeg {
  /** Course distance at which it begins. */
  readonly from: Metres;
  /** Course distance at which it ends. */
  readonly to: Metres;
  readonly length: Metres;
  /** The sum of its rises; `null` without elevations. */
  readonly ascent: Metres | null;
}

/** Rounding of measures that counts as the same place, metres. */
const SAME = 1e-6;

const isOn = (course: Course, measure: Metres): boolean =>
  measure >= startMeasure(course) - SAME && measure <= courseLength(course) + SAME;

/**
 * Ascent between two calibrated measures: the sum of all rises between vertices, metres, nothing smoothed, skipped gaps left out.
 * `null` without elevations, where one of them is not on the course, and where `to` comes before `from`: nothing is clamped.
 * @example
 * ```ts
 * import { ascentBetween, courseFromLine } from '@halfcup/core/geometry';
 *
 * const course = courseFromLine([[-30.1, 12.2, 2], [-30.09, 12.2, 6], [-30.1, 12.2, 4]]);
 * if (!course.ok) throw new Error(course.findings[0]?.message);
 * ascentBetween(course.value, 0, 544.1085); // → 2.000
 * ascentBetween(course.value, 1200, 2000); // → 0
 * ascentBetween(course.value, 0, 5000); // → null
 * ```
 */
export function ascentBetween(course: Course, from: Metres, to: Metres): Metres | null {
  want('ascentBetween', 'course', isCourse, course);
  want('ascentBetween', 'from', aNumber, from);
  want('ascentBetween', 'to', aNumber, to);
  if (course.ele === null || !isOn(course, from) || !isOn(course, to) || to < from) return null;
  const places = slicePlaces(course, rawOf(course, from), rawOf(course, to));
  let rise = 0;
  for (let k = 1; k < places.length; k++) {
    const [before, here] = [places[k - 1]!, places[k]!];
    // A jump adds no measure; everything else that has two ends does.
    if (here.raw > before.raw) rise += Math.max(elevationOf(course, here) - elevationOf(course, before), 0);
  }
  return rise;
}

/**
 * The way along a course from `a` to `b`, each a course distance in metres or a position `[longitude, latitude]`. A position counts
 * where the course first passes it, `b` where it does so behind `a`: for a later lap say `a` by its distance. `null` where the course
 * does not come within 60 m of a position, a distance is not on it, or `b` does not come behind `a`. Throws a RangeError where a
 * position is none.
 * @example
 * ```ts
 * import { courseFromLine, legBetween } from '@halfcup/core/geometry';
 *
 * const course = courseFromLine([[-30.1, 12.2, 2], [-30.09, 12.2, 6], [-30.1, 12.2, 4]]);
 * if (!course.ok) throw new Error(course.findings[0]?.message);
 * legBetween(course.value, [-30.095, 12.2], [-30.09, 12.2]); // → { from: 544.109, to: 1088.217, length: 544.109, ascent: 2.00 }
 * legBetween(course.value, 1500, [-30.095, 12.2])?.to; // → 1632.326
 * legBetween(course.value, 2000, [-30.095, 12.2]); // → null
 * ```
 */
export function legBetween(on: Course | IndexedCourse, a: Metres | LonLat, b: Metres | LonLat): CourseLeg | null {
  wantOnCourse('legBetween', on);
  want('legBetween', 'a', place, a);
  want('legBetween', 'b', place, b);
  const course = 'course' in on ? on.course : on;
  const from = placesOf(on, a)[0];
  if (from === undefined) return null;
  const to = placesOf(on, b).find((measure) => (typeof b === 'number' ? measure >= from : measure > from + SAME));
  if (to === undefined) return null;
  return { from, to, length: to - from, ascent: ascentBetween(course, from, to) };
}

/** Course distances of a place, ascending. */
function placesOf(on: Course | IndexedCourse, at: Metres | LonLat): Metres[] {
  if (typeof at !== 'number') return passesOf(on, at).map(({ measure }) => measure);
  return isOn('course' in on ? on.course : on, at) ? [at] : [];
}
