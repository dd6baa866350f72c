import { expect, it } from 'vitest';
import { normalCdf } from './normal.ts';

// Source: M. Abramowitz, I. Stegun, "Handbook of mathematical functions", table 26.1 (values from memory, checked with Python's statistics.NormalDist).
it('the normal distribution function has its tabled values', () => {
  const table = [
    [0, 0.5],
    [0.5, 0.691462461274013],
    [1, 0.841344746068543],
    [1.6448536269514722, 0.95],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [4.5, 0.999996602326875],
  ] as const;
  for (const [z, p] of table) {
    expect(Math.abs(normalCdf(z) - p)).toBeLessThan(1e-14);
    expect(Math.abs(normalCdf(-z) - (1 - p))).toBeLessThan(1e-14);
  }
  expect([normalCdf(-Infinity), normalCdf(Infinity), normalCdf(-60)]).toEqual([0, 1, 0]);
});

/** Source: Abramowitz and Stegun, 7.1.6 (series of erf) and 7.1.14 (continued fraction of erfc). */
function upperTail(z: number): number {
  const x = z / Math.SQRT2;
  if (x < 3) {
    let term = x;
    let sum = x;
    for (let n = 1; n < 200; n++) {
      term *= (2 * x * x) / (2 * n + 1);
      sum += term;
    }
    return 0.5 * (1 - (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum);
  }
  let fraction = x;
  for (let n = 60; n >= 1; n--) fraction = x + n / 2 / fraction;
  return (0.5 * Math.exp(-x * x)) / Math.sqrt(Math.PI) / fraction;
}

it('the normal distribution function is that of the series and the continued fraction, in all its pieces', () => {
  for (let z = 0; z < 12; z += 0.003) {
    expect(Math.abs(normalCdf(z) - (1 - upperTail(z)))).toBeLessThan(2e-15);
    expect(Math.abs(normalCdf(-z) - upperTail(z))).toBeLessThan(2e-15);
    if (z > 5) expect(normalCdf(-z) / upperTail(z)).toBeCloseTo(1, 12);
  }
});
