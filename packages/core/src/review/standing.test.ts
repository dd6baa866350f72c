import { describe, expect, it } from 'vitest';
import { inverse } from '../geodesy/karney.ts';
import type { Layout } from '../layout/layout.ts';
import { DEFAULT_PRACTICE } from '../plan/defaults.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { atStation } from './check.ts';
import { courseOf, itemsStanding, linePoints, tableEnds } from './standing.ts';
import { isSure, linesTell, runsAgainst } from '../station/sides.ts';

const road = turtle(ORIGIN, [[90, 3000]], 100);
const laid = (keys: Partial<PlanStation> = {}): Layout =>
  layoutOf([road], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, ...keys }]);

describe('the line on which an item stands', () => {
  const along = (kind: string, step: number, layout: Layout = laid()): number[] => {
    const standing = itemsStanding(layout.stations[0]!).find(({ item }) => item.kind === kind)!;
    return linePoints(standing, layout, step).map((at) => inverse(...from(ORIGIN, 180, 5), ...at).length);
  };

  it('has both ends and places between, at most a step apart, upstream first', () => {
    // The trash drop: from 1,552.4256 m to 1,598.1456 m, 45.72 m.
    expect(along('trash', 50)).toEqual([expect.closeTo(1552.4256, 2), expect.closeTo(1598.1456, 2)]);
    expect(along('trash', 20)).toEqual(
      [0, 15.24, 30.48, 45.72].map((more) => expect.closeTo(1552.4256 + more, 2) as number),
    );
    expect(along('trash', 1)).toHaveLength(47);
    expect(along('trash', 1e-6)).toHaveLength(1001);
  });

  it('is one place for a sign, and leaves out what is not on the course', () => {
    expect(along('sign', 1)).toEqual([expect.closeTo(1408.56, 2)]);
    const late = laid({ on: { course: 'c', measure: 2930, side: 'right', offset: 5 } });
    expect(along('trash', 20, late)).toEqual(
      [0, 15.24].map((more) => expect.closeTo(2930 + 52.4256 + more, 2) as number),
    );
    expect(along('sign', 1, laid({ on: { course: 'c', measure: 50, side: 'right', offset: 5 } }))).toEqual([]);
  });

  it('lies at the item’s offset all along', () => {
    const layout = laid();
    const standing = itemsStanding(layout.stations[0]!).find(({ item }) => item.kind === 'trash')!;
    for (const [k, at] of linePoints(standing, layout, 10).entries())
      expect(inverse(...from(ORIGIN, 90, 1552.4256 + (45.72 * k) / 5), ...at).length).toBeCloseTo(5, 3);
  });
});

describe('what stands at a station', () => {
  it('is the lead’s all, and of other directions the sign and the trash drop', () => {
    const both = layoutOf(
      [
        turtle(
          ORIGIN,
          [
            [90, 3000],
            [270, 3000],
          ],
          100,
        ),
      ],
      [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, passes: 'all' }],
    );
    expect(
      itemsStanding(both.stations[0]!).map(
        ({ item, direction }) => `${direction.lead ? 'lead' : 'other'} ${item.kind}`,
      ),
    ).toEqual(['lead sign', 'lead sportsDrink', 'lead water', 'lead trash', 'other sign', 'other trash']);
    expect(courseOf(both, 'c')).toBe(both.courses[0]);
  });

  it('has tables from the first to the last, or none', () => {
    expect(tableEnds(laid({ serves: ['gel', 'water'] }).stations[0]!.directions[0]!)).toEqual([
      expect.closeTo(1490.5512, 3),
      expect.closeTo(1501.8288, 3),
    ]);
    expect(tableEnds(laid({ serves: [] }).stations[0]!.directions[0]!)).toBeNull();
  });
});

describe('what positions tell', () => {
  it('is sure from the confidence on that the practice wants, whichever way it lies, and always where positions are exact', () => {
    // σ = √(5² + 3²) ÷ 2.4477; 95 % at 1.64485 σ (Abramowitz and Stegun, table 26.1).
    const sigma = Math.hypot(5, 3) / 2.4477;
    expect([1.6449, -1.6449, 1.6448, -1.6448, 0].map((sigmas) => isSure(sigmas * sigma, DEFAULT_PRACTICE))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
    const exact = { ...DEFAULT_PRACTICE, pinR95: 0, courseR95: 0 };
    expect([isSure(0, exact), isSure(1e-9, exact)]).toEqual([true, true]);
  });

  it('is as sure between two lines as their recordings are, and always between lines drawn on purpose', () => {
    const drawn = { ...road, drawn: 'centre' as const };
    const one = (1.64485 * 3) / 2.4477;
    const two = one * Math.SQRT2;
    expect([
      linesTell(0.01, drawn, drawn, DEFAULT_PRACTICE),
      linesTell(one + 0.01, road, drawn, DEFAULT_PRACTICE),
      linesTell(one - 0.01, road, drawn, DEFAULT_PRACTICE),
      linesTell(one + 0.01, drawn, road, DEFAULT_PRACTICE),
      linesTell(one - 0.01, drawn, road, DEFAULT_PRACTICE),
    ]).toEqual([true, true, false, true, false]);
    expect([
      linesTell(two + 0.01, road, road, DEFAULT_PRACTICE),
      linesTell(two - 0.01, road, road, DEFAULT_PRACTICE),
      linesTell(-two - 0.01, road, road, DEFAULT_PRACTICE),
    ]).toEqual([true, false, true]);
  });

  it('runs against another way where the two differ by more than 120°', () => {
    expect([
      runsAgainst(10, 131),
      runsAgainst(10, 130),
      runsAgainst(350, 111),
      runsAgainst(350, 109),
      runsAgainst(10, 190),
    ]).toEqual([true, false, true, false, true]);
  });
});

describe('where findings', () => {
  it('point to the station in the plan, or to a key of it', () => {
    const [station] = laid().stations;
    expect(atStation(station!)).toEqual({ path: '/stations/0', station: 's1', at: station!.at });
    expect(atStation(station!, 'side').path).toBe('/stations/0/side');
  });
});
