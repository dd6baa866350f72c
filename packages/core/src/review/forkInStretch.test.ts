import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { forkInStretch } from './forkInStretch.ts';

/** Sign 91.44 m before the pin at 1500 m; tables to 1506.7 m; boxes from 1552.4 m to 1598.1 m. */
const pin = (keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  on: { course: 'c', measure: 1500, side: 'left', offset: 5 },
  ...keys,
});
const road = turtle(ORIGIN, [[90, 3000]]);
/** Race d leaves the road there, to the south; or comes to it. */
const parts = (along: number): Course =>
  turtle(
    ORIGIN,
    [
      [90, along],
      [180, 500],
    ],
    20,
    'd',
  );
const joins = (along: number): Course =>
  turtle(
    from(from(ORIGIN, 90, along), 180, 500),
    [
      [0, 500],
      [90, 1000],
    ],
    20,
    'd',
  );
const found = (other: Course, keys: Partial<PlanStation> = {}): readonly unknown[] =>
  forkInStretch.find(layoutOf([road, other], [pin(keys)])).map(({ params }) => params);

describe('fork-in-stretch', () => {
  it('is a warning where served runners leave between tables and boxes, or among the boxes', () => {
    expect(forkInStretch.find(layoutOf([road, parts(1530)], [pin()]))).toEqual([
      expect.objectContaining({
        code: 'fork-in-stretch',
        severity: 'warning',
        params: {
          races: ['d'],
          how: 'parts',
          away: expect.closeTo(23, -0.9),
          meets: ['sign', 'tables'],
          misses: ['boxes'],
        },
        where: expect.objectContaining({ station: 's1', course: 'd', race: 'd' }),
      }),
    ]);
    expect(found(parts(1580))).toEqual([expect.objectContaining({ misses: ['boxes'] })]);
  });

  it('ends at the last box, less the room in which roads part', () => {
    expect(found(parts(1598 - 12))).toHaveLength(1);
    expect(found(parts(1598 + 2))).toEqual([]);
  });

  it('is one where served runners join among the tables, and none where they join before the sign', () => {
    const many = { tables: { water: 20 } };
    expect(found(joins(1506), many)).toEqual([expect.objectContaining({ how: 'joins', misses: ['sign', 'tables'] })]);
    expect(found(joins(1500 - 91.44 - 10))).toEqual([]);
  });

  it('leaves to sign-missed who misses the sign alone', () => {
    expect(found(joins(1450))).toEqual([]);
  });

  it('is one where runners who are not served pass the sign alone, or the boxes alone', () => {
    expect(found(parts(1450), { races: ['c'] })).toEqual([
      expect.objectContaining({ meets: ['sign'], misses: ['tables', 'boxes'] }),
    ]);
    expect(found(joins(1530), { races: ['c'] })).toEqual([
      expect.objectContaining({ meets: ['boxes'], misses: ['sign', 'tables'] }),
    ]);
  });

  it('leaves to passers-not-served who is not served and passes the tables', () => {
    expect(found(parts(1530), { races: ['c'] })).toEqual([]);
  });

  it('is none where they part before the sign or join behind the boxes, nor without boxes to miss', () => {
    expect(found(parts(1400), { races: ['c'] })).toEqual([]);
    expect(found(joins(1606), { races: ['c'] })).toEqual([]);
    expect(found(parts(1530), { boxes: 0 })).toEqual([]);
  });
});
