import { describe, expect, it } from 'vitest';
import { OUT_AND_BACK } from '../testing/analyses.ts';
import type { LonLat } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { Item, Layout, StationLayout } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, turtle } from '../testing/courses.ts';
import { type Recorded, eastward, placedDocument } from '../testing/placed.ts';
import { layoutOf } from '../testing/plans.ts';
import { builtLayout } from './built.ts';
import { holdPoints } from './placedHeld.ts';

const STRAIGHT = turtle(ORIGIN, [[90, 6000]], 100);
const S1: Partial<PlanStation> = { at: eastward(1500), side: 'right' };

const laid = (keys: Partial<PlanStation> = S1, course = STRAIGHT): Layout => layoutOf([course], [keys]);
const built = (layout: Layout, ...points: readonly Recorded[]): StationLayout =>
  builtLayout(holdPoints(layout, placedDocument(points))).stations[0]!;
const point = (name: string, measure: number, right?: number, hdop: number = 0.2): Recorded => ({
  name,
  at: eastward(measure, right),
  hdop,
});
const item = (station: StationLayout, kind: Item['kind'], direction: number = 0): Item =>
  itemOf(station.directions[direction]!, kind)!;
const stretch = (station: StationLayout, kind: Item['kind']): number[] =>
  [item(station, kind).from, item(station, kind).to].map((metres) => Math.round(metres * 10) / 10);
const away = (a: LonLat | null, b: LonLat): number => inverseLength(a![0], a![1], b[0], b[1]);

// 100 yd ahead, tables of 6 ft with 10 ft between, trash from 50 to 100 yd: the house's rules, common practice, no source.
const LAST = 2 * 1.8288 + 3.048;

describe('a station as built', () => {
  it('stands with all that was not recorded where its first table was, at that offset and side', () => {
    const station = built(laid(), point('s1 sports drink', 1540, -7));
    expect(station.directions[0]).toMatchObject({ side: 'left', measure: expect.closeTo(1540, 2) });
    expect(item(station, 'sign').from).toBeCloseTo(1540 - 91.44, 2);
    expect(item(station, 'sportsDrink').offset).toBeCloseTo(7, 2);
    expect(away(item(station, 'water').at[0], eastward(1540 + 1.8288 + 3.048, -7))).toBeLessThan(0.01);
    expect(stretch(station, 'trash')).toEqual(
      [1540 + LAST + 45.72, 1540 + LAST + 91.44].map((m) => Math.round(m * 10) / 10),
    );
  });

  it('stands as planned where nothing of it was recorded, and keeps its side where the error leaves that open', () => {
    const layout = laid();
    expect(built(layout)).toBe(layout.stations[0]);
    const close = built(layout, point('s1 sports drink', 1500, -0.5, 1));
    expect(close.directions[0]!.side).toBe('right');
  });

  it('lies as far from another table as by the plan, from either end of it', () => {
    const planned = 1500 + 1.8288 + 3.048;
    expect(built(laid(), point('s1 water', planned + 30, 6)).directions[0]!.measure).toBeCloseTo(1530, 2);
    expect(built(laid(), point('s1 water end', planned + 1.8288 + 30, 6)).directions[0]!.measure).toBeCloseTo(1530, 2);
  });

  it('has its sign where it was recorded, on the way back too', () => {
    const course = courseThrough(OUT_AND_BACK);
    const both: Partial<PlanStation> = { ...S1, passes: 'all' };
    const layout = laid(both, course);
    expect(layout.stations[0]!.directions).toHaveLength(2);
    // The way back has its tables on its left; its sign stands 91.44 m east of them.
    const back = point('s1 sign', 1500 + LAST + 80, 12);
    const out = point('s1 sign', 1400, 9);
    const station = built(layout, point('s1 sports drink', 1500), out, back);
    expect(item(station, 'sign').at[0]).toEqual(out.at);
    expect(item(station, 'sign', 1).at[0]).toEqual(back.at);
    expect(item(station, 'sign', 1)).toMatchObject({ byHand: true, side: 'left', offset: expect.closeTo(12, 0) });
  });

  it('has its trash between two recorded ends, and one point alone moves it only from outside', () => {
    const at = (...points: readonly Recorded[]): number[] => stretch(built(laid(), ...points), 'trash');
    const [from_, to] = [1500 + LAST + 45.72, 1500 + LAST + 91.44];
    const planned = [from_, to].map((m) => Math.round(m * 10) / 10);
    expect(at(point('s1 trash from', 1560), point('s1 trash to', 1580))).toEqual([1560, 1580]);
    expect(at(point('s1 trash', 1575))).toEqual(planned);
    expect(at(point('s1 trash', 1620))).toEqual([Math.round((1620 - 45.72) * 10) / 10, 1620]);
    expect(at(point('s1 trash', 1540))).toEqual([1540, Math.round((1540 + 45.72) * 10) / 10]);
    expect(at(point('s1 trash to', 1590))).toEqual([Math.round((1590 - 45.72) * 10) / 10, 1590]);
  });

  it('has a single table elsewhere only where that is farther than the errors of both points', () => {
    const water = 1500 + 1.8288 + 3.048;
    const at = (by: number): Item =>
      item(built(laid(), point('s1 sports drink', 1500, 5, 0.6), point('s1 water', water + by, 5, 0.6)), 'water');
    expect(at(5.9).byHand).toBeUndefined();
    expect(at(5.9).from).toBeCloseTo(water, 2);
    expect(at(6.1)).toMatchObject({ byHand: true, from: expect.closeTo(water + 6.1, 2) });
  });

  it('keeps the way that leads, and passes that the plan names, where the moved pin has more of them', () => {
    // Out 3 km east and back 40 m south of it: from 2,900 m on the pin is within reach of both.
    const course = turtle(ORIGIN, [
      [90, 3000],
      [180, 40],
      [270, 3000],
    ]);
    const pin = (east: number): LonLat => from(from(ORIGIN, 90, east), 180, 45);
    const back: Partial<PlanStation> = {
      at: pin(2000),
      lead: { race: 'c', pass: 1 },
      passes: [{ race: 'c', pass: 1 }],
    };
    const layout = laid(back, course);
    const station = built(layout, { name: 's1 sports drink', at: pin(1900), hdop: 0.2 });
    const [lead] = station.directions;
    expect(layout.stations[0]!.directions[0]!.measure).toBeCloseTo(4040, 0);
    expect(lead!.measure).toBeCloseTo(4140, 0);
    expect(lead!.passes.map((k) => station.passes[k]!.served)).toEqual([true]);
  });
});
