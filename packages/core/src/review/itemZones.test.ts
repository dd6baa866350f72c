import { describe, expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanStation, PlanZone } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { itemInZone } from './itemInZone.ts';
import { itemOutsideAllowed } from './itemOutsideAllowed.ts';

/** From the pin, 1500 m along an eastward road, 5 m to its right. The sign stands 91.44 m before, trash 52.4 to 98.1 m after. */
const START: LonLat = [179.99, -33.2];
const pin = (start: LonLat): LonLat => from(from(start, 90, 1500), 180, 5);

/** A rectangle from `west` to `east` of the pin and so many metres north and south of it; open. */
const rectangle = (start: LonLat, west: number, east: number, half: number = 30): LonLat[] => {
  const corner = (along: number, north: number): LonLat =>
    from(from(pin(start), 90, along), north < 0 ? 180 : 0, Math.abs(north));
  return [corner(west, -half), corner(east, -half), corner(east, half), corner(west, half)];
};

const laid = (
  rule: PlanZone['rule'],
  polygons: readonly (readonly LonLat[])[],
  keys: Partial<PlanStation> = {},
  start: LonLat = ORIGIN,
): Layout => {
  const layout = layoutOf([turtle(start, [[90, 3000]])], [{ at: pin(start), side: 'right', ...keys }]);
  return {
    ...layout,
    plan: { ...layout.plan, zones: polygons.map((polygon, k) => ({ name: `zone ${k + 1}`, rule, polygon })) },
  };
};
const told = (check: Check, layout: Layout): string[] =>
  check
    .find(layout)
    .map((finding) => `${finding.severity} ${finding.where.item}${finding.cannotTell === true ? ' cannot tell' : ''}`);

/** Where 95 % confidence is reached for 5 m and 3 m of 95 % radius: 1.6449·√(5² + 3²)/2.4477 m (normal quantile and Rayleigh's 95 %). */
const SURE = (1.6448536 * Math.hypot(5, 3)) / 2.4477468;

