import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tries } from '../testing/tries.ts';
import { type PourCase, type PourDrink, pourOf } from './pour.ts';

const demands = fc.array(
  fc.nat({ max: 4000 }).map((eighths) => eighths / 8),
  { minLength: 1, maxLength: 90 },
);

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);

/** Two drinks, the second half of the first. */
function caseOf(demand: readonly number[], keys: Partial<PourCase> = {}): PourCase {
  const of = (drink: PourDrink['drink'], part: number): PourDrink => ({
    drink,
    demand: demand.map((cups) => cups * part),
    from: 0,
    cups: sum(demand) * part,
    share: part / 1.5,
    fixed: null,
  });
  return {
    drinks: [of('water', 1), of('sportsDrink', 0.5)],
    spread: 60,
    cupsPerTable: 600,
    floor: [0.75, 0.4],
    rate: 15,
    safety: 1.25,
    room: 31,
    others: 6,
    within: 60,
    pourers: null,
    tableCost: 0.25,
    ...keys,
  };
}

/** Minute by minute with tables that hold so many: those who come take, then the pourers refill. */
function lasts(demand: readonly number[], stock: number, room: number, perMinute: number): boolean {
  let standing = stock;
  for (const cups of demand) {
    standing -= cups;
    if (standing < -1e-6) return false;
    standing = Math.min(room, standing + perMinute);
  }
  return true;
}

/** Whether so many pourers and tables would do, in the plainest way: every table full at the start. */
const would = (one: PourCase, pourers: number, tables: readonly number[]): boolean =>
  one.drinks.every(({ demand, share, cups }, k) => {
    const room = tables[k]! * one.cupsPerTable;
    return lasts(demand, Math.min(room, Math.ceil(cups)), room, (pourers * one.rate * share) / one.safety);
  });

describe('Tables, pourers and pre-pour', () => {
  it('last: poured cups stand on the tables, and no minute finds them empty', () => {
    fc.assert(
      fc.property(demands, fc.integer({ min: 2, max: 40 }), fc.integer({ min: 0, max: 30 }), (demand, room, others) => {
        const one = caseOf(demand, { room, others });
        const pour = pourOf(one);
        if (!pour.lasts) return;
        for (const { drink, demand: own, share, cups } of one.drinks) {
          const poured = pour.byDrink.get(drink)!;
          const rate = (pour.pourers * one.rate * share) / one.safety;
          expect(poured.cups).toBeLessThanOrEqual(Math.ceil(cups - 1e-6) + 1e-9);
          expect(poured.cups).toBeLessThanOrEqual(poured.tables * one.cupsPerTable);
          expect(lasts(own, poured.cups, poured.tables * one.cupsPerTable, rate)).toBe(true);
        }
        const all = sum([...pour.byDrink.values()].map(({ cups }) => cups));
        expect(all).toBeLessThanOrEqual((others + pour.pourers) * one.rate * one.within + 1e-6);
        expect(sum([...pour.byDrink.values()].map(({ tables }) => tables))).toBeLessThanOrEqual(room);
      }),
      { seed: 61, numRuns: tries(500) },
    );
  });

  it('cost no more than any other that would do, without a floor', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat({ max: 300 }), { minLength: 1, maxLength: 40 }),
        fc.constantFrom(0.1, 0.25, 1, 3),
        (demand, tableCost) => {
          const one = caseOf(demand, { floor: [0, 0], room: 40, others: 60, tableCost });
          const pour = pourOf(one);
          const cost = (pourers: number, tables: readonly number[]): number => pourers + tableCost * sum(tables);
          const own = cost(
            pour.pourers,
            [...pour.byDrink.values()].map(({ tables }) => tables),
          );
          for (let pourers = 1; pourers <= 12; pourers++)
            for (let water = 1; water <= 12; water++)
              for (let sports = 1; sports <= 6; sports++)
                if (cost(pourers, [water, sports]) < own - 1e-9)
                  expect(would(one, pourers, [water, sports]), `${pourers} ${water} ${sports}`).toBe(false);
        },
      ),
      { seed: 62, numRuns: tries(100) },
    );
  });

  it('stand as the floor says where the room allows it, and by the room where it does not', () => {
    const even = Array.from({ length: 60 }, () => 100);
    const wide = pourOf(caseOf(even)).byDrink.get('water')!;
    expect(wide.cups).toBeGreaterThanOrEqual(0.75 * 6000);
    const tight = pourOf(caseOf(even, { room: 6 }));
    expect(sum([...tight.byDrink.values()].map(({ tables }) => tables))).toBe(6);
    expect(tight.byDrink.get('water')!.cups).toBeLessThan(0.75 * 6000);
    expect(tight.lasts).toBe(true);
    expect(tight.wantedTables).toBeGreaterThan(6);
  });

  it('keep the plan’s own tables and pourers, and say where they do not last', () => {
    const even = Array.from({ length: 60 }, () => 100);
    const fixed = caseOf(even, { pourers: 1 });
    const pour = pourOf({ ...fixed, drinks: fixed.drinks.map((drink) => ({ ...drink, fixed: 1 })) });
    expect(pour.pourers).toBe(1);
    expect([...pour.byDrink.values()].map(({ tables }) => tables)).toEqual([1, 1]);
    expect(pour.lasts).toBe(false);
  });

  it('are poured by who is there in the time there is', () => {
    const rush = caseOf([4000, 4000], { others: 1, within: 10, pourers: 1 });
    const cups = sum([...pourOf(rush).byDrink.values()].map((poured) => poured.cups));
    // Two people, ten minutes, fifteen a minute; the curve itself gives way to nobody.
    expect(cups).toBeGreaterThanOrEqual(300);
    expect(pourOf(rush).lasts).toBe(false);
  });
});
