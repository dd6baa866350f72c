import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Span, kerbScale } from './kerbScale.ts';

it('draws tables and trash to one scale and leaves out what lies empty between them', () => {
  const { x, scale, breaks, end } = kerbScale(
    [
      [-91.4, -91.4],
      [0, 20],
      [65, 110],
    ],
    7,
    175,
  );
  expect(breaks).toHaveLength(2);
  expect(scale).toBeCloseTo((168 - 2 * 17) / 65, 9);
  expect(x(-91.4)).toBe(7);
  expect(x(20) - x(0)).toBeCloseTo(20 * scale, 9);
  expect(x(110) - x(65)).toBeCloseTo(45 * scale, 9);
  expect(x(65) - x(20)).toBeCloseTo(17, 9);
  expect(end).toBeCloseTo(175, 9);
});

it('leaves nothing out where all fits, and is never larger than 1 : 200', () => {
  const { breaks, scale } = kerbScale(
    [
      [0, 4],
      [6, 10],
    ],
    7,
    175,
  );
  expect(breaks).toEqual([]);
  expect(scale).toBe(5);
});

const spans = fc
  .array(fc.tuple(fc.integer({ min: -300, max: 300 }), fc.integer({ min: 0, max: 60 })), { minLength: 1, maxLength: 5 })
  .map((all): Span[] => all.map(([from, long]) => [from, from + long]));

it('keeps the order of places and stays on the paper, whatever stands there', () => {
  fc.assert(
    fc.property(spans, (all) => {
      const { x, scale, end } = kerbScale(all, 7, 175);
      expect(scale).toBeGreaterThan(0);
      expect(end).toBeLessThanOrEqual(175 + 1e-9);
      const places = all.flat().sort((a, b) => a - b);
      places.slice(1).forEach((place, k) => expect(x(place)).toBeGreaterThanOrEqual(x(places[k]!) - 1e-9));
      for (const [from, to] of all) expect(x(to) - x(from)).toBeCloseTo((to - from) * scale, 6);
    }),
    { seed: 7, numRuns: 200 },
  );
});
