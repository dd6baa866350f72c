import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SUPPLIES } from '../plan/defaults.ts';
import { planStation } from '../testing/plans.ts';
import { packKg, packOf, packsOf, supplyKey, totalPacks, type PacksCase } from './packs.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

const one: PacksCase = {
  needs: {
    gels: 801,
    ordered: { cups: { water: 1380, sportsDrink: 690 }, volume: { water: 142.9, sportsDrink: 71.4 } },
  },
  tables: { gel: 1, sportsDrink: 2, water: 3 },
  layers: 3,
  crew: { total: 26, shifts: 2 },
  boxes: 4,
  language: 'en',
  directions: 1,
};

const counts = (keys: Partial<PacksCase>, station: Parameters<typeof planStation>[0] = {}): Record<string, number> =>
  Object.fromEntries(
    packsOf(DEFAULT_SUPPLIES, planStation(station), { ...one, ...keys }).map((pack) => [supplyKey(pack), pack.count]),
  );

describe('Packs', () => {
  it('hold the need, and one less would not', () => {
    fc.assert(
      fc.property(real(0, 1e5), real(0.01, 500), (need, size) => {
        const { count, pack } = packOf({ kind: 'cups' }, need, size);
        expect(Number.isInteger(count)).toBe(true);
        const slack = 1e-8 * Math.max(pack, need);
        expect(count * pack).toBeGreaterThanOrEqual(need - slack);
        if (count > 0) expect((count - 1) * pack).toBeLessThan(need);
      }),
      { seed: 46, numRuns: tries(1000) },
    );
  });

  it('are everything that a station is sent', () => {
    // 142.9 l and 71.4 l in gallons of 3.785 l; 2,070 cups by the hundred; bags for 300 cups in rolls of 50.
    expect(counts({}, { serves: ['gel', 'sportsDrink', 'water'] })).toEqual({
      waterJug: 38,
      sportsDrinkJug: 19,
      cups: 21,
      gels: 34,
      gloves: 2,
      bags: 1,
      towels: 5,
      stackingSheets: 10,
      table: 6,
      box: 4,
      'sign: Water and gel ahead': 1,
      instructions: 1,
    });
  });

  it('have boxes, a sign and trash for each direction', () => {
    expect(counts({ directions: 2, boxes: 6 })).toMatchObject({ box: 12, 'sign: Water ahead': 2 });
  });

  it('leave out what nobody needs', () => {
    const none = counts(
      {
        needs: { gels: 0, ordered: { cups: { water: 10, sportsDrink: 0 }, volume: { water: 1, sportsDrink: 0 } } },
        tables: { gel: 0, sportsDrink: 0, water: 1 },
      },
      { serves: ['water'] },
    );
    expect(none).not.toHaveProperty('gels');
    expect(none).not.toHaveProperty('sportsDrinkJug');
  });

  it('add up over stations, apart where pack sizes differ', () => {
    const packs = [packOf({ kind: 'cups' }, 150, 100), packOf({ kind: 'table' }, 2)];
    expect(totalPacks([{ packs }, { packs }, { packs: [packOf({ kind: 'cups' }, 60, 50)] }])).toEqual([
      { kind: 'cups', need: 300, pack: 100, count: 4 },
      { kind: 'table', need: 4, pack: 1, count: 4 },
      { kind: 'cups', need: 60, pack: 50, count: 2 },
    ]);
  });

  it('have one name each in JSON: a sign its wording, an empty jug and a full bag their own', () => {
    expect(
      (
        [
          { kind: 'waterJug' },
          { kind: 'waterJug', empty: true },
          { kind: 'sign', wording: 'Water ahead' },
          { kind: 'trashBags' },
        ] as const
      ).map(supplyKey),
    ).toEqual(['waterJug', 'waterJug (empty)', 'sign: Water ahead', 'trash bags']);
  });

  it('weigh what the plan says, and nothing where it says nothing', () => {
    const kinds = ['waterJug', 'sign', 'gloves'] as const;
    expect(kinds.map((kind) => packKg(DEFAULT_SUPPLIES, { kind }))).toEqual([3.9, 5, 0]);
  });
});
