import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { timeAt, timeShare, workTo } from './pace.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

const runs = { seed: 20_270_912, numRuns: tries(300) };

/** The model's own words, summed by the midpoint rule: 1 up to a quarter, linear to 1 + slow at three quarters, then level. */
function summed(share: number, slow: number, steps = 20_000): number {
  const pace = (x: number): number => 1 + slow * Math.min(Math.max((x - 0.25) / 0.5, 0), 1);
  let sum = 0;
  for (let k = 0; k < steps; k++) sum += (pace(((k + 0.5) * share) / steps) * share) / steps;
  return sum;
}

describe('the time at a measure', () => {
  it('is the integral of the relative pace, to 1e-8 of the finish time', () => {
    for (const slow of [0, 0.06, 0.4, 2]) {
      for (const share of [0.1, 0.25, 0.4, 0.5, 0.74, 0.75, 0.9]) {
        expect(Math.abs(timeAt(42_195 * share, 42_195, 1, slow) - summed(share, slow) / summed(1, slow))).toBeLessThan(
          1e-8,
        );
      }
    }
  });

  it('is an even share of the finish time for who does not slow', () => {
    expect(timeAt(10_000, 40_000, 14_400, 0)).toBe(3600);
    expect(timeAt(30_000, 40_000, 14_400, 0)).toBe(10_800);
  });

  it('is 0 at the start, the finish time at the finish, and rises between', () => {
    fc.assert(
      fc.property(real(0, 5), real(0, 1), real(0, 1), (slow, a, b) => {
        expect(timeAt(0, 1000, 300, slow)).toBe(0);
        expect(timeAt(1000, 1000, 300, slow)).toBe(300);
        const [near, far] = [Math.min(a, b), Math.max(a, b)];
        expect(timeAt(1000 * near, 1000, 300, slow)).toBeLessThanOrEqual(timeAt(1000 * far, 1000, 300, slow));
      }),
      runs,
    );
  });

  it('is never later, on the way, for who slows more and takes as long in all', () => {
    for (const share of [0.1, 0.3, 0.5, 0.7, 0.9])
      expect(timeAt(share, 1, 1, 0.4)).toBeLessThan(timeAt(share, 1, 1, 0.06));
  });

  it('refuses a place that is off the course by more than rounding', () => {
    expect(() => workTo(1.001, null)).toThrow(/1\.001.*expected 0 to 1/u);
    expect(() => workTo(-0.001, null)).toThrow(/expected 0 to 1/u);
    expect(() => workTo(NaN, null)).toThrow(/expected 0 to 1/u);
    expect(workTo(1 + 1e-9, null)).toEqual({ even: 1, late: 0.5 });
  });
});

describe('hills', () => {
  const climbFirst = { shares: Float64Array.of(0, 0.5, 1), cost: Float64Array.of(2, 1) };

  it('cost more of the time where the road costs more, and the finish time stays', () => {
    expect(timeAt(500, 1000, 300, 0, climbFirst)).toBeCloseTo(200, 12);
    expect(timeAt(250, 1000, 300, 0, climbFirst)).toBeCloseTo(100, 12);
    expect(timeAt(1000, 1000, 300, 0.4, climbFirst)).toBe(300);
  });

  it('of a level road change nothing', () => {
    const level = { shares: Float64Array.of(0, 0.2, 0.3, 0.8, 1), cost: Float64Array.of(1, 1, 1, 1) };
    for (const share of [0, 0.1, 0.2, 0.45, 0.75, 0.95, 1]) {
      expect(timeShare(workTo(share, level), workTo(1, level), 0.3)).toBeCloseTo(timeAt(share, 1, 1, 0.3), 12);
    }
  });
});
