import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf, planStation } from '../testing/plans.ts';
import { collectLoad, dropLoad, fillVehicle, kgOf, type Load } from './loads.ts';
import { packOf, supplyKey } from './packs.ts';
import { tries } from '../testing/tries.ts';

const plan = planOf({ stations: [planStation({ supplies: { weights: { table: 12 } } })] });
const day = {
  id: 's1',
  packs: [
    packOf({ kind: 'waterJug' }, 37.9, 3.785411784),
    packOf({ kind: 'cups' }, 250, 100),
    packOf({ kind: 'bags' }, 2, 50),
    packOf({ kind: 'table' }, 3),
    packOf({ kind: 'sign', wording: 'Water ahead' }, 1),
  ],
};

describe('Loads', () => {
  it('weigh as the station’s supplies say', () => {
    expect(kgOf(dropLoad(plan, day).pieces)).toBeCloseTo(11 * 3.9 + 3 * 0.5 + 3 * 12 + 5, 9);
  });

  it('come back as tables, signs, empty jugs and full bags', () => {
    const { pieces } = collectLoad(plan, day);
    expect(pieces.map((piece) => [supplyKey(piece), piece.count])).toEqual([
      ['waterJug (empty)', 11],
      ['trash bags', 2],
      ['table', 3],
      ['sign: Water ahead', 1],
    ]);
    // A gallon weighs 3.785 kg, its jug what is left of 3.9; 300 cups weigh three packs.
    expect(pieces[0]!.each).toBeCloseTo(0.114588, 6);
    expect(pieces[1]!.each).toBe(1.5);
  });

  it('end where the first piece does not fit, so that the rest follows in order', () => {
    const load: Load = {
      station: 's1',
      pieces: [
        { kind: 'table', count: 2, each: 9 },
        { kind: 'gloves', count: 1, each: 0 },
      ],
    };
    expect(fillVehicle([load], { kg: 10, places: 2 })).toEqual({
      taken: [{ station: 's1', pieces: [{ kind: 'table', count: 1, each: 9 }] }],
      rest: [
        {
          station: 's1',
          pieces: [
            { kind: 'table', count: 1, each: 9 },
            { kind: 'gloves', count: 1, each: 0 },
          ],
        },
      ],
    });
  });

  it('fill a vehicle within its kilograms and places, in order, and lose no piece', () => {
    const piece = fc.record({
      kind: fc.constantFrom('cups', 'table', 'box'),
      count: fc.integer({ min: 1, max: 40 }),
      each: fc.integer({ min: 0, max: 50 }),
    });
    const queue = fc.array(fc.array(piece, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(queue, fc.integer({ min: 50, max: 3000 }), fc.integer({ min: 1, max: 6 }), (lists, kg, places) => {
        const loads: Load[] = lists.map((pieces, k) => ({ station: `s${k}`, pieces }));
        const count = (some: readonly Load[]): number =>
          some.reduce((sum, { pieces }) => sum + pieces.reduce((all, one) => all + one.count, 0), 0);
        let rest: readonly Load[] = loads;
        let carried = 0;
        while (rest.length > 0) {
          const filled = fillVehicle(rest, { kg, places });
          expect(filled.taken.length).toBeGreaterThan(0);
          expect(filled.taken.length).toBeLessThanOrEqual(places);
          expect(filled.taken.reduce((sum, { pieces }) => sum + kgOf(pieces), 0)).toBeLessThanOrEqual(kg);
          expect(filled.taken[0]!.station).toBe(rest[0]!.station);
          carried += count(filled.taken);
          rest = filled.rest;
        }
        expect(carried).toBe(count(loads));
      }),
      { seed: 48, numRuns: tries(300) },
    );
  });
});
