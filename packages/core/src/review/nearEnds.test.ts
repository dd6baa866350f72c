import { describe, expect, it } from 'vitest';
import { courseLength } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { nearFinish, nearStart } from './nearEnds.ts';

const road = turtle(ORIGIN, [[90, 6000]], 100);
const length = courseLength(road);
const found = (
  check: Check,
  measures: readonly number[],
  keys: Parameters<typeof layoutOf>[2] = {},
): readonly Finding[] =>
  check.find(
    layoutOf(
      [road, { ...road, id: 'd', name: 'd' }],
      measures.map((measure) => ({ on: { course: 'c', measure, side: 'right', offset: 5 } })),
      keys,
    ),
  );

describe('near-start and near-finish', () => {
  it('are notes where the first or the last station of a race is too near its end, once for all races', () => {
    expect(found(nearStart, [1199, 3000])).toEqual([
      expect.objectContaining({
        code: 'near-start',
        severity: 'note',
        measured: expect.closeTo(1199, 6),
        limit: 1200,
        unit: 'm',
        params: expect.objectContaining({ races: ['c', 'd'] }),
        where: expect.objectContaining({
          path: '/stations/0',
          station: 's1',
          race: 'c',
          measure: expect.closeTo(1199, 6),
        }),
      }),
    ]);
    expect(found(nearStart, [1200, 3000])).toEqual([]);
    expect(found(nearFinish, [3000, length - 799])).toEqual([
      expect.objectContaining({
        code: 'near-finish',
        measured: expect.closeTo(799, 6),
        limit: 800,
        where: expect.objectContaining({ station: 's2', measure: expect.closeTo(length - 799, 6) }),
      }),
    ]);
    expect(found(nearFinish, [3000, length - 801])).toEqual([]);
  });

  it('have their limits in the plan', () => {
    expect(found(nearStart, [900], { practice: { firstAfter: 800 } })).toEqual([]);
    expect(found(nearFinish, [length - 600], { practice: { lastBefore: 500 } })).toEqual([]);
  });

  it('are silent in a race no longer than a leg may be, and without a station', () => {
    expect(found(nearStart, [500], { practice: { maxSpacing: length } })).toEqual([]);
    expect(found(nearFinish, [length - 100], { practice: { maxSpacing: length } })).toEqual([]);
    expect([...found(nearStart, []), ...found(nearFinish, [])]).toEqual([]);
  });
});
