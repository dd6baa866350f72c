/**
 * Finish times by rank: the time at a quantile of a list, of given quantiles, or of a log-normal distribution.
 * A list's j-th of M times has the quantile (j − ½)/M (J. W. Tukey's and A. Hazen's plotting position: type 5 of
 * R. J. Hyndman, Y. Fan, "Sample quantiles in statistical packages", Am. Stat. 50 (1996)), linear between.
 */
import { bisectRight } from 'd3-array';
import { normalCdf } from '../geodesy/normal.ts';

/**
 * The z below which a standard normal variate falls with probability `p`; the infinities at 0 and 1. Newton's method
 * from the middle, where the distribution function is convex towards its tail, so that no step passes the root.
 * Accuracy: 1e-8 for p from 1e-6 to 1 − 1e-6.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`found the probability ${p}; expected 0 to 1`);
  if (p === 0) return -Infinity;
  if (p > 0.5) return -normalQuantile(1 - p);
  let z = 0;
  for (let step = 1, n = 0; Math.abs(step) > 1e-12 && n < 100; n++) {
    step = ((normalCdf(z) - p) * Math.sqrt(2 * Math.PI)) / Math.exp((-z * z) / 2);
    z -= step;
  }
  return z === 0 ? 0 : z;
}

/** Value at a share, linear between pairs of rising share and value; the first or last value beyond them. */
export function linearAt(shares: ArrayLike<number>, values: ArrayLike<number>, share: number): number {
  const next = bisectRight(shares, share);
  if (next === 0) return values[0]!;
  if (next === shares.length) return values[next - 1]!;
  const [from, to] = [shares[next - 1]!, shares[next]!];
  return values[next - 1]! + ((values[next]! - values[next - 1]!) * (share - from)) / (to - from);
}

/** N finish times in seconds, ascending: runner i of N at the quantile (i − ½)/N. No random numbers. */
export const timesByRank = (count: number, at: (quantile: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => at((i + 0.5) / count));

/** Log-normal: `spread` is the standard deviation of ln T. */
export const lognormalAt =
  (median: number, spread: number) =>
  (quantile: number): number =>
    median * Math.exp(spread * normalQuantile(quantile));

/** Of a list of times in any order. */
export function listAt(times: readonly number[]): (quantile: number) => number {
  const sorted = Float64Array.from(times).sort();
  const shares = sorted.map((_, j) => (j + 0.5) / sorted.length);
  return (quantile) => linearAt(shares, sorted, quantile);
}
