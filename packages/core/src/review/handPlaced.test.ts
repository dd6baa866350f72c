import { describe, expect, it } from 'vitest';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { itemAcross } from './itemAcross.ts';
import { itemOffCourse } from './itemOffCourse.ts';
import { boxDistance } from './boxes.ts';
import { dropSide } from './dropSide.ts';
import { sideContradicted } from './sideContradicted.ts';
import { signMissed } from './signMissed.ts';
import { signDistance } from './signDistance.ts';
import { tablesFarOff } from './tablesFarOff.ts';
import { tablesMismatch } from './tablesMismatch.ts';

type Keys = Parameters<typeof layoutOf>[1][number];
const road = turtle(ORIGIN, [[90, 3000]]);
const beside = (along: number, right: number): readonly [number, number] =>
  from(from(ORIGIN, 90, along), right >= 0 ? 180 : 0, Math.abs(right));
const found = (check: Check, keys: Keys): ReturnType<Check['find']> =>
  check.find(layoutOf([road], [{ at: beside(1500, 6), ...keys }]));
const signAt = (along: number, right: number): Keys => ({ items: { sign: { at: beside(along, right) } } });

describe('items placed by hand', () => {
  it('are found on the other side of the road than the tables, and not on the same', () => {
    expect(found(itemAcross, signAt(1410, -6))).toEqual([
      expect.objectContaining({
        code: 'item-across',
        severity: 'error',
        measured: expect.closeTo(6, 1),
        where: expect.objectContaining({ path: '/stations/0/items/sign', item: 'sign' }),
      }),
    ]);
    expect(found(itemAcross, signAt(1410, 6))).toEqual([]);
  });

  it('are found farther from the course than the snap radius, and not just inside it', () => {
    expect(found(itemOffCourse, signAt(1410, 61))).toEqual([
      expect.objectContaining({
        code: 'item-off-course',
        severity: 'error',
        measured: expect.closeTo(61, 1),
        limit: 60,
      }),
    ]);
    expect(found(itemOffCourse, signAt(1410, 59))).toEqual([]);
    expect(found(itemOffCourse, {})).toEqual([]);
  });

  it('are told once where they strayed: distance and side say nothing there', () => {
    const astray = { items: { sign: { at: beside(1410, -61) }, trash: { at: beside(1560, -70) } } };
    expect(found(itemOffCourse, astray)).toEqual([
      expect.objectContaining({
        where: expect.objectContaining({ item: 'trash' }),
        params: expect.objectContaining({ items: ['sign', 'trash'] }),
        message: expect.stringContaining('The sign and the trash are up to 70 m from their course'),
      }),
    ]);
    for (const check of [itemAcross, signDistance, signMissed, boxDistance]) expect(found(check, astray)).toEqual([]);
  });

  it('are not told across where the pin itself is across from the declared side: that is the cause', () => {
    const wrong = { ...signAt(1410, 6), side: 'left' } as const;
    expect(found(sideContradicted, wrong)).toHaveLength(1);
    expect(found(itemAcross, wrong)).toEqual([]);
    expect(found(dropSide, { ...wrong, points: [{ kind: 'drop', at: beside(1490, 9) }] })).toEqual([]);
    expect(found(dropSide, { side: 'right', points: [{ kind: 'drop', at: beside(1490, -9) }] })).toHaveLength(1);
  });

  it('are told as behind the tables where the sign stands past them', () => {
    expect(found(signDistance, signAt(1600, 6))[0]!.message).toContain('behind the first table');
  });

  it('are told apart from a distance that the station itself asks for', () => {
    expect(found(signDistance, { practice: { signAhead: 109.728 } })[0]!.message).toContain(
      '110 m before the first table (the station’s own distance)',
    );
  });
});