describe('item-in-zone', () => {
  /** The sign so many metres inside a zone's eastern edge. */
  const sign = (inside: number, start: LonLat = ORIGIN): readonly Finding[] =>
    itemInZone.find(laid('keep-clear', [rectangle(start, -150, -91.44 + inside)], {}, start));

  it('is an error with the depth where a sign stands surely in a keep-clear zone', () => {
    expect(sign(5)).toEqual([
      expect.objectContaining({
        code: 'item-in-zone',
        severity: 'error',
        measured: expect.closeTo(5, 2),
        limit: 0,
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0', station: 's1', item: 'sign' }),
      }),
    ]);
    expect(sign(5)[0]!.cannotTell).toBeUndefined();
  });

  it('cannot tell nearer to the edge than the position error, and is silent beyond it', () => {
    expect(sign(SURE - 0.01)).toEqual([expect.objectContaining({ severity: 'error', cannotTell: true })]);
    expect(sign(-SURE + 0.01)).toEqual([
      expect.objectContaining({ severity: 'note', cannotTell: true, measured: expect.closeTo(-SURE + 0.01, 2) }),
    ]);
    expect(sign(-SURE - 0.01)).toEqual([]);
  });

  it('is the same across the antimeridian', () => {
    expect(sign(5, START)).toEqual([expect.objectContaining({ measured: expect.closeTo(5, 2) })]);
    expect(sign(-SURE - 0.01, START)).toEqual([]);
  });

  it('finds tables that cross a zone, and a ring that the plan closes itself', () => {
    const ring = rectangle(ORIGIN, -10, 1, 20);
    expect(
      told(itemInZone, laid('keep-clear', [[...ring, ring[0]!]], { practice: { pinR95: 0, courseR95: 0 } })),
    ).toEqual(['error sportsDrink']);
  });

  it('is an error where a box stands in it, a warning where only the stretch between two boxes does', () => {
    // Two boxes stand 52.4 m and 98.1 m after the pin.
    const exact = { boxes: 2, practice: { pinR95: 0, courseR95: 0 } };
    expect(told(itemInZone, laid('keep-clear', [rectangle(ORIGIN, 50, 60)], exact))).toEqual(['error trash']);
    expect(told(itemInZone, laid('keep-clear', [rectangle(ORIGIN, 70, 80)], exact))).toEqual(['warning trash']);
    // Narrower than the step at which places are looked at.
    expect(told(itemInZone, laid('keep-clear', [rectangle(ORIGIN, 70.1, 70.2)], exact))).toEqual(['warning trash']);
  });

  it('looks at the sign of each served direction, at their shared tables once', () => {
    const layout = layoutOf(
      [
        turtle(ORIGIN, [
          [90, 2000],
          [0, 30],
          [270, 2000],
        ]),
      ],
      [{ at: pin(ORIGIN), side: 'right', passes: 'all' }],
    );
    const zones: PlanZone[] = [{ name: 'all', rule: 'keep-clear', polygon: rectangle(ORIGIN, -400, 400, 80) }];
    const all = itemInZone.find({ ...layout, plan: { ...layout.plan, zones } });
    expect(all.map(({ params }) => params)).toEqual([
      expect.objectContaining({ items: ['sign', 'sportsDrink', 'water', 'trash'] }),
    ]);
    expect(all[0]!.message).toContain(
      'The sign, the sports drink tables, the water tables and the trash stand in the keep-clear zone “all”, up to 80 m from its edge.',
    );
  });

  it('cannot run without a keep-clear zone that encloses anything', () => {
    expect(itemInZone.missing!(laid('allowed', [rectangle(ORIGIN, 0, 10)]))).toBe('no-keep-clear-zone');
    const [a, b] = rectangle(ORIGIN, 0, 10);
    expect(itemInZone.missing!(laid('keep-clear', [[a!, b!, a!]]))).toBe('no-keep-clear-zone');
    expect(itemInZone.missing!(laid('keep-clear', [rectangle(ORIGIN, 0, 10)]))).toBeNull();
  });
});

describe('item-outside-allowed', () => {
  const exact = { practice: { pinR95: 0, courseR95: 0 } };

  it('is an error with how far an item reaches out, and silent just inside', () => {
    expect(itemOutsideAllowed.find(laid('allowed', [rectangle(ORIGIN, -91.43 + 5, 200)]))).toEqual([
      expect.objectContaining({
        code: 'item-outside-allowed',
        severity: 'error',
        measured: expect.closeTo(5.01, 2),
        limit: 0,
        unit: 'm',
        where: expect.objectContaining({ station: 's1', item: 'sign' }),
      }),
    ]);
    expect(told(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -91.43, 200)], exact))).toEqual(['error sign']);
    expect(told(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -91.45, 200)], exact))).toEqual([]);
  });

  it('cannot tell where an item reaches out by less than the position error', () => {
    expect(told(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -91.44 + SURE - 0.01, 200)]))).toEqual([
      'error sign cannot tell',
    ]);
    expect(told(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -91.44 + SURE + 0.01, 200)]))).toEqual([
      'error sign',
    ]);
  });

  it('takes zones together: an item may stand across two', () => {
    expect(
      told(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -100, 70), rectangle(ORIGIN, 69, 200)], exact)),
    ).toEqual([]);
    expect(
      told(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -100, 70), rectangle(ORIGIN, 80, 200)], exact)),
    ).toEqual(['error trash']);
  });

  it('cannot run without an allowed zone', () => {
    expect(itemOutsideAllowed.missing!(laid('keep-clear', [rectangle(ORIGIN, 0, 10)]))).toBe('no-allowed-zone');
    expect(itemOutsideAllowed.missing!(laid('allowed', [rectangle(ORIGIN, 0, 10)]))).toBeNull();
  });
});

