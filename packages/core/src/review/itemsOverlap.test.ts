import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { itemsOverlap } from './itemsOverlap.ts';

/** Sign 91.44 m before the pin; 6.7056 m of tables; trash to 91.44 m past them. */
const UP = 91.44;
const DOWN = 6.7056 + 91.44;

/** Two stations so many metres apart on one road. */
const apart = (distance: number, second: Partial<PlanStation> = {}): readonly Finding[] => {
  const on = (measure: number): NonNullable<PlanStation['on']> => ({ course: 'c', measure, side: 'right', offset: 5 });
  return itemsOverlap.find(
    layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ on: on(1000) }, { on: on(1000 + distance), ...second }]),
  );
};

describe('items-overlap', () => {
  it('is a warning where the trash drop of one reaches past the sign of the next, with the overlap', () => {
    expect(apart(UP + DOWN - 0.01)).toEqual([
      expect.objectContaining({
        code: 'items-overlap',
        severity: 'warning',
        measured: expect.closeTo(0.01, 4),
        limit: 0,
        unit: 'm',
        where: expect.objectContaining({
          path: '/stations/1',
          station: 's2',
          course: 'c',
          measure: expect.closeTo(1000 + DOWN - 0.01, 3),
        }),
      }),
    ]);
    expect(apart(UP + DOWN + 0.01)).toEqual([]);
  });

  it('is an error where it reaches the tables, whichever station the plan names first', () => {
    expect(apart(DOWN - 0.01)).toEqual([
      expect.objectContaining({
        severity: 'error',
        measured: expect.closeTo(UP + 0.01, 3),
        where: expect.objectContaining({ station: 's2' }),
      }),
    ]);
    expect(apart(DOWN + 0.01)).toEqual([expect.objectContaining({ severity: 'warning' })]);
    expect(apart(-DOWN + 0.01)).toEqual([
      expect.objectContaining({ severity: 'error', where: expect.objectContaining({ station: 's1' }) }),
    ]);
  });

  it('is silent across the road, and cannot tell where a side is unclear', () => {
    expect(apart(100, { on: { course: 'c', measure: 1100, side: 'left', offset: 5 } })).toEqual([]);
    expect(apart(100, { on: { course: 'c', measure: 1100, side: 'left', offset: 0.5 }, side: 'left' })).toEqual([]);
    const unclear = layoutOf(
      [turtle(ORIGIN, [[90, 3000]])],
      [{ on: { course: 'c', measure: 1000, side: 'right', offset: 5 } }, { at: from(ORIGIN, 90, 1100) }],
    );
    expect(itemsOverlap.find(unclear)).toEqual([expect.objectContaining({ cannotTell: true })]);
  });

  it('is silent where one stands by the way out and the other, across the road, by the way back', () => {
    const there = turtle(ORIGIN, [
      [90, 2000],
      [270, 2000],
    ]);
    const on = (measure: number): Partial<PlanStation> => ({
      on: { course: 'c', measure, side: 'right', offset: 5 },
      lead: { race: 'c', pass: measure < 2000 ? 0 : 1 },
    });
    expect(itemsOverlap.find(layoutOf([there], [on(1000), on(2950)]))).toEqual([]);
  });

  it('is found once where two races share the road', () => {
    const roads = ['a', 'b'].map((id) => turtle(ORIGIN, [[90, 3000]], 20, id));
    const on = (measure: number): Partial<PlanStation> => ({ on: { course: 'a', measure, side: 'right', offset: 5 } });
    expect(itemsOverlap.find(layoutOf(roads, [on(1000), on(1150)]))).toHaveLength(1);
    // Stations of different races on one road still meet.
    expect(
      itemsOverlap.find(
        layoutOf(roads, [
          { ...on(1000), races: ['a'] },
          { ...on(1150), races: ['b'] },
        ]),
      ),
    ).toHaveLength(1);
  });

  it('cannot run on one station', () => {
    expect(itemsOverlap.missing!(layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ at: from(ORIGIN, 90, 1000) }]))).toBe(
      'one-station',
    );
  });
});

