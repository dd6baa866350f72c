import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossesFlow } from '../review/bothWays.ts';
import { sideUnclear } from '../review/sideUnclear.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, turtlePoints } from '../testing/courses.ts';
import { real } from '../testing/numbers.ts';
import { layoutOf } from '../testing/plans.ts';
import { tries } from '../testing/tries.ts';

/** Out along an azimuth for 1 km, and back so many metres to the right of the way out; the pin so many to its right. */
function apart(azimuth: number, back: number, right: number, keys: Partial<PlanStation> = {}): Layout {
  const out = turtlePoints(ORIGIN, [[azimuth, 1000]]);
  const line = [...out, ...out.map((at) => from(at, azimuth + 90, back)).reverse()];
  const at = from(from(ORIGIN, azimuth, 500), azimuth + 90, right);
  return layoutOf([courseThrough(line)], [{ at, lead: { race: 'c', pass: 0 }, passes: 'all', ...keys }]);
}

const sides = (layout: Layout): string[] => layout.stations[0]!.directions.map(({ side }) => side);

describe('the sides of two ways that run apart', () => {
  it('are each its own: where the pin stands between and near one, that one is not told from the other', () => {
    // 3 m from the way back: no more than 90 % sure.
    const between = apart(90, 8, 5);
    expect(between.stations[0]!.passes.map(({ offset }) => Math.round(offset))).toEqual([-5, -3]);
    expect(sides(between)).toEqual(['right', 'unclear']);
    expect(crossesFlow.find(between)).toEqual([expect.objectContaining({ cannotTell: true })]);
    expect(sideUnclear.find(between)).toEqual([
      expect.objectContaining({
        where: expect.objectContaining({ measure: expect.closeTo(1508, 0) as number }) as object,
        message: expect.stringContaining('The pin is 3 m from another way (c at 1.51 km)') as string,
      }),
    ]);
  });

  it('keep to their own measurement wherever that is sure, and are unclear with a finding elsewhere', () => {
    fc.assert(
      fc.property(real(0, 360), real(4, 20), fc.boolean(), real(-15, 35), (azimuth, gap, mirrored, right) => {
        const [back, at] = mirrored ? [-gap, -right] : [gap, right];
        const layout = apart(azimuth, back, at);
        const station = layout.stations[0]!;
        expect(station.directions).toHaveLength(2);
        const unclear = sideUnclear.find(layout).length;
        for (const direction of station.directions) {
          const { offset, confidence, why } = station.passes[direction.passes[0]!]!;
          if (confidence >= 0.95) {
            expect([direction.side, why]).toEqual([offset > 0 ? 'left' : 'right', undefined]);
          } else {
            expect([direction.side, why]).toEqual(['unclear', 'position']);
            expect(unclear).toBeGreaterThan(0);
          }
        }
        // The pin's true place: beyond both lines, or between them.
        const beyond = right < 0 || right > gap;
        const crossed = crossesFlow.find(layout);
        const clear = station.directions.every(({ side }) => side !== 'unclear');
        if (clear) expect(crossed.map(({ cannotTell }) => cannotTell)).toEqual(beyond ? [undefined] : []);
        else expect(crossed.every(({ cannotTell }) => cannotTell === true)).toBe(true);
      }),
      { seed: 14, numRuns: tries(1000) },
    );
  });

  it('follow a declared side to where the tables then stand', () => {
    // On the line of the way out: declared right, the tables stand 4 m to its right, and 16 m from the way back: between the two.
    expect(sides(apart(90, 20, 0, { side: 'right' }))).toEqual(['right', 'right']);
    expect(sides(apart(90, 20, 0, { side: 'left' }))).toEqual(['left', 'right']);
    // 4 m to the right is on the other line: nobody knows on which side of it.
    expect(sides(apart(90, 4, 1.5, { side: 'right' }))).toEqual(['right', 'unclear']);
    // A declared side against the pin: the tables are where the plan says, 4 m to the left of the way out.
    expect(sides(apart(90, 8, 6, { side: 'left' }))).toEqual(['left', 'right']);
    // The width of the road says how far off they stand: beyond the other line, where the pin is not.
    expect(sides(apart(90, 8, 0, { side: 'right', width: 24 }))).toEqual(['right', 'unclear']);
    expect(sides(apart(90, 8, -6, { side: 'right', width: 24 }))).toEqual(['right', 'left']);
  });
});

describe('the sides of two ways on one line', () => {
  it('mirror each other, also where the pin does not tell and the plan does', () => {
    expect(sides(apart(30, 0, 7))).toEqual(['right', 'left']);
    expect(sides(apart(30, 0, 1))).toEqual(['unclear', 'unclear']);
    expect(sides(apart(30, 0, 1, { side: 'left' }))).toEqual(['left', 'right']);
    expect(sides(apart(30, 0, 7, { side: 'left' }))).toEqual(['left', 'right']);
    // Recorded twice, a metre apart.
    expect(sides(apart(30, 1, 4.5))).toEqual(['right', 'left']);
  });

  it('give one finding where neither is told', () => {
    expect(sideUnclear.find(apart(30, 0, 1))).toHaveLength(1);
  });
});

describe('why a side is unclear', () => {
  const why = (layout: Layout): unknown => layout.stations[0]!.passes[0]!.why;
  it('is said by the pass: for the errors of position, on the line, or at a turn', () => {
    expect(why(apart(90, 20, 7))).toBeUndefined();
    expect(why(apart(90, 20, 1))).toBe('position');
    const out = turtlePoints(ORIGIN, [[90, 1000]]);
    const line = courseThrough(out);
    expect(why(layoutOf([line], [{ at: out[25]! }]))).toBe('onLine');
    const turn = courseThrough([...out, ...out.slice(0, -1).reverse()]);
    const end = layoutOf([turn], [{ at: from(out.at(-1)!, 90, 6) }]);
    expect(why(end)).toBe('turn');
    expect(sideUnclear.find(end)[0]!.message).toMatch(/^The course turns so sharply at the pin that it has no sides/u);
  });
});
