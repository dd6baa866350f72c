/**
 * Every pass of a course by a point: where it comes nearest, how far, on which side, running which way.
 * Model: local minima of distance within the snap radius in running order; a new pass where the
 * course moves away by 10 m, or by 3 m and turns back; a standing-still tangle counts once, and its inside as no way at all.
 * Accuracy: 1 mm in distance and measure up to 80° of latitude.
 */
import { bisectLeft, bisectRight } from 'd3-array';
import type { LonLat } from '../finding.ts';
import type { Metres } from '../units.ts';
import { DEGREES, RADIANS, azimuthDifference, normalAzimuth, wrapDegrees } from '../geodesy/ellipsoid.ts';
import { type Frame, eastNorth, frameAt, fromFrame, project } from '../geodesy/frame.ts';
import { normalCdf } from '../geodesy/normal.ts';
import { type Course, type Pass, type Side, rawLength } from './course.ts';
import { indexedOnce } from './indexed.ts';
import { groundAt, placeAtRaw, pointOf } from './locate.ts';
import { type Minimum, minimaNear } from './minima.ts';
import { nearestPlace } from './nearest.ts';
import { measureOf } from './scale.ts';
import type { Tangle } from './tangles.ts';
import type { IndexedCourse } from './segmentIndex.ts';
import { type Shape, type Shapes, notNegative, over, partly, position, want } from '../wants.ts';
import { wantOnCourse } from './indexedShape.ts';

/** How passes are looked for; the keys of a plan's practice. */
export interface PassOptions {
  /** A course that keeps farther from the point than this does not pass it. */
  readonly snapRadius: Metres;
  /** Radius of the circle that holds the point with a probability of 95 %. */
  readonly pinR95: Metres;
  /** The same for the course. */
  readonly courseR95: Metres;
  /** Least probability, 0.5 to 1, with which a side is told; `unclear` below. */
  readonly sideConfidence: number;
}

/** Position errors and snap radius where nobody says otherwise (common practice, no source). */
export const PASS_DEFAULTS: PassOptions = { snapRadius: 60, pinR95: 5, courseR95: 3, sideConfidence: 0.95 };

const OPTIONS: Shapes<PassOptions> = {
  snapRadius: notNegative,
  pinR95: notNegative,
  courseR95: notNegative,
  sideConfidence: (value) =>
    typeof value === 'number' && value >= 0 && value <= 1
      ? null
      : { path: '', expected: 'a probability of 0 to 1', found: value, range: typeof value === 'number' },
};

export const isPassOptions: Shape = partly('options such as { snapRadius: 60 }', OPTIONS);

/** Options over the defaults, each checked. A whole set of them, as a plan's practice, costs four comparisons. */
export function passOptions(given: Partial<PassOptions> = PASS_DEFAULTS): PassOptions {
  if (given === PASS_DEFAULTS) return PASS_DEFAULTS;
  want('passesOf', 'options', isPassOptions, given);
  return over(PASS_DEFAULTS, given);
}

/** A rise of this many metres above the farther of two minima parts them. */
const APART = 10;
/** A smaller rise parts them where the course has turned back. */
const APART_TURNED = 3;
const TURNED_MEASURE = 10;
const TURNED_DEG = 90;
/** Two tangles nearer along the course than this, metres, are one. */
const DRIFT = 20;
/** Half of the stretch over which a heading is taken, metres. */
const HEADING_REACH = 10;
/** A vertex that turns more than this has no sides. */
const SIDELESS_TURN = 150;
/** Rounding, metres: of places no nearer than this the first in running order is the foot, so that a road run both ways gives one answer. */
const SAME = 1e-6;
/** r95 ÷ σ of a circular normal error: the square root of −2·ln 0.05. */
const R95_SIGMAS = 2.4477;

/**
 * All passes of a course by a point, in running order: one for each lap, two for an out-and-back. Empty where the course keeps farther
 * than `snapRadius`. A course without its index is indexed at the first call, once.
 * Throws a RangeError where `at` is no position in degrees, a TypeError where it is no pair of numbers.
 * @example
 * ```ts
 * import { buildCourse, indexCourse, passesOf } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const passes = passesOf(indexCourse(built.value), [-30.095, 12.20005]);
 * passes.map((pass) => pass.side); // → ['left', 'right']
 * passes.map((pass) => pass.measure); // → [544.11, 1632.33]
 * passes[0]?.offset; // → 5.526
 * ```
 */
