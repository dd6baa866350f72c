/**
 * Wheel distance: what a measuring wheel shows when it is walked along the kerb, not along the
 * course line: the calibrated distance, with inside corners trimmed and outside corners rounded
 * at the item's offset. Recorded tracks are smoothed over 10 m first, and doubt how much of a bend lies within the ends; drawn lines are taken as
 * they are. `null` where the offset line folds.
 */
import { bisectRight } from 'd3-array';
import { type Course, rawLength, wantCourse } from '../course/course.ts';
import { placeAtRaw } from '../course/locate.ts';
import { toRaw } from '../course/scale.ts';
import type { LonLat } from '../finding.ts';
import { project } from '../geodesy/frame.ts';
import type { Metres } from '../units.ts';
import { type Corner, readOffsetLine } from '../geodesy/offsetLine.ts';
import { maybe, notNegative, want, aNumber } from '../wants.ts';

/** What a measuring wheel shows that is walked along the kerb. */
export interface WheelReading {
  /** Signed as `to` − `from`; `null` where the line at the offset folds. */
  readonly length: Metres | null;
  /** How far it may be off, for what is not known of the offset. */
  readonly margin: Metres;
}

/** Corners of one stretch of a course, found once and read many times. */
export interface WheelLine {
  readonly course: Course;
  /** By raw measure. */
  readonly corners: readonly Corner[];
  /** Raw measures of skipped gaps, over which no wheel runs. */
  readonly skips: readonly number[];
}

/** Length over which a recorded track is smoothed, and the step at which it is then taken, metres. */
const SMOOTHED_OVER = 10;
const STEP = 2;
/** A recorder sets its points up to so far apart, metres, in whole steps: a bend at an end of the reading may be in the next one. */
const SPARSE = 24;

/**
 * Uncertainty of an item's offset on a road of `width` metres, metres: 1 where the course is drawn on the road's centre, else half the
 * road, 4 where its width is unknown. Common practice, no source.
 */
export function offsetUncertainty(course: Course, width: Metres | undefined): Metres {
  wantCourse('offsetUncertainty', course);
  want('offsetUncertainty', 'width', maybe(notNegative), width);
  return course.drawn === 'centre' ? 1 : width === undefined ? 4 : width / 2;
}

/** The corners of a course between two calibrated measures (clipped to the course). */
export function wheelLine(course: Course, from: Metres, to: Metres): WheelLine {
  const first = Math.max(toRaw(course, Math.min(from, to)), 0);
  const last = Math.min(toRaw(course, Math.max(from, to)), rawLength(course));
  const skips = course.skips.map((skip) => skip.raw);
  const corners =
    course.drawn === 'recorded'
      ? smoothedCorners(course, Math.max(first - SPARSE, 0), Math.min(last + SPARSE, rawLength(course)))
      : drawnCorners(course, first, last);
  return { course, corners, skips };
}

/**
 * Wheel reading between two calibrated measures within the line's stretch, at a lateral offset (left positive).
 * `null` where an end is off the course or a skipped gap lies between.
 */
export function readWheel(
  line: WheelLine,
  from: Metres,
  to: Metres,
  offset: Metres,
  uncertainty: Metres,
): WheelReading | null {
  const { course } = line;
  const low = toRaw(course, Math.min(from, to));
  const high = toRaw(course, Math.max(from, to));
  if (placeAtRaw(course, low) === null || placeAtRaw(course, high) === null) return null;
  if (line.skips.some((skip) => skip >= low && skip <= high)) return null;
  const { longer, totalTurn } = readOffsetLine(line.corners, low, high, offset, course.drawn === 'recorded');
  const sign = to < from ? -1 : 1;
  // A short reading has room for a part of a bend only.
  const room = course.drawn === 'recorded' ? Math.min((high - low) / SPARSE, 1) : 0;
  const doubt = room * Math.hypot(bendNear(line, low), bendNear(line, high));
  return {
    length: longer === null ? null : to - from + sign * longer + 0,
    margin: totalTurn * uncertainty + (Math.abs(offset) * doubt) / 2,
  };
}

/**
 * The sharpest turn over the smoothing's length around an end on a recorded track, radians: its points say that the course turns
 * there, not at which side of the end. Half of it, on the mean, is counted at the wrong one.
 */
function bendNear({ corners }: WheelLine, end: number): number {
  const near = corners.filter(({ at }) => Math.abs(at - end) <= SPARSE);
  let [first, turn, sharpest] = [0, 0, 0];
  for (const { at, turn: more } of near) {
    turn += more;
    // The corner itself stays, so that the search ends there at the latest.
    while (near[first]!.at < at - SMOOTHED_OVER) turn -= near[first++]!.turn;
    sharpest = Math.max(sharpest, Math.abs(turn));
  }
  return sharpest;
}