describe('what is said of zones', () => {
  const exact = { practice: { pinR95: 0, courseR95: 0 } };
  const message = (check: Check, layout: Layout): string => check.find(layout)[0]!.message;
  const unnamed = (layout: Layout): Layout => ({
    ...layout,
    plan: { ...layout.plan, zones: layout.plan.zones.map((zone) => ({ ...zone, name: '' })) },
  });

  it('is how deep an item reaches in or how near it comes, and the zone’s name', () => {
    const inside = laid('keep-clear', [rectangle(ORIGIN, -150, -86.44)]);
    expect(message(itemInZone, inside)).toContain(
      'The sign stands in the keep-clear zone “zone 1”, up to 5 m from its edge. Nothing should stand in it. Move',
    );
    expect(message(itemInZone, unnamed(inside))).toContain('stands in a keep-clear zone, up to 5 m from its edge.');
    expect(message(itemInZone, laid('keep-clear', [rectangle(ORIGIN, -150, -92.44)]))).toContain(
      'is 1 m outside the keep-clear zone “zone 1”. Nothing should stand in it, but the position error is too large to tell.',
    );
    expect(message(itemInZone, laid('keep-clear', [rectangle(ORIGIN, 70, 80)], { boxes: 2, ...exact }))).toContain(
      '4.7 m into the keep-clear zone “zone 1”, between two boxes: cups fall there.',
    );
    expect(message(itemInZone, laid('keep-clear', [rectangle(ORIGIN, 50, 60)], { boxes: 2, ...exact }))).not.toContain(
      'between two boxes',
    );
    expect(message(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -86.44, 200)]))).toContain(
      'The sign reaches 5 m outside every allowed zone. All should stand inside one. Move',
    );
    expect(message(itemOutsideAllowed, laid('allowed', [rectangle(ORIGIN, -90.44, 200)]))).toContain(
      'All should stand inside one, but the position error is too large to tell. Check on the ground.',
    );
  });

  it('points to the item’s own place in the plan where a hand has put it there', () => {
    const items = { sign: { at: from(from(ORIGIN, 90, 1410), 180, 5) } };
    expect(itemInZone.find(laid('keep-clear', [rectangle(ORIGIN, -150, -80)], { items }))[0]!.where.path).toBe(
      '/stations/0/items/sign',
    );
    expect(itemInZone.find(laid('keep-clear', [rectangle(ORIGIN, -150, -80)]))[0]!.where.path).toBe('/stations/0');
    expect(itemOutsideAllowed.find(laid('allowed', [rectangle(ORIGIN, -80, 200)], { items }))[0]!.where.path).toBe(
      '/stations/0/items/sign',
    );
    expect(itemOutsideAllowed.find(laid('allowed', [rectangle(ORIGIN, -80, 200)]))[0]!.where.path).toBe('/stations/0');
  });

  it('is told for each zone that items meet, and once for all that stand outside', () => {
    expect(
      itemInZone
        .find(
          laid(
            'keep-clear',
            [rectangle(ORIGIN, -150, -80), rectangle(ORIGIN, -100, -70), rectangle(ORIGIN, 300, 400)],
            exact,
          ),
        )
        .map(({ message: said }) => /zone \d/u.exec(said)![0]),
    ).toEqual(['zone 1', 'zone 2']);
    const outside = itemOutsideAllowed.find(laid('allowed', [rectangle(ORIGIN, 300, 400)], exact));
    expect(outside.map(({ where, params }) => [where.item, params])).toEqual([
      ['sign', expect.objectContaining({ items: ['sign', 'sportsDrink', 'water', 'trash'] })],
    ]);
    // An item right on the edge is inside.
    expect(told(itemInZone, laid('allowed', [rectangle(ORIGIN, -150, -80)], exact))).toEqual([]);
  });

  it('asks nothing of an item without a place', () => {
    expect(
      told(
        itemInZone,
        laid('keep-clear', [rectangle(ORIGIN, -1600, 0)], { at: from(from(ORIGIN, 90, 50), 180, 5), ...exact }),
      ),
    ).not.toContain('error sign');
  });
});
