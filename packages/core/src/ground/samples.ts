/**
 * A course as places every few metres in a plane, each with the direction that the course has over some metres around it, so
 * that a recorder's shaking does not turn it.
 */
import type { Course } from '../course/course.ts';
import { bisectRight } from '../course/scale.ts';
import { type Plane, type PlaneLine, drawnOn, shareNearest } from './plane.ts';

/** Metres between samples, at most. */
export const STEP = 5;
/** Metres before and behind a place over which its direction is taken. */
const AROUND = 12;

export interface Sample {
  /** Raw measure, metres. */
  readonly raw: number;
  readonly x: number;
  readonly y: number;
  /** Unit vector of the direction; both 0 where the course turns back on itself. */
  readonly dx: number;
  readonly dy: number;
  /** True on the first place of the course, and behind each skipped gap. */
  readonly begins: boolean;
}

/** A course in a plane. */
export interface PlaneCourse {
  readonly course: Course;
  readonly line: PlaneLine;
}

export const courseOn = (plane: Plane, course: Course): PlaneCourse => ({ course, line: drawnOn(plane, course) });

/** Runs of vertices between skipped gaps. */
function partsOf(course: Course): { first: number; last: number }[] {
  const ends = [...course.skips.map(({ vertex }) => vertex), course.lon.length - 1];
  return ends
    .map((last, k) => ({ first: k === 0 ? 0 : ends[k - 1]! + 1, last }))
    .filter(({ first, last }) => last > first);
}

/** Samples of a whole course in running order. */
export function samplesOf(on: PlaneCourse): Sample[] {
  const { raw } = on.course;
  return partsOf(on.course).flatMap(({ first, last }) => {
    const [start, end] = [raw[first]!, raw[last]!];
    const count = Math.max(1, Math.ceil((end - start) / STEP));
    const place = walker(on, first, last);
    const [before, behind] = [walker(on, first, last), walker(on, first, last)];
    return Array.from({ length: count + 1 }, (_, k): Sample => {
      const at = start + ((end - start) * k) / count;
      const [x, y] = place(at);
      const [x0, y0] = before(Math.max(at - AROUND, start));
      const [x1, y1] = behind(Math.min(at + AROUND, end));
      const chord = Math.hypot(x1 - x0, y1 - y0);
      const straight = chord > (Math.min(at + AROUND, end) - Math.max(at - AROUND, start)) / 2;
      const over = straight ? 1 / chord : 0;
      return { raw: at, x, y, dx: (x1 - x0) * over, dy: (y1 - y0) * over, begins: k === 0 };
    });
  });
}

/** Tells places at raw measures that ascend. */
function walker({ course: { raw }, line: { x, y } }: PlaneCourse, first: number, last: number) {
  let vertex = first;
  return (at: number): [number, number] => {
    while (vertex + 1 < last && raw[vertex + 1]! < at) vertex++;
    const length = raw[vertex + 1]! - raw[vertex]!;
    const share = length > 0 ? (at - raw[vertex]!) / length : 0;
    return [x[vertex]! + share * (x[vertex + 1]! - x[vertex]!), y[vertex]! + share * (y[vertex + 1]! - y[vertex]!)];
  };
}

/** The place nearest to a point between two raw measures: its raw measure, and how far it is, metres. */
export function nearestBetween(
  { course: { raw }, line: { x, y } }: PlaneCourse,
  px: number,
  py: number,
  from: number,
  to: number,
): { raw: number; distance: number } {
  let best = { raw: from, distance: Infinity };
  for (let i = Math.max(bisectRight(raw, from) - 1, 0); i + 1 < raw.length && raw[i]! <= to; i++) {
    const length = raw[i + 1]! - raw[i]!;
    if (length <= 0) continue;
    const free = shareNearest(px, py, x[i]!, y[i]!, x[i + 1]!, y[i + 1]!);
    const share = Math.min(Math.max(free, (from - raw[i]!) / length), (to - raw[i]!) / length);
    if (share < 0 || share > 1) continue;
    const distance = Math.hypot(x[i]! + share * (x[i + 1]! - x[i]!) - px, y[i]! + share * (y[i + 1]! - y[i]!) - py);
    if (distance < best.distance) best = { raw: raw[i]! + share * length, distance };
  }
  return best;
}
