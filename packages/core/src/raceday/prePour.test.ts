import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fewestPourers,
  firstDry,
  floorShare,
  massCurve,
  prePourOf,
  prePourTold,
  thousands,
  type PrePourCase,
} from './prePour.ts';
import { tries } from '../testing/tries.ts';

/** Cups by eighths, so that sums are exact and the last cup counts. */
const demands = fc.array(
  fc.nat({ max: 4000 }).map((eighths) => eighths / 8),
  { minLength: 1, maxLength: 120 },
);

/** Minute by minute: those who come take their cups, then the pourers pour. True where nobody finds an empty table. */
function lasts(demand: readonly number[], pour: number, stock: number, from: number): boolean {
  let onTables = stock;
  return demand.every((cups, minute) => {
    onTables -= cups;
    const served = onTables >= 0;
    if (minute >= from) onTables += pour;
    return served;
  });
}

const usual: PrePourCase = {
  demand: [100, 200, 100],
  from: 0,
  spread: 60,
  cups: 460,
  fixed: null,
  atLeast: 1,
  cupsPerLayer: 200,
  layers: 3,
  floor: [0.75, 0.4],
  safety: 1.25,
  pour: 30,
  rate: 15,
};

describe('Mass curve', () => {
  it('is the largest excess of running demand over what is poured, by hand', () => {
    // After the demand of minutes 0, 1, 2: 10 − 0, 60 − 30, 70 − 60.
    expect(massCurve([10, 50, 10], 30)).toBe(30);
    expect(massCurve([10, 50, 10], 30, 1)).toBe(60);
    expect(massCurve([], 30)).toBe(0);
  });

  it('never runs dry in a simulation by minutes, and does with one cup less', () => {
    fc.assert(
      fc.property(
        demands,
        fc.nat({ max: 2000 }).map((eighths) => eighths / 8),
        fc.nat({ max: 10 }),
        (demand, pour, from) => {
          const stock = massCurve(demand, pour, from);
          expect(lasts(demand, pour, stock, from)).toBe(true);
          expect(firstDry(demand, pour, stock, Infinity, from)).toBeNull();
          if (stock === 0) return;
          expect(lasts(demand, pour, stock - 1, from)).toBe(false);
          expect(firstDry(demand, pour, stock - 1, Infinity, from)).not.toBeNull();
        },
      ),
      { seed: 43, numRuns: tries(1000) },
    );
  });

  it('names the fewest pourers: one fewer is not enough', () => {
    fc.assert(
      fc.property(demands, fc.integer({ min: 1, max: 40 }), fc.nat({ max: 3000 }), (demand, rate, stock) => {
        const pourers = fewestPourers(demand, rate, stock);
        const busiest = Math.ceil(Math.max(...demand) / rate);
        if (massCurve(demand, busiest * rate) > stock) expect(pourers).toBe(busiest);
        else {
          expect(massCurve(demand, pourers * rate)).toBeLessThanOrEqual(stock);
          if (pourers > 0) expect(massCurve(demand, (pourers - 1) * rate)).toBeGreaterThan(stock);
        }
      }),
      { seed: 44, numRuns: tries(300) },
    );
  });

  it('finds the minute in which tables too small to refill run dry', () => {
    expect(firstDry([0, 0, 100], 50, 20, 60)).toEqual({ minute: 2, short: 40 });
    expect(firstDry([0, 0, 100], 50, 20, 100)).toBeNull();
  });
});

describe('Floor', () => {
  it('falls from three quarters at 40 min to two fifths at 90 min', () => {
    expect([0, 40, 65, 90, 200].map((minutes) => floorShare([0.75, 0.4], minutes * 60))).toEqual([
      0.75, 0.75, 0.575, 0.4, 0.4,
    ]);
  });
});

describe('Pre-pour', () => {
  it('is the larger of mass curve × safety and floor, and the day’s cups at most', () => {
    // The curve: 300 − 30 = 270, then 400 − 60 = 340; × 1.25 = 425; the floor 0.75 × 460 = 345.
    // The floor alone lasts, 345 ÷ 1.25 = 276, with 300 − p and 400 − 2p at most that: 62 a minute, 5 × 15.
    expect(prePourOf(usual)).toEqual({
      wanted: 425,
      prePour: {
        cups: 425,
        share: 425 / 460,
        massCurve: 340,
        floor: 345,
        room: null,
        tables: 1,
        layers: 3,
        pourers: 5,
      },
    });
    expect(prePourOf({ ...usual, pour: 300 }).prePour.cups).toBe(345);
    expect(prePourOf({ ...usual, pour: 0 }).prePour.cups).toBe(460);
  });

  it('is capped by the room of the plan’s tables', () => {
    const { prePour, wanted } = prePourOf({ ...usual, fixed: 1, cupsPerLayer: 100 });
    expect(wanted).toBe(425);
    expect(prePour).toMatchObject({ cups: 300, room: 300, tables: 1, layers: 3 });
    // With 240 = 300 ÷ 1.25 cups: 300 − p ≤ 240 and 400 − 2p ≤ 240 need 80 a minute, 6 × 15.
    expect(prePour.pourers).toBe(6);
    expect(prePourOf({ ...usual, fixed: 0 }).prePour).toMatchObject({ cups: 0, room: 0, layers: 0 });
  });

  it('gets tables enough to hold it, and no layer more than it fills', () => {
    fc.assert(
      fc.property(
        demands,
        fc.nat({ max: 60 }),
        fc.integer({ min: 1, max: 12 }),
        fc.nat({ max: 7200 }),
        (demand, pour, atLeast, spread) => {
          const cups = Math.ceil(demand.reduce((sum, one) => sum + one, 0) * 1.15);
          const { prePour } = prePourOf({ ...usual, demand, pour, atLeast, spread, cups });
          const { tables, layers } = prePour;
          expect(tables).toBeGreaterThanOrEqual(atLeast);
          expect(layers).toBeLessThanOrEqual(3);
          expect(tables * layers * 200).toBeGreaterThanOrEqual(prePour.cups);
          expect(tables * Math.max(0, layers - 1) * 200 < prePour.cups || prePour.cups === 0).toBe(true);
          expect(prePour.share).toBeLessThanOrEqual(1);
        },
      ),
      { seed: 45, numRuns: tries(300) },
    );
  });

  it('is told as tables and layers', () => {
    expect(prePourTold({ tables: 3, layers: 3 }, 200)).toBe('3 tables × 3 layers = 1,800 cups');
    expect(prePourTold({ tables: 1, layers: 1 }, 200)).toBe('1 table × 1 layer = 200 cups');
    expect(thousands(1234567)).toBe('1,234,567');
  });
});
