import { describe, expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { layoutOf, planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import { boxDistance, boxesFew, boxesMissing } from './boxes.ts';
import type { Check } from './check.ts';

const road = turtle(ORIGIN, [[90, 3000]]);
const beside = (along: number, right: number = 5): LonLat => from(from(ORIGIN, 90, 1500 + along), 180, right);
const found = (check: Check, keys: Partial<PlanStation> = {}): readonly Finding[] =>
  check.find(layoutOf([road], [{ at: beside(0), side: 'right', ...keys }]));

describe('boxes-missing', () => {
  it('is a warning where cups are handed out and there is no box', () => {
    expect(found(boxesMissing, { boxes: 0 })).toEqual([
      expect.objectContaining({
        code: 'boxes-missing',
        severity: 'warning',
        measured: 0,
        limit: 1,
        where: expect.objectContaining({ path: '/stations/0/boxes', station: 's1', item: 'trash' }),
        message: expect.stringContaining('clear it for one every 20 m'),
      }),
    ]);
    expect(found(boxesMissing, { boxes: 1 })).toEqual([]);
    expect(found(boxesMissing)).toEqual([]);
  });

  it('is silent where no cup is handed out', () => {
    expect(found(boxesMissing, { boxes: 0, serves: ['gel'] })).toEqual([]);
    expect(found(boxesMissing, { boxes: 0, tables: { water: 0, sportsDrink: 0 } })).toEqual([]);
  });
});

describe('box-distance', () => {
  // The last table ends 6.7056 m past the pin; boxes from 45.72 m to 91.44 m past it, to 9.144 m.
  it('is an error where a hand has put the boxes too near or too far', () => {
    expect(found(boxDistance, { items: { trash: { at: beside(6.7056 + 36.5) } } })).toEqual([
      expect.objectContaining({
        code: 'box-distance',
        severity: 'error',
        measured: expect.closeTo(36.5, 1),
        limit: [expect.closeTo(36.576, 6), expect.closeTo(54.864, 6)],
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0/items/trash', item: 'trash' }),
        params: expect.objectContaining({ end: 'first', byHand: true, own: null }),
      }),
    ]);
    expect(found(boxDistance, { items: { trash: { at: beside(6.7056 + 36.65) } } })).toEqual([]);
    expect(found(boxDistance, { items: { trash: { at: beside(6.7056 + 54.8) } } })).toEqual([]);
    expect(found(boxDistance, { items: { trash: { at: beside(6.7056 + 54.9) } } })).toHaveLength(1);
  });

  it('is one where the station itself asks for another distance, of the first box or the last', () => {
    expect(found(boxDistance, { practice: { trashFrom: 30 } })[0]!.message).toContain(
      'The first trash box is 30 m after the last table (the station’s own distance).',
    );
    expect(found(boxDistance, { practice: { trashTo: 100.585 } })).toEqual([
      expect.objectContaining({ params: expect.objectContaining({ end: 'last', own: 100.585 }) }),
    ]);
    expect(found(boxDistance, { practice: { trashTo: 100.58 } })).toEqual([]);
  });

  it('is silent as the practice lays out, and without boxes', () => {
    expect(found(boxDistance)).toEqual([]);
    expect(found(boxDistance, { boxes: 0, practice: { trashFrom: 30 } })).toEqual([]);
  });

  it('tells boxes before the end of the tables', () => {
    expect(found(boxDistance, { items: { trash: { at: beside(1.7) } } })[0]!.message).toContain(
      'The first trash box is 5 m before the end of the tables (placed by hand). It should be 37 to 55 m after it.',
    );
  });
});

describe('boxes-few', () => {
  /** 901 starters who take one cup of water each, none wasted. */
  const day = (boxes: number | undefined, keys: Partial<PlanStation> = {}): readonly Finding[] => {
    const finish = { median: 1200, spread: 0.1 };
    const supplies = { take: { run: { water: 1 } }, waste: 0, ...keys.supplies };
    const plan = planOf({
      courses: [planCourse('c', { line: turtlePoints(ORIGIN, [[90, 3000]], 100) })],
      races: [{ ...planRace('c', 'c'), show: 1, waves: [{ time: 28_800, entrants: 901 }], finish }],
      stations: [
        planStation({
          at: beside(0),
          side: 'right',
          serves: ['water'],
          ...keys,
          ...(boxes === undefined ? {} : { boxes }),
          supplies,
        }),
      ],
    });
    return valueOf(analyse(plan, { gpx: new Map() })).findings.filter(({ code }) => code === 'boxes-few');
  };

  it('is a warning where the day’s cups do not fit three bags a box', () => {
    // One cup more than three bags of 300.
    expect(day(1)).toEqual([
      expect.objectContaining({
        severity: 'warning',
        measured: 1,
        limit: 2,
        params: { boxes: 1, needed: 2, cups: 901, perBag: 300, bags: 3 },
        where: expect.objectContaining({ path: '/stations/0/boxes', station: 's1' }),
      }),
    ]);
    expect(day(2)).toEqual([]);
    expect(day(undefined)).toEqual([]);
  });

  it('takes the bags that the plan says, and leaves stations without boxes to boxes-missing', () => {
    expect(day(1, { supplies: { cupsPerBag: 301 } })).toEqual([]);
    expect(day(0)).toEqual([]);
  });

  it('cannot run where no race has waves', () => {
    expect(boxesFew.missing!(layoutOf([road], [{ at: beside(0) }]))).toBe('no-waves');
  });
});
