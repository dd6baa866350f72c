/**
 * The sharpest bend of a stretch of course: the net turn over any 30 m, recorded tracks smoothed over 10 m, places where
 * the recorder stood still left out. Wiggles that turn back within the 30 m are no bend.
 */
import { pointAt } from '../course/locate.ts';
import { toMeasure, toRaw } from '../course/scale.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import { DEGREES } from '../geodesy/ellipsoid.ts';
import type { Corner } from '../geodesy/offsetLine.ts';
import { wheelLine } from '../layout/wheel.ts';

/** Course over which a turn counts as one bend, metres. */
export const WINDOW = 30;
/** A bend of more degrees is sharp: runners bunch, cut in or swing out. */
export const SHARP = 45;
/** A turn of less than 5°, in radians, is straight. */
const STRAIGHT = 5 / DEGREES;
/** Rounding of a turn, degrees. */
const SAME = 1e-6;

/** A bend sharper than `SHARP`. */
export interface Bend {
  /** Degrees, left positive. */
  readonly turn: number;
  readonly measure: number;
  readonly at: LonLat;
}

/**
 * The sharpest bend whose corners lie between two course distances, or that begins up to `before` metres upstream and reaches
 * between them; `null` where none is sharp.
 */
export function sharpBend(indexed: IndexedCourse, from: number, to: number, before: number = 0): Bend | null {
  const { course } = indexed;
  const turned = largestTurn(cornersBetween(indexed, from - before, to), toRaw(course, from));
  const turn = (turned?.turn ?? 0) * DEGREES;
  if (turned === null || Math.abs(turn) <= SHARP + SAME) return null;
  const measure = toMeasure(course, turned.at);
  const ground = pointAt(course, measure);
  return ground === null ? null : { turn, measure, at: ground.at };
}

function cornersBetween({ course, tangles }: IndexedCourse, from: number, to: number): Corner[] {
  const [first, last] = [toRaw(course, from), toRaw(course, to)];
  return wheelLine(course, from, to).corners.filter(
    ({ at }) => at >= first && at <= last && !tangles.some((tangle) => at >= tangle.from && at <= tangle.to),
  );
}

/**
 * The largest net turn, radians, over 30 m of raw measure of which some lies behind `reached`, and its middle, weighed by turn; `null`
 * without corners.
 */
function largestTurn(corners: readonly Corner[], reached: number): Corner | null {
  let largest: Corner | null = null;
  corners.forEach((first, k) => {
    let [turn, behind, weight, moment] = [0, 0, 0, 0];
    for (const corner of corners.slice(k)) {
      if (corner.at - first.at > WINDOW) break;
      turn += corner.turn;
      if (corner.at >= reached) behind += corner.turn;
      weight += Math.abs(corner.turn);
      moment += Math.abs(corner.turn) * (corner.at - first.at);
      // The last of a bend that has all but ended is straight.
      const reaches = behind * turn > 0 && Math.abs(behind) >= STRAIGHT;
      if (reaches && (largest === null || Math.abs(turn) > Math.abs(largest.turn)))
        largest = { at: first.at + moment / weight, turn };
    }
  });
  return largest;
}