export function passesOf(course: Course | IndexedCourse, at: LonLat, options?: Partial<PassOptions>): Pass[] {
  wantOnCourse('passesOf', course);
  want('passesOf', 'at', position, at);
  const how = passOptions(options);
  const indexed = indexedOnce(course);
  const frame = frameAt(at[0], at[1]);
  const minima = untangled(minimaNear(indexed, frame, how.snapRadius, APART), indexed, frame);
  return grouped(minima, indexed).map((minimum) => passOf(minimum, indexed.course, frame, how));
}

const isNearer = (a: Minimum, b: Minimum): boolean => a.distance < b.distance - SAME;

/** Minima inside one tangle count as one, the nearest; what the course does inside a tangle adds nothing to the rise between two minima. */
function untangled(minima: Minimum[], indexed: IndexedCourse, frame: Frame): Minimum[] {
  if (indexed.tangles.length === 0 || minima.length < 2) return minima;
  const tangles = joined(indexed.tangles);
  const kept: Minimum[] = [];
  for (const minimum of minima.map((one, k) => ({
    ...one,
    rise: riseOutside(one, minima[k + 1], { ...indexed, tangles }, frame),
  }))) {
    const last = kept.at(-1);
    const tangle = last && tangles.find(({ from, to }) => from <= last.raw && last.raw <= to);
    if (last === undefined || tangle === undefined || minimum.raw > tangle.to) kept.push(minimum);
    else if (isNearer(minimum, last)) kept[kept.length - 1] = minimum;
    else last.rise = minimum.rise;
  }
  return kept;
}

/** Tangles that follow each other within a circle's width, as one: a recorder that stands still drifts. */
function joined(tangles: readonly Tangle[]): Tangle[] {
  const whole: Tangle[] = [];
  for (const tangle of tangles) {
    const last = whole.at(-1);
    if (last !== undefined && tangle.from - last.to <= DRIFT)
      whole[whole.length - 1] = { from: last.from, to: tangle.to };
    else whole.push(tangle);
  }
  return whole;
}

/** Highest distance between two minima that follow each other, of what lies outside the tangles between them; their ends are outside. */
function riseOutside(here: Minimum, next: Minimum | undefined, indexed: IndexedCourse, frame: Frame): number {
  const { course, tangles } = indexed;
  if (next === undefined || here.rise === Infinity) return here.rise;
  const between = tangles.filter(({ from, to }) => from < next.raw && to > here.raw);
  if (between.length === 0) return here.rise;
  const first = bisectRight(course.raw, here.raw);
  const count = Math.max(bisectLeft(course.raw, next.raw) - first, 0);
  const [east, north] = [new Float64Array(count), new Float64Array(count)];
  project([frame.lon, frame.lat], course.lon, course.lat, first, count, east, north);
  let rise = Math.max(here.distance, next.distance);
  for (let k = 0; k < count; k++) {
    const raw = course.raw[first + k]!;
    if (!between.some(({ from, to }) => from < raw && raw < to)) rise = Math.max(rise, Math.hypot(east[k]!, north[k]!));
  }
  return rise;
}

function grouped(minima: readonly Minimum[], indexed: IndexedCourse): readonly Minimum[] {
  if (minima.length < 2) return minima;
  const feet: Minimum[] = [];
  let rise = 0;
  for (const minimum of minima) {
    const foot = feet.at(-1);
    if (foot === undefined || parted(foot, minimum, rise, indexed)) feet.push(minimum);
    else if (isNearer(minimum, foot)) feet[feet.length - 1] = minimum;
    else {
      rise = Math.max(rise, minimum.rise);
      continue;
    }
    rise = minimum.rise;
  }
  return feet;
}

function parted(foot: Minimum, next: Minimum, rise: number, indexed: IndexedCourse): boolean {
  const over = rise - Math.max(foot.distance, next.distance);
  if (over >= APART) return true;
  if (over < APART_TURNED || next.raw - foot.raw <= TURNED_MEASURE) return false;
  return azimuthDifference(headingAt(indexed, foot.raw), headingAt(indexed, next.raw)) > TURNED_DEG;
}

