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
