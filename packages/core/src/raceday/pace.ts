/**
 * When a runner is where: the share of a finish time that is spent by a measure.
 * Model: pace relative to that of the first quarter is 1 up to a quarter of the course, rises linearly to 1 + slow at
 * three quarters, then holds; its integral in closed form. Where hills are given, each stretch is weighted by its cost.
 * Fit: the splits of 31,931 marathon finishers (open results), each 10/50/90 % quantile at eight splits within 2 %.
 */
import type { Hills } from './hills.ts';

/** Integrals of the relative pace over the course up to a place: time is proportional to `even` + slow · `late`. */
export interface Work {
  readonly even: number;
  readonly late: number;
}

/** How far rounding may take a measure beyond an end, as a share of the course. */
const ROUNDING = 1e-6;

/** Integral of the ramp that is 0 up to a quarter and 1 from three quarters on. */
function late(share: number): number {
  if (share <= 0.25) return 0;
  return share < 0.75 ? (share - 0.25) ** 2 : share - 0.5;
}

/**
 * Work up to a share (0 to 1) of the course's length: the same for all runners of a race, so it is worked out once a
 * place. Flat where `hills` is `null`. A share outside 0 to 1 by more than rounding throws.
 */
export function workTo(share: number, hills: Hills | null): Work {
  if (!(share >= -ROUNDING && share <= 1 + ROUNDING))
    throw new RangeError(`found the share ${share} of a course; expected 0 to 1`);
  const to = Math.min(Math.max(share, 0), 1);
  if (hills === null) return { even: to, late: late(to) };
  let even = 0;
  let slowed = 0;
  for (let k = 0; k < hills.cost.length && hills.shares[k]! < to; k++) {
    const from = hills.shares[k]!;
    const until = Math.min(hills.shares[k + 1]!, to);
    even += hills.cost[k]! * (until - from);
    slowed += hills.cost[k]! * (late(until) - late(from));
  }
  return { even, late: slowed };
}

/** Share of the finish time spent up to a place, 0 to 1, of a runner who slows by `slow`; `total` is the work of the whole course. */
export const timeShare = (work: Work, total: Work, slow: number): number =>
  (work.even + slow * work.late) / (total.even + slow * total.late);

/**
 * Seconds from the start line to `d` metres of a course of `D` metres, for a runner who takes `T` seconds in all and
 * whose pace in the last quarter is 1 + `slow` times that of the first. 0 at the start and `T` at the finish, hills or not.
 */
export const timeAt = (d: number, D: number, T: number, slow: number, hills: Hills | null = null): number =>
  T * timeShare(workTo(d / D, hills), workTo(1, hills), slow);
