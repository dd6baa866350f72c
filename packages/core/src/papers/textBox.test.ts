import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Hanging, POINT, hangLabels, overlap, textWidth } from './textBox.ts';

// The font is as wide as Helvetica: Adobe Font Metrics of Core 14 (from memory), "Water" 944 + 556 + 278 + 556 + 333, a digit 556.
it('sums the advance widths of the papers’ own font, which are those of Helvetica', () => {
  expect(textWidth('Water', 10)).toBeCloseTo(2.667 * 10 * POINT, 1);
  expect(textWidth('0123456789', 10)).toBeCloseTo(5.56 * 10 * POINT, 1);
  expect(textWidth('é', 10)).toBeCloseTo(textWidth('e', 10), 9);
  expect(textWidth('Water', 10, true)).toBeGreaterThan(textWidth('Water', 10));
});

it('takes an em for a sign that the font lacks, its letter’s width where it has one with marks, nothing for what joins or hides', () => {
  expect(textWidth('水', 10)).toBeCloseTo(10 * POINT, 9);
  expect(textWidth('ế', 10)).toBeCloseTo(textWidth('e', 10), 9);
  expect(textWidth('e\u0301', 10)).toBeCloseTo(textWidth('é', 10), 9);
  expect(textWidth('\u2068a\u2069', 10)).toBeCloseTo(textWidth('a', 10), 9);
});

it('sees boxes that share ground, and not those that only touch', () => {
  const box = { x: 0, y: 0, width: 10, height: 4 };
  expect(overlap(box, { ...box, x: 9.9, y: 3.9 })).toBe(true);
  expect(overlap(box, { ...box, x: 10 })).toBe(false);
  expect(overlap(box, { ...box, y: 4 })).toBe(false);
});

const RIGHT = 182;
const labels = fc
  .array(fc.record({ anchor: fc.integer({ min: 4, max: 178 }), width: fc.integer({ min: 5, max: 60 }) }), {
    minLength: 1,
    maxLength: 8,
  })
  .map((all): Hanging[] =>
    all.map(({ anchor, width }) => ({ width, anchors: [anchor, Math.min(anchor + 5, 178), Math.max(anchor - 5, 4)] })),
  );

it('hangs labels so that none lies on another, none leaves the paper, and no line runs through one', () => {
  let hungs = 0;
  fc.assert(
    fc.property(labels, (all) => {
      const hung = hangLabels(all, 0, RIGHT);
      if (hung === null) return;
      hungs += 1;
      hung.forEach((one, k) => {
        const { width, anchors } = all[k]!;
        expect(anchors).toContain(one.anchor);
        expect(one.x).toBeGreaterThanOrEqual(0);
        expect(one.x + width).toBeLessThanOrEqual(RIGHT);
        expect(one.anchor >= one.x && one.anchor <= one.x + width).toBe(true);
        hung.forEach((other, j) => {
          if (j === k) return;
          const clear = other.x + all[j]!.width <= one.x || one.x + width <= other.x;
          if (other.row === one.row) expect(clear).toBe(true);
          if (other.row < one.row) expect(one.anchor < other.x || one.anchor > other.x + all[j]!.width).toBe(true);
        });
      });
    }),
    { seed: 7, numRuns: 150 },
  );
  expect(hungs).toBeGreaterThan(130);
});

it('gives up where there is no room: two labels on one spot, or more rows than allowed', () => {
  expect(
    hangLabels(
      [
        { width: 20, anchors: [50] },
        { width: 20, anchors: [50] },
      ],
      0,
      RIGHT,
    ),
  ).toBeNull();
  expect(
    hangLabels(
      [
        { width: 150, anchors: [50] },
        { width: 150, anchors: [120] },
      ],
      0,
      RIGHT,
      1,
    ),
  ).toBeNull();
});
