import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { clearWidth, respondersWidth } from './clearWidth.ts';

const course = turtle(ORIGIN, [[90, 3000]]);
const laid = (keys: Partial<PlanStation>): Layout =>
  layoutOf([course], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, ...keys }]);
/** 30 in of table and 1 m of crew, less the setback of 0.5 m. */
const TAKEN = 30 * 0.0254 + 1 - 0.5;

describe('clear-width', () => {
  it('is an error just under the practice’s 3 m, with what stays clear', () => {
    expect(clearWidth.find(laid({ width: 3 + TAKEN - 0.01 }))).toEqual([
      expect.objectContaining({
        code: 'clear-width',
        severity: 'error',
        measured: expect.closeTo(2.99, 9),
        limit: 3,
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0/width', station: 's1' }),
      }),
    ]);
    expect(clearWidth.find(laid({ width: 3 + TAKEN }))).toEqual([]);
  });

  it('leaves the whole road where tables and crew stand behind its edge', () => {
    expect(clearWidth.find(laid({ width: 3, practice: { setback: 1.762 } }))).toEqual([]);
    expect(clearWidth.find(laid({ width: 3, practice: { setback: 5 } }))).toEqual([]);
    expect(clearWidth.find(laid({ width: 3, practice: { setback: 1.75 } }))).toEqual([
      expect.objectContaining({ measured: expect.closeTo(2.988, 9) }),
    ]);
  });

  it('holds a station to its own limit', () => {
    expect(clearWidth.find(laid({ width: 3.5, practice: { clearWidth: 2.2 } }))).toEqual([]);
    expect(clearWidth.find(laid({ width: 3.5, practice: { clearWidth: 2.3 } }))).toEqual([
      expect.objectContaining({ limit: 2.3 }),
    ]);
  });

  it('cannot run where no station gives a width, or serves nothing there', () => {
    expect(clearWidth.missing!(laid({}))).toBe('no-width');
    expect(clearWidth.missing!(laid({ width: 2, serves: [] }))).toBe('no-width');
    expect(clearWidth.missing!(laid({ width: 2 }))).toBeNull();
  });
});

describe('responders-width', () => {
  const points: PlanStation['points'] = [{ kind: 'medical', at: ORIGIN }];

  it('is a note under 20 ft beside a medical point, which the fire marshal decides', () => {
    // 20 ft = 6.096 m, International Fire Code 503.2.1 (from memory).
    expect(respondersWidth.find(laid({ width: 6.096 + TAKEN - 0.01, points }))).toEqual([
      expect.objectContaining({
        code: 'responders-width',
        severity: 'note',
        measured: expect.closeTo(6.086, 9),
        limit: expect.closeTo(6.096, 9),
        unit: 'm',
        message: expect.stringContaining('fire marshal'),
      }),
    ]);
    expect(respondersWidth.find(laid({ width: 6.096 + TAKEN, points }))).toEqual([]);
  });

  it('is one note that lists all such stations, of the narrowest', () => {
    const at = (along: number): LonLat => from(from(ORIGIN, 90, along), 180, 6);
    const keys = (id: string, along: number, width: number): Partial<PlanStation> => ({
      id,
      name: id,
      at: at(along),
      width,
      points,
    });
    const all = layoutOf([course], [keys('s1', 500, 7), keys('s2', 1200, 5), keys('s3', 1900, 12)]);
    expect(respondersWidth.find(all)).toEqual([
      expect.objectContaining({
        where: { path: '/stations' },
        measured: expect.closeTo(5 - TAKEN, 9),
        params: expect.objectContaining({ station: 's2', stations: ['s1', 's2'] }),
        message:
          'As little as 3.7 m of road stays clear at s1 and s2, which have first-aid or access points. A fire apparatus road needs 6.1 m clear. Ask the fire marshal and the medical lead how vehicles get through, or move the tables back.',
      }),
    ]);
  });

  it('asks nothing of a station without a medical or access point', () => {
    expect(respondersWidth.find(laid({ width: 4, points: [{ kind: 'toilets', at: ORIGIN }] }))).toEqual([]);
    expect(respondersWidth.find(laid({ width: 4, points: [{ kind: 'access', at: ORIGIN }] }))).toHaveLength(1);
  });

  it('cannot run without such a point, or without a width where one lies', () => {
    expect(respondersWidth.missing!(laid({ width: 4 }))).toBe('no-medical-or-access');
    expect(respondersWidth.missing!(laid({ points }))).toBe('no-responders-width');
    expect(respondersWidth.missing!(laid({ points, width: 4 }))).toBeNull();
  });
});

it('both say how much of the road stays clear, of how much, and what takes the rest', () => {
  const points: PlanStation['points'] = [{ kind: 'medical', at: ORIGIN }];
  const layout = laid({ width: 4, points });
  expect(clearWidth.find(layout)[0]!.message).toContain(
    'Only 2.7 m of the 4 m road stays clear: tables and hand-out crew (1 m assumed) take 1.3 m. At least 3 m should stay clear. Move the tables back 0.3 m, or',
  );
  expect(respondersWidth.find(layout)[0]!.message).toContain(
    'Only 2.7 m of the 4 m road stays clear beside tables and hand-out crew, with a first-aid or access point here.',
  );
});

it('neither asks of a station that gives no width, or where nothing stands in the road', () => {
  const points: PlanStation['points'] = [{ kind: 'medical', at: ORIGIN }];
  for (const keys of [{ points }, { points, width: 2, serves: [] }])
    for (const check of [clearWidth, respondersWidth]) expect(check.find(laid(keys))).toEqual([]);
});

it('a station that no course runs by takes nothing of a road, and cannot be asked', () => {
  const off = layoutOf(
    [course],
    [{ at: from(ORIGIN, 0, 11_000), width: 2, points: [{ kind: 'medical', at: ORIGIN }] }],
  );
  expect(off.stations[0]!.directions).toEqual([]);
  expect([clearWidth.find(off), respondersWidth.find(off)]).toEqual([[], []]);
  expect([clearWidth.missing!(off), respondersWidth.missing!(off)]).toEqual(['no-width', 'no-responders-width']);
});
