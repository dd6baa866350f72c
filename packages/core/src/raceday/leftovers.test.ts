import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf, planStation } from '../testing/plans.ts';
import { tries } from '../testing/tries.ts';
import { type SentDay, leftFields, usedOf } from './leftovers.ts';

const plan = planOf({ stations: [planStation({}), planStation({ id: 's2', serves: ['water'] })] });
const { cup, fill } = plan.supplies;
const jug = 4;
const both: SentDay = {
  id: 's1',
  packs: [
    { kind: 'waterJug', need: 100, pack: jug, count: 30 },
    { kind: 'sportsDrinkJug', need: 60, pack: jug, count: 20 },
    { kind: 'cups', need: 1500, pack: 100, count: 16 },
    { kind: 'gels', need: 300, pack: 24, count: 13 },
  ],
};
const water: SentDay = { id: 's2', packs: [both.packs[0]!, both.packs[2]!] };

describe('What was used, by what is left', () => {
  it('shares the cups that are gone between two drinks by the litres of their jugs', () => {
    const used = usedOf(plan, both, { waterFull: 6, sportsDrinkFull: 12, cupPacks: 3, cupsLoose: 20, gelBoxes: 1 });
    // 1600 − 320 cups; 24 and 8 jugs gone.
    expect(used).toEqual({ ok: true, value: { water: 960, sportsDrink: 320, gel: 288 }, findings: [] });
  });

  it('turns litres into cups where nobody counted cups', () => {
    const used = usedOf(plan, both, { waterFull: 10 });
    expect(used.ok && used.value).toEqual({ water: Math.round((20 * jug) / (cup * fill)) });
  });

  it('counts an open jug half, where full and empty ones are counted', () => {
    const litres = (left: object): number => {
      const used = usedOf(plan, water, left);
      return used.ok ? used.value.water! * cup * fill : Number.NaN;
    };
    expect(litres({ waterFull: 10, waterEmpty: 18 })).toBeCloseTo(19 * jug, 1);
    expect(litres({ waterFull: 10, waterEmpty: 20 })).toBeCloseTo(20 * jug, 1);
    expect(litres({ waterEmpty: 20 })).toBeCloseTo(20 * jug, 1);
  });

  it('gives all cups to the one drink of a station, whatever its jugs', () => {
    const used = usedOf(plan, water, { cupPacks: 4, waterFull: 2 });
    expect(used.ok && used.value).toEqual({ water: 1200 });
  });

  it('uses everything where nothing is left, and nothing where all is left', () => {
    const none = usedOf(plan, both, { waterFull: 0, sportsDrinkFull: 0, cupPacks: 0, gelBoxes: 0 });
    expect(none.ok && none.value).toEqual({ water: 960, sportsDrink: 640, gel: 312 });
    const all = usedOf(plan, both, { waterFull: 30, sportsDrinkFull: 20, cupPacks: 16, gelBoxes: 13 });
    expect(all.ok && all.value).toEqual({ water: 0, sportsDrink: 0, gel: 0 });
  });

  it.each([
    ['more jugs than were sent', { waterFull: 31 }, 'waterFull', 'tooMany'],
    ['more full and empty jugs than were sent', { waterFull: 20, waterEmpty: 11 }, 'waterEmpty', 'tooMany'],
    ['more cups than were sent', { cupPacks: 15, cupsLoose: 101 }, 'cupsLoose', 'tooMany'],
    ['cups without the jugs of a drink', { cupPacks: 5, waterFull: 3 }, 'sportsDrinkFull', 'whichDrink'],
    ['cups that are gone from full jugs', { cupPacks: 5, waterFull: 30, sportsDrinkFull: 20 }, 'cupPacks', 'noDrink'],
    ['no count', {}, undefined, 'noCounts'],
  ])('refuses %s', (_, left, item, problem) => {
    const used = usedOf(plan, both, left);
    expect(used.ok).toBe(false);
    expect(used.findings).toMatchObject([{ code: 'leftovers-unread', params: { problem } }]);
    expect(used.findings[0]!.where).toEqual({ station: 's1', ...(item === undefined ? {} : { item }) });
  });

  it('takes exactly what was sent, and refuses a count of what was not', () => {
    expect(usedOf(plan, both, { waterFull: 20, waterEmpty: 10 }).ok).toBe(true);
    expect(usedOf(plan, both, { cupPacks: 15, cupsLoose: 100, waterFull: 30, sportsDrinkFull: 20 }).ok).toBe(true);
    expect(usedOf(plan, water, { gelBoxes: 1 }).findings).toMatchObject([
      { params: { problem: 'notSent', item: 'gels' } },
    ]);
    expect(usedOf(plan, water, { gelBoxes: 0, waterFull: 1 }).ok).toBe(true);
  });

  it('never has more or less used than was sent, and drinks together as many cups as are gone', () => {
    const packs = (most: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: most });
    fc.assert(
      fc.property(packs(29), packs(19), packs(16), (waterFull, sportsDrinkFull, cupPacks) => {
        const used = usedOf(plan, both, { waterFull, sportsDrinkFull, cupPacks });
        expect(used.ok && used.value.water! + used.value.sportsDrink!).toBe(1600 - cupPacks * 100);
        expect(used.ok && Math.min(used.value.water!, used.value.sportsDrink!)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: tries(200) },
    );
  });

  it('asks on the form for what was sent alone', () => {
    expect(leftFields(water).map(({ key }) => key)).toEqual(['waterFull', 'waterEmpty', 'cupPacks', 'cupsLoose']);
  });
});
