/**
 * A course whose stated length and whose line disagree by more than the line can tell. A drawn line: the tolerance of course
 * measurement. Source: IAAF rule 240 (2004–05, 2009) and USATF: uncertainty at most 0.1 %, 42 m of a marathon, which is about
 * measuring a road. A recorded one wanders: 1 % (common practice, no source), and longer by what smoothing over 10 m takes
 * off it. Only a measurement on the road certifies a length.
 */
import { type Course, rawLength, startMeasure } from '../course/course.ts';
import { placeAtRaw, pointOf } from '../course/locate.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import { wrapDegrees } from '../geodesy/ellipsoid.ts';
import { lengthBetween } from '../geodesy/segment.ts';
import { usesLength } from '../plan/courses.ts';
import type { PlanCourse } from '../plan/plan.ts';
import { courseById } from '../plan/lookups.ts';
import { type Case, type Check, check } from './check.ts';

const TOLERANCE = 0.001;
/** Of recorded lines, shares. */
const RECORDED = 0.01;
/** Length over which a recorded line is smoothed, and the step at which it is taken, metres. */
const SMOOTHED_OVER = 10;
const STEP = 2;

export const lengthDiffers: Check = check(
  {
    code: 'length-differs',
    lost: true,
    severity: 'warning',
    source:
      'World Athletics (IAAF) rule 240 and USATF course measurement: 0.1 %, 42 m of a marathon (read); for recorded lines common practice, no source',
    missing: ({ plan }) => (plan.courses.some(({ length }) => length !== undefined) ? null : 'no-length'),
  },
  ({ plan, courses }) => plan.courses.flatMap((course, index) => differing(course, index, courses)),
);

function differing(plan: PlanCourse, index: number, courses: readonly IndexedCourse[]): Case<'length-differs'>[] {
  const { id, length, drawn } = plan;
  if (length === undefined) return [];
  const { course } = courseById(courses, id);
  const stated = length - startMeasure(course);
  const raw = rawLength(course);
  const used = usesLength(plan, course);
  const recorded = drawn === 'recorded';
  const shorter = stated * (recorded ? RECORDED : TOLERANCE);
  if (stated - raw <= shorter && raw - stated <= shorter) return [];
  const longer = shorter + (recorded ? wanderOf(course) : 0);
  const allowed = raw > stated ? longer : shorter;
  if (Math.abs(raw - stated) <= allowed) return [];
  return [
    {
      params: { stated, line: raw, allowed, recorded, used },
      where: { path: `/courses/${index}/length`, course: id },
      measured: raw,
      limit: [stated - shorter, stated + longer],
      unit: 'm',
      ...(used ? {} : { severity: 'error' as const }),
    },
  ];
}

/** By how much a line is longer than its mean over 10 m, metres: what a recorder's noise adds, and a little at each corner. */
export function wanderOf(course: Course): number {
  const half = Math.floor(SMOOTHED_OVER / STEP / 2);
  const count = Math.floor(rawLength(course) / STEP) + 1;
  const places = Array.from({ length: count }, (_, k) => {
    const place = placeAtRaw(course, k * STEP);
    return place === null ? null : pointOf(course, place);
  });
  let wander = 0;
  let before: LonLat | null = null;
  for (let k = half; k < count - half; k++) {
    const smooth = meanOf(places.slice(k - half, k + half + 1));
    if (smooth !== null && before !== null) wander += STEP - lengthBetween(before[0], before[1], smooth[0], smooth[1]);
    before = smooth;
  }
  return Math.max(wander, 0);
}

/** The middle of some places; `null` where one of them lies in a skipped gap. */
function meanOf(places: readonly (LonLat | null)[]): LonLat | null {
  const there = places.filter((place) => place !== null);
  const [first] = there;
  if (first === undefined || there.length < places.length) return null;
  const lon = there.reduce((sum, place) => sum + wrapDegrees(place[0] - first[0]), 0);
  const lat = there.reduce((sum, place) => sum + place[1], 0);
  return [wrapDegrees(first[0] + lon / there.length), lat / there.length];
}
