import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstDry, floorShare, largestStock, massCurve, thousands } from './prePour.ts';
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

  it('needs room for the largest run of demand, whenever it comes, and not less', () => {
    fc.assert(
      fc.property(
        demands,
        fc.nat({ max: 800 }).map((eighths) => eighths / 8),
        fc.nat({ max: 10 }),
        (demand, pour, from) => {
          const room = largestStock(demand, pour, from);
          expect(room).toBeGreaterThanOrEqual(massCurve(demand, pour, from));
          // Full at the start and refilled no farther than the room: it lasts, and with one cup less of room it does not.
          expect(firstDry(demand, pour, room, room, from)).toBeNull();
          if (room > 0) expect(firstDry(demand, pour, room - 1, room - 1, from)).not.toBeNull();
        },
      ),
      { seed: 44, numRuns: tries(1000) },
    );
    // Twenty a minute refill ten: a quiet hour does not fill more than the tables hold.
    expect(largestStock([0, 0, 0, 20, 20, 20], 10)).toBe(40);
    expect(massCurve([0, 0, 0, 20, 20, 20], 10)).toBe(10);
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

describe('Numbers', () => {
  it('have a comma between thousands', () => {
    expect([12, 1234567].map(thousands)).toEqual(['12', '1,234,567']);
  });
});