/**
 * Wheel distance between two calibrated measures along the line `offset` metres beside the course (left positive): inside corners
 * trimmed, outside corners rounded. `uncertainty` of the offset, metres, makes the margin. `null` where an end is off the course, a
 * skipped gap lies between or a number is none; a `length` of `null` where the line folds.
 * @example
 * ```ts
 * import { buildCourse, wheelBetween } from '@halfcup/core/geometry';
 *
 * const corner = { lon: Float64Array.of(-30.1, -30.098, -30.098), lat: Float64Array.of(12.2, 12.2, 12.202), ele: new Float64Array(3) };
 * const built = buildCourse({ id: 'corner', name: 'Corner', drawn: 'centre', segments: [corner] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * wheelBetween(built.value, 100, 400, 6, 1); // → { length: 288, margin: 1.57 }
 * wheelBetween(built.value, 100, 400, -6, 1)?.length; // → 309.42
 * wheelBetween(built.value, 100, 4000, 6, 1); // → null
 * ```
 */
export function wheelBetween(
  course: Course,
  from: Metres,
  to: Metres,
  offset: Metres,
  uncertainty: Metres,
): WheelReading | null {
  wantCourse('wheelBetween', course);
  want('wheelBetween', 'from', aNumber, from);
  want('wheelBetween', 'to', aNumber, to);
  want('wheelBetween', 'offset', aNumber, offset);
  want('wheelBetween', 'uncertainty', aNumber, uncertainty);
  return Number.isFinite(offset) && Number.isFinite(uncertainty)
    ? readWheel(wheelLine(course, from, to), from, to, offset, uncertainty)
    : null;
}

function drawnCorners(course: Course, first: number, last: number): Corner[] {
  const { raw, east, north } = projected(course, first, last);
  return turns(east, north, (k) => raw[k]!);
}

interface ProjectedLine {
  readonly raw: Float64Array;
  readonly east: Float64Array;
  readonly north: Float64Array;
}

/** The vertices around a stretch of raw measure, both ends covered, in a local frame. */
function projected(course: Course, first: number, last: number): ProjectedLine {
  const from = Math.max(bisectRight(course.raw, first) - 1, 0);
  const to = Math.min(bisectRight(course.raw, last), course.raw.length - 1);
  const count = to - from + 1;
  const east = new Float64Array(count);
  const north = new Float64Array(count);
  const origin: LonLat = [course.lon[from]!, course.lat[from]!];
  project(origin, course.lon, course.lat, from, count, east, north);
  return { raw: course.raw.subarray(from, to + 1), east, north };
}

/** The turn at each inner point of a projected line. */
function turns(east: Float64Array, north: Float64Array, at: (k: number) => number): Corner[] {
  const corners: Corner[] = [];
  for (let k = 1; k < east.length - 1; k++) {
    const ax = east[k]! - east[k - 1]!;
    const ay = north[k]! - north[k - 1]!;
    const bx = east[k + 1]! - east[k]!;
    const by = north[k + 1]! - north[k]!;
    const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    if (turn !== 0) corners.push({ at: at(k), turn });
  }
  return corners;
}

/** Corners of the line whose every point is the mean of the course over the 10 m around it, taken each 2 m. */
function smoothedCorners(course: Course, first: number, last: number): Corner[] {
  const reach = SMOOTHED_OVER / 2;
  const from = Math.max(first - reach - STEP, 0);
  const to = Math.min(last + reach + STEP, rawLength(course));
  const { raw, east, north } = projected(course, from, to);
  const points = Math.max(Math.floor((to - from) / STEP) + 1, 2);
  const x = runningMeans(raw, east, from, points, reach);
  const y = runningMeans(raw, north, from, points, reach);
  return turns(x, y, (k) => from + k * STEP);
}

/** Means of a column, linear between raw measures, over ± `reach` around from, from + 2 m, …; less at the ends of what there is. */
function runningMeans(
  raw: Float64Array,
  column: Float64Array,
  from: number,
  points: number,
  reach: number,
): Float64Array {
  const means = new Float64Array(points);
  const integral = new Float64Array(raw.length);
  for (let i = 1; i < raw.length; i++)
    integral[i] = integral[i - 1]! + ((column[i]! + column[i - 1]!) / 2) * (raw[i]! - raw[i - 1]!);
  const areaTo = (at: number): number => {
    const i = Math.min(Math.max(bisectRight(raw, at) - 1, 0), raw.length - 2);
    const width = raw[i + 1]! - raw[i]!;
    const along = at - raw[i]!;
    const slope = width === 0 ? 0 : (column[i + 1]! - column[i]!) / width;
    return integral[i]! + along * (column[i]! + (slope * along) / 2);
  };
  const low = raw[0]!;
  const high = raw.at(-1)!;
  for (let k = 0; k < points; k++) {
    const at = Math.min(from + k * STEP, high);
    // The same reach on both sides, so that the ends of the course keep their heading.
    const half = Math.max(Math.min(reach, at - low, high - at), 1e-3);
    means[k] = (areaTo(at + half) - areaTo(at - half)) / (2 * half);
  }
  return means;
}