describe('the overlap of two stations', () => {
  it('is told by the largest of all courses that they share, with both names in running order', () => {
    const [found] = apart(150);
    expect(found!.message).toContain(
      'The stretch from sign to trash overlaps that of s1 by 40 m. One should end before the other begins on the same side. Move one away by at least 40 m,',
    );
    expect(apart(50)[0]!.message).toContain(', as far as the tables of one of them.');
    expect(apart(-50)[0]!.message).toContain('overlaps that of s2 by');
    expect(apart(-50)[0]!.where.station).toBe('s1');
    // Courses of other lengths before the stations: the overlap is the same, and told once.
    const roads = [turtle(ORIGIN, [[90, 3000]], 20, 'a'), turtle(from(ORIGIN, 270, 500), [[90, 3500]], 20, 'b')];
    const on = (measure: number): Partial<PlanStation> => ({ on: { course: 'a', measure, side: 'right', offset: 5 } });
    expect(itemsOverlap.find(layoutOf(roads, [on(1000), on(1100)]))).toEqual([
      expect.objectContaining({ measured: expect.closeTo(UP + DOWN - 100, 2) }),
    ]);
  });

  it('is the worse of two directions’ where stations are served both ways', () => {
    const there = turtle(ORIGIN, [
      [90, 2000],
      [270, 2000],
    ]);
    const on = (measure: number): Partial<PlanStation> => ({
      on: { course: 'c', measure, side: 'right', offset: 5 },
      passes: 'all',
      lead: { race: 'c', pass: 0 },
    });
    const found = itemsOverlap.find(layoutOf([there], [on(1000), on(1120)]));
    expect(found).toEqual([expect.objectContaining({ measured: expect.closeTo(UP + DOWN - 120, 1) })]);
  });

  it('is none where a station has no tables, or three stand far apart, and one for each pair', () => {
    expect(apart(50, { serves: [] })).toEqual([]);
    const on = (measure: number): Partial<PlanStation> => ({ on: { course: 'c', measure, side: 'right', offset: 5 } });
    const pairs = (measures: number[]): number =>
      itemsOverlap.find(layoutOf([turtle(ORIGIN, [[90, 3000]])], measures.map(on))).length;
    expect([pairs([500, 1000, 1500]), pairs([1000, 1060, 1120]), pairs([1000, 1100, 2000])]).toEqual([0, 3, 1]);
  });

  it('cannot be told where either side is unclear, and says so', () => {
    for (const first of [true, false]) {
      const clear: Partial<PlanStation> = { on: { course: 'c', measure: 1000, side: 'right', offset: 5 } };
      const unclear: Partial<PlanStation> = { at: from(ORIGIN, 90, 1100) };
      const [found] = itemsOverlap.find(
        layoutOf([turtle(ORIGIN, [[90, 3000]])], first ? [clear, unclear] : [unclear, clear]),
      );
      expect(found).toMatchObject({
        cannotTell: true,
        message: expect.stringContaining('the side of one is unclear') as string,
      });
    }
    const [found] = apart(100);
    expect(found).not.toHaveProperty('cannotTell');
    expect(found!.message).not.toContain('unclear');
  });
});

it('where the way between two stations is longer for one race than for another, the larger overlap is told', () => {
  const detour = turtle(
    ORIGIN,
    [
      [90, 1050],
      [0, 10],
      [90, 40],
      [180, 10],
      [90, 1900],
    ],
    10,
    'b',
  );
  const roads = [detour, turtle(ORIGIN, [[90, 3000]], 10, 'a')];
  const on = (measure: number): Partial<PlanStation> => ({ on: { course: 'a', measure, side: 'right', offset: 5 } });
  const told = itemsOverlap.find(layoutOf(roads, [on(1000), on(1150)]));
  expect(told).toEqual([
    expect.objectContaining({
      measured: expect.closeTo(UP + DOWN - 150, 1),
      where: expect.objectContaining({ course: 'a' }),
    }),
  ]);
});

it('is one finding a station where many reach into its stretch, with the worst and the number of the others', () => {
  const packed = (count: number): readonly Finding[] =>
    itemsOverlap.find(
      layoutOf(
        [turtle(ORIGIN, [[90, 3000]])],
        Array.from({ length: count }, (_, k) => ({
          on: { course: 'c', measure: 1000 + k, side: 'right' as const, offset: 5 },
        })),
      ),
    );
  expect(packed(4)).toHaveLength(6);
  expect(packed(5).map(({ where, params }) => [where.station, params?.['before'], params?.['others']])).toEqual([
    ['s2', 's1', undefined],
    ['s3', 's1', undefined],
    ['s4', 's1', undefined],
    ['s3', 's2', undefined],
    ['s4', 's2', undefined],
    ['s4', 's3', undefined],
    ['s5', 's4', 3],
  ]);
  expect(packed(40).length).toBeLessThanOrEqual(42);
  expect(packed(5).at(-1)!.message).toContain('3 more stations reach into it.');
});
