import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, type TurtleLeg, from, segmentThrough, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { signHardToRead, signInRoad } from './signPlace.ts';

const drawn = (course: Course, how: Course['drawn'] = 'centre'): Course => ({ ...course, drawn: how });
const beside = (along: number, right: number): LonLat => from(from(ORIGIN, 90, along), 180, right);

describe('sign-in-road', () => {
  /** A sign that a hand has placed so many metres from the line. */
  const found = (right: number, keys: Partial<PlanStation> = {}, how: Course['drawn'] = 'centre'): readonly Finding[] =>
    signInRoad.find(
      layoutOf(
        [drawn(turtle(ORIGIN, [[90, 3000]]), how)],
        [{ at: beside(1500, 6), side: 'right', items: { sign: { at: beside(1410, right) } }, ...keys }],
      ),
    );

  it('is an error where it is nearer to the line than half the road', () => {
    expect(found(3.99, { width: 8, practice: { pinR95: 0 } })).toEqual([
      expect.objectContaining({
        code: 'sign-in-road',
        severity: 'error',
        measured: expect.closeTo(3.99, 2),
        limit: 4,
        unit: 'm',
        params: expect.objectContaining({ road: 8, sure: true }),
        where: expect.objectContaining({ path: '/stations/0/items/sign', item: 'sign' }),
      }),
    ]);
    expect(found(4.01, { width: 8 })).toEqual([]);
    expect(found(-3.9, { width: 8 })).toHaveLength(1);
  });

  it('cannot tell within the position error', () => {
    // 1.6449 · 5 m ÷ 2.4477 (normal quantile, Rayleigh's 95 %): 3.36 m.
    expect(found(0.6, { width: 8 })[0]!.cannotTell).toBeUndefined();
    expect(found(0.7, { width: 8 })[0]!.cannotTell).toBe(true);
  });

  it('takes half the clear width for half the road where no width is given, and nothing of the shortest way', () => {
    expect(found(1.45)).toEqual([
      expect.objectContaining({ limit: 1.5, params: expect.objectContaining({ road: null }) }),
    ]);
    expect(found(1.55)).toEqual([]);
    expect(found(1.45, {}, 'shortest')).toEqual([]);
  });

  it('is silent about signs that no hand has placed', () => {
    expect(found(0, { width: 8, items: {} })).toEqual([]);
  });
});

describe('sign-hard-to-read', () => {
  /** The sign stands 91.44 m before the pin; the road turns so many metres before the pin. */
  const bend = (turn: number, before: number): readonly Finding[] => {
    const course = drawn(
      turtle(ORIGIN, [
        [90, 1500 - before],
        [90 + turn, 1500],
      ]),
    );
    const on = { course: 'c', measure: 1500, side: 'left', offset: 5 } as const;
    return signHardToRead.find(layoutOf([course], [{ on }]));
  };

  it('is a warning where the course turns by more than 45° within 30 m before the sign, or at it', () => {
    expect(bend(46, 110)).toEqual([
      expect.objectContaining({
        code: 'sign-hard-to-read',
        severity: 'warning',
        measured: expect.closeTo(46, 1),
        limit: 45,
        unit: '°',
        where: expect.objectContaining({ station: 's1', item: 'sign', measure: expect.closeTo(1390, 0) }),
      }),
    ]);
    expect(bend(44, 110)).toEqual([]);
    expect(bend(90, 91.44 + 29.9)).toHaveLength(1);
    expect(bend(90, 91.44 + 30.1)).toEqual([]);
    expect(bend(90, 91.44 - 4.9)).toHaveLength(1);
    expect(bend(90, 91.44 - 5.1)).toEqual([]);
  });

  it('counts a long bend that reaches into the 30 m before the sign as a whole', () => {
    // A quarter of a circle in steps of 10° each 5 m, which ends so many metres before the sign.
    const round = (before: number): readonly Finding[] => {
      const quarter = Array.from({ length: 9 }, (_, k): TurtleLeg => [100 + 10 * k, 5]);
      const course = drawn(turtle(ORIGIN, [[90, 1500 - 91.44 - before - 40], ...quarter, [180, 1500]], 5));
      const on = { course: 'c', measure: 1500, side: 'left', offset: 5 } as const;
      return signHardToRead.find(layoutOf([course], [{ on }]));
    };
    expect(round(29)).toHaveLength(1);
    expect(round(31)).toEqual([]);
  });

  /** Level but for the 100 m before the sign, which fall at a grade. */
  const descent = (grade: number, keys: Partial<PlanStation> = {}): readonly Finding[] => {
    const points = turtlePoints(ORIGIN, [[90, 3000]], 10);
    const sign = 1500 - 91.44;
    const elevation = (along: number): number => 200 - grade * Math.min(Math.max(along - (sign - 200), 0), 230);
    const segments = [
      segmentThrough(
        points,
        points.map((_, k) => elevation(k * 10)),
      ),
    ];
    const course = valueOf(buildCourse({ id: 'c', name: 'c', segments, gaps: 'refuse' }));
    const on = { course: 'c', measure: 1500, side: 'left', offset: 5 } as const;
    return signHardToRead.find(layoutOf([course], [{ on, ...keys }]));
  };

  it('is a warning on a descent of more than half as much again as the tables may have', () => {
    expect(descent(0.062)).toEqual([
      expect.objectContaining({
        measured: expect.closeTo(-0.062, 6),
        limit: -0.06,
        params: expect.objectContaining({ is: 'descent', over: 100 }),
      }),
    ]);
    expect(descent(0.059)).toEqual([]);
    expect(descent(-0.09)).toEqual([]);
    expect(descent(0.062, { practice: { maxGrade: 0.05 } })).toEqual([]);
  });
});
