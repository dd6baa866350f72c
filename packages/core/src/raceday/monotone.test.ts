import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import { monotoneCurve } from './monotone.ts';

const runs = { seed: 20_270_912, numRuns: tries(300) };

/** Rising shares from 0 to 1 and times that never fall, some of them equal. */
const points = fc
  .array(fc.tuple(real(0.001, 1), fc.oneof(fc.constant(0), real(0, 1000))), { minLength: 2, maxLength: 12 })
  .map((steps) => {
    const shares = [0];
    const times = [100];
    for (const [width, rise] of steps) {
      shares.push(shares.at(-1)! + width);
      times.push(times.at(-1)! + rise);
    }
    return { shares: shares.map((share) => share / shares.at(-1)!), times };
  });

describe('a monotone curve', () => {
  // SciPy 1.17.1, scipy.interpolate.PchipInterpolator of the same points.
  it('has the values of a published program for the same method', () => {
    const curve = monotoneCurve([0, 0.1, 0.5, 0.9, 1], [4080, 5700, 7440, 9480, 12_300]);
    const known = [
      [0, 4080],
      [0.02, 4461.36807920792],
      [0.05, 5025.219059405941],
      [0.1, 5700],
      [0.3, 6722.8618576143335],
      [0.5, 7440],
      [0.77, 8513.488764943217],
      [0.95, 10_605.11610878661],
      [1, 12_300],
    ] as const;
    for (const [share, time] of known) expect(Math.abs(curve(share) - time)).toBeLessThan(1e-8);
    const level = monotoneCurve([0, 1, 3, 4, 7], [0, 0, 2, 10, 10]);
    expect(level(0.5)).toBe(0);
    expect(level(1.5)).toBeCloseTo(0.13006756756756754, 12);
    expect(level(2)).toBeCloseTo(0.5135135135135135, 12);
    expect(level(3.25)).toBeCloseTo(3.5236486486486482, 12);
    expect(level(5)).toBe(10);
  });

  it('is the straight line through two points, and a parabola has its own slope at its end', () => {
    const line = monotoneCurve([0, 1], [100, 300]);
    expect([-1, 0, 0.25, 0.5, 1, 2].map(line)).toEqual([100, 100, 150, 200, 300, 300]);
    const square = monotoneCurve([1, 2, 3], [1, 4, 9]);
    expect((square(1 + 1e-6) - 1) / 1e-6).toBeCloseTo(2, 4);
    expect((9 - square(3 - 1e-6)) / 1e-6).toBeCloseTo(6, 4);
  });

  it('meets its points, never falls and has no step in its slope', () => {
    fc.assert(
      fc.property(points, ({ shares, times }) => {
        const curve = monotoneCurve(shares, times);
        shares.forEach((share, k) => expect(Math.abs(curve(share) - times[k]!)).toBeLessThan(1e-9 * times[k]!));
        let before = -Infinity;
        for (let k = 0; k <= 500; k++) {
          const here = curve(k / 500);
          expect(here).toBeGreaterThanOrEqual(before);
          before = here;
        }
        for (let k = 1; k < shares.length - 1; k++) {
          const [h, at] = [1e-6 * Math.min(shares[k]! - shares[k - 1]!, shares[k + 1]! - shares[k]!), shares[k]!];
          const [left, right] = [(curve(at) - curve(at - h)) / h, (curve(at + h) - curve(at)) / h];
          const steepest = Math.max(
            ...shares.slice(1).map((share, j) => (times[j + 1]! - times[j]!) / (share - shares[j]!)),
          );
          expect(Math.abs(left - right)).toBeLessThan(1e-3 * steepest + 1e-6);
        }
      }),
      runs,
    );
  });
});