/** Azimuth of the chord over the 20 m of course around a raw measure, degrees. */
function headingAt({ course }: IndexedCourse, raw: number): number {
  const from = placeAtRaw(course, Math.max(raw - HEADING_REACH, 0));
  const to = placeAtRaw(course, Math.min(raw + HEADING_REACH, rawLength(course)));
  if (from !== null && to !== null) {
    const { east, north } = eastNorth(pointOf(course, from), pointOf(course, to));
    return normalAzimuth(Math.atan2(east, north) * DEGREES);
  }
  const here = placeAtRaw(course, raw);
  return here === null ? 0 : groundAt(course, here).azimuthDeg;
}

/** The pass whose foot is a minimum in the point's frame; `foot` where it is known without the frame. */
function passOf(minimum: Minimum, course: Course, frame: Frame, options: PassOptions, foot?: LonLat): Pass {
  const { tangentEast: te, tangentNorth: tn, east, north, distance } = minimum;
  // From the foot the point lies at (−east, −north); left of the tangent is positive.
  const across = tn * east - te * north;
  // Adding nought turns -0 into 0.
  const offset = (minimum.end === undefined ? Math.sign(across) * distance : across) + 0;
  // On the line both sides are as likely, also where positions are taken as exact and σ is 0.
  const confidence = offset === 0 ? 0.5 : normalCdf(Math.abs(offset) / sigmaOf(options));
  const why = whyUnclear(offset, minimum.turnDeg, confidence, options);
  const side: Side = why !== undefined ? 'unclear' : offset > 0 ? 'left' : 'right';
  const at = foot ?? fromFrame(frame, east, north);
  // The frame's north is the point's; at the foot the meridian leans by the convergence.
  const lean = wrapDegrees(at[0] - frame.lon) * Math.sin(0.5 * (at[1] + frame.lat) * RADIANS);
  const measure = measureOf(course, minimum.raw);
  const azimuthDeg = normalAzimuth(Math.atan2(te, tn) * DEGREES + lean);
  // Written out: a spread would take longer than all of this.
  if (why === undefined && minimum.end === undefined)
    return { measure, distance, offset, side, confidence, azimuthDeg, foot: at };
  const pass = { measure, distance, offset, side, confidence, azimuthDeg, foot: at };
  return { ...pass, ...(why === undefined ? {} : { why }), ...(minimum.end === undefined ? {} : { end: minimum.end }) };
}

/** Why a side is not told; undefined where it is. */
function whyUnclear(offset: number, turnDeg: number, confidence: number, { sideConfidence }: PassOptions): Pass['why'] {
  if (offset === 0) return 'onLine';
  if (turnDeg > SIDELESS_TURN) return 'turn';
  return confidence < sideConfidence ? 'position' : undefined;
}

/** Standard deviation of a lateral offset, metres: the point's and the course's 95 % radii together. */
export const sigmaOf = (options: Pick<PassOptions, 'pinR95' | 'courseR95'>): number =>
  Math.sqrt(options.pinR95 * options.pinR95 + options.courseR95 * options.courseR95) / R95_SIGMAS;

/**
 * The one nearest place of a course, however far, as a pass; the first in running order where places are equally near.
 * Throws a RangeError where `at` is no position in degrees, a TypeError where it is no pair of numbers.
 * @example
 * ```ts
 * import { buildCourse, nearestOn } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const nearest = nearestOn(built.value, [-30.095, 12.21]);
 * nearest.distance; // → 1106.23
 * nearest.measure; // → 544.11
 * ```
 */
export function nearestOn(course: Course | IndexedCourse, at: LonLat): Pass {
  wantOnCourse('nearestOn', course);
  want('nearestOn', 'at', position, at);
  const indexed = indexedOnce(course);
  const frame = frameAt(at[0], at[1]);
  const { minimum, foot } = nearestPlace(indexed, frame, SAME);
  return passOf(minimum, indexed.course, frame, PASS_DEFAULTS, foot);
}
