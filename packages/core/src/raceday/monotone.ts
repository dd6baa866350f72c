/**
 * A smooth curve through points that rises wherever they rise and has no step in its slope: piecewise cubic Hermite
 * polynomials. F. N. Fritsch, R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980);
 * slopes at the points by F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984), at both ends by the three-point
 * formula, bounded (both sources quoted, not read).
 */
import { bisectRight } from 'd3-array';

/** The curve through two points or more, `xs` rising; the first or last value beyond them. */
export function monotoneCurve(xs: ArrayLike<number>, ys: ArrayLike<number>): (x: number) => number {
  const last = xs.length - 1;
  const slopes = slopesOf(xs, ys);
  return (x) => {
    const next = bisectRight(xs, x);
    if (next === 0) return ys[0]!;
    if (next > last) return ys[last]!;
    const [from, to] = [ys[next - 1]!, ys[next]!];
    const width = xs[next]! - xs[next - 1]!;
    const t = (x - xs[next - 1]!) / width;
    const step = (to - from) * t * t * (3 - 2 * t);
    const bend = width * t * (1 - t) * (slopes[next - 1]! * (1 - t) - slopes[next]! * t);
    // Rounding alone could leave the two ends.
    return Math.min(Math.max(from + step + bend, Math.min(from, to)), Math.max(from, to));
  };
}

function slopesOf(xs: ArrayLike<number>, ys: ArrayLike<number>): Float64Array {
  const pieces = xs.length - 1;
  const widths = Float64Array.from({ length: pieces }, (_, k) => xs[k + 1]! - xs[k]!);
  const rises = widths.map((width, k) => (ys[k + 1]! - ys[k]!) / width);
  const slopes = new Float64Array(xs.length).fill(rises[0]!);
  if (pieces === 1) return slopes;
  for (let k = 1; k < pieces; k++) slopes[k] = slopeBetween(widths[k - 1]!, widths[k]!, rises[k - 1]!, rises[k]!);
  slopes[0] = slopeAtEnd(widths[0]!, widths[1]!, rises[0]!, rises[1]!);
  slopes[pieces] = slopeAtEnd(widths[pieces - 1]!, widths[pieces - 2]!, rises[pieces - 1]!, rises[pieces - 2]!);
  return slopes;
}

/** Weighted harmonic mean of the rises on both sides; level where one is level or they turn. */
function slopeBetween(before: number, after: number, rise: number, next: number): number {
  if (!(rise * next > 0)) return 0;
  const [a, b] = [2 * after + before, after + 2 * before];
  return (a + b) / (a / rise + b / next);
}

/** Of the parabola through the three points at an end; level where it would turn, at most three times the rise there. */
function slopeAtEnd(width: number, inner: number, rise: number, next: number): number {
  const slope = ((2 * width + inner) * rise - width * next) / (width + inner);
  if (!(slope * rise > 0)) return 0;
  return rise * next < 0 && Math.abs(slope) > 3 * Math.abs(rise) ? 3 * rise : slope;
}
