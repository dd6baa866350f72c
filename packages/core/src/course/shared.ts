/** Stretches of a course that run along another: on the same road, the same way or against it. */
import type { Metres } from '../units.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { type Course, courseLength, startMeasure } from './course.ts';
import { indexedOnce } from './indexed.ts';
import { pointAt } from './locate.ts';
import { passesOf } from './passes.ts';
import type { IndexedCourse } from './segmentIndex.ts';

/** A stretch of a course by its own distances. */
export interface SharedStretch {
  readonly from: Metres;
  readonly to: Metres;
  /** Absent: the same way. */
  readonly against?: true;
}

/** Two lines of one road lie no farther apart than this, metres: a road's width and the error of recording (an assumption). */
const BESIDE = 15;
/** Where the courses are compared, metres. */
const STEP = 25;
/** Crossings and junctions are no shared road, metres (an assumption). */
const SHORTEST = 200;

type Way = 'same' | 'against' | null;

function wayAt(course: IndexedCourse, other: IndexedCourse, measure: number): Way {
  const point = pointAt(course.course, measure);
  if (point === null) return null;
  const passes = passesOf(other, point.at, { snapRadius: BESIDE });
  if (passes.length === 0) return null;
  const same = passes.some(({ azimuthDeg }) => Math.abs(azimuthDifference(azimuthDeg, point.azimuthDeg)) < 60);
  if (same) return 'same';
  return passes.some(({ azimuthDeg }) => Math.abs(azimuthDifference(azimuthDeg, point.azimuthDeg)) > 120)
    ? 'against'
    : null;
}

/**
 * Where a course runs along another, in running order, found every 25 m: within 15 m of it, over at least 200 m. A road that
 * the other runs both ways counts as the same way.
 * @example
 * ```ts
 * import { buildCourse, sharedStretches } from '@halfcup/core/geometry';
 * const line = (...lon: number[]) => ({ lon: Float64Array.from(lon), lat: new Float64Array(lon.length).fill(12.2), ele: new Float64Array(lon.length) });
 * const full = buildCourse({ id: 'full', name: 'Full', segments: [line(-30.1, -30.05)] });
 * const half = buildCourse({ id: 'half', name: 'Half', segments: [line(-30.06, -30.04)] });
 * if (!full.ok || !half.ok) throw new Error('a line has no length');
 * sharedStretches(half.value, full.value).map(({ to }) => Math.round(to / 100)); // → [11]
 * ```
 */
export function sharedStretches(course: Course | IndexedCourse, other: Course | IndexedCourse): SharedStretch[] {
  const [own, against] = [indexedOnce(course), indexedOnce(other)];
  const [start, length] = [startMeasure(own.course), courseLength(own.course)];
  const steps = Math.max(1, Math.ceil((length - start) / STEP));
  const found: { from: number; to: number; way: Exclude<Way, null> }[] = [];
  for (let k = 0; k <= steps; k++) {
    const measure = k === steps ? length : start + k * STEP;
    const way = wayAt(own, against, measure);
    const last = found.at(-1);
    if (way === null) continue;
    if (last !== undefined && last.way === way && measure - last.to <= STEP * 1.5) last.to = measure;
    else found.push({ from: measure, to: measure, way });
  }
  return found
    .filter(({ from, to }) => to - from >= SHORTEST)
    .map(({ from, to, way }) => ({ from, to, ...(way === 'same' ? {} : { against: true as const }) }));
}