describe('tables', () => {
  it('are found more than 15 m beside the course line, and not just inside, nor where the plan gives a width', () => {
    expect(found(tablesFarOff, { at: beside(1500, 15.5) })).toEqual([
      expect.objectContaining({ code: 'tables-far-off', measured: expect.closeTo(15.5, 1), limit: 15, unit: 'm' }),
    ]);
    expect(found(tablesFarOff, { at: beside(1500, 14.5) })).toEqual([]);
    expect(found(tablesFarOff, { at: beside(1500, 40), width: 8 })).toEqual([]);
    expect(found(tablesFarOff, { at: beside(1500, 4), width: 29 })).toEqual([]);
    expect(found(tablesFarOff, { at: beside(1500, 4), width: 70, side: 'right' })).toEqual([
      expect.objectContaining({
        where: expect.objectContaining({ path: '/stations/0/width' }),
        message:
          'By the road’s width, 70 m, the tables would stand 36 m from the course line. It should be at most 15 m. Correct the width, or leave it out and put the pin at the kerb.',
      }),
    ]);
  });

  it('are missed for what is served, and found for what is not', () => {
    const none = found(tablesMismatch, { serves: ['gel', 'water'], tables: { gel: 2, water: 0 } });
    expect(none).toEqual([
      expect.objectContaining({
        code: 'tables-mismatch',
        measured: 0,
        where: expect.objectContaining({ path: '/stations/0/tables/water' }),
      }),
    ]);
    expect(found(tablesMismatch, { tables: { gel: 5 } })).toEqual([
      expect.objectContaining({ measured: 5, where: expect.objectContaining({ item: 'gel' }) }),
    ]);
    expect(found(tablesMismatch, { serves: ['water'], tables: { water: 3, gel: 0 } })).toEqual([]);
  });

  it('that are none are not on the sign', () => {
    const [station] = layoutOf(
      [road],
      [{ at: beside(1500, 6), serves: ['gel', 'water'], tables: { gel: 2, water: 0 } }],
    ).stations;
    expect(station!.directions[0]!.items.find(({ kind }) => kind === 'sign')!.wording).toBe('Gel ahead');
  });
});

describe('a place along the course', () => {
  it('leads by the pass at its measure, also on the way home', () => {
    const out = turtle(ORIGIN, [
      [90, 2000],
      [270, 2000],
    ]);
    const [station] = layoutOf([out], [{ on: { course: 'c', measure: 3000, side: 'right', offset: 5 } }]).stations;
    const [lead] = station!.directions;
    expect(lead!.measure).toBeCloseTo(3000, 1);
    expect(lead!.side).toBe('right');
    expect(station!.passes.map(({ served }) => served)).toEqual([false, true]);
  });
});

describe('what is said of items placed by hand', () => {
  it('is where they stand, on which side, and what was expected', () => {
    expect(found(itemAcross, signAt(1410, -6))[0]!.message).toContain(
      'The sign is 6 m to the left of the course (placed by hand). It should be on the right, as the tables are.',
    );
    expect(found(itemAcross, signAt(1410, -6))[0]!.where.at).toEqual(beside(1410, -6));
    expect(found(itemOffCourse, signAt(1410, 61))[0]!.message).toContain(
      'The sign is 61 m from its course (placed by hand). It should be at most 60 m.',
    );
  });

  it('is nothing where either side is unclear, and nothing of items that the practice placed', () => {
    expect(found(itemAcross, signAt(1410, 0.5))).toEqual([]);
    expect(found(itemAcross, { ...signAt(1410, -6), at: beside(1500, 0.5) })).toEqual([]);
    expect(found(itemAcross, {})).toEqual([]);
  });

  it('is asked of tables in the plan by kind, also of gel', () => {
    expect(found(tablesMismatch, { serves: ['water'], tables: { sportsDrink: 2, water: 1 } })[0]!.message).toContain(
      'Sports drink has 2 tables but is not served, so none is laid out.',
    );
    expect(found(tablesMismatch, { serves: ['gel', 'sportsDrink'], tables: { sportsDrink: 0 } })[0]!.message).toContain(
      'Sports drink is served but has no table, so it is not laid out',
    );
    expect(found(tablesMismatch, { serves: ['gel', 'sportsDrink', 'water'] })).toEqual([]);
  });

  it('tables just 15 m beside the line stand by the road, on either side', () => {
    expect(found(tablesFarOff, { at: beside(1500, -15.5) })[0]!.message).toContain(
      'would stand 15.5 m from the course line, where the pin is. It should be at most 15 m.',
    );
    expect(found(tablesFarOff, { at: beside(1500, -14.5) })).toEqual([]);
    expect(found(tablesFarOff, { at: beside(1500, 40), serves: [] })).toEqual([]);
    expect(found(tablesFarOff, { at: beside(1500, 400) })).toEqual([]);
  });
});
