import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { boxInBend, boxOnLeg } from './boxPlaces.ts';

const centre = (course: Course): Course => ({ ...course, drawn: 'centre' });

describe('box-in-bend', () => {
  /** The road turns by so many degrees, so many metres past the pin; boxes stand from 52.4256 m to 98.1456 m past it. */
  const found = (turn: number, along: number, keys: Partial<PlanStation> = {}): readonly Finding[] => {
    const course = centre(
      turtle(ORIGIN, [
        [90, 1500 + along],
        [90 + turn, 1000],
      ]),
    );
    const on = { course: 'c', measure: 1500, side: 'left', offset: 5 } as const;
    return boxInBend.find(layoutOf([course], [{ on, ...keys }]));
  };

  it('is a warning where the course turns by more than 45° at the boxes', () => {
    expect(found(46, 70)).toEqual([
      expect.objectContaining({
        code: 'box-in-bend',
        severity: 'warning',
        measured: expect.closeTo(46, 1),
        limit: 45,
        unit: '°',
        where: expect.objectContaining({ station: 's1', item: 'trash', measure: expect.closeTo(1570, 0) }),
        message: expect.stringContaining('bends 46° to the right at the trash boxes, 63 m after the tables.'),
      }),
    ]);
    expect(found(44, 70)).toEqual([]);
    expect(found(-46, 70)).toHaveLength(1);
  });

  it('ends 5 m before the first box and after the last', () => {
    expect(found(90, 52.4 - 4.9)).toHaveLength(1);
    expect(found(90, 52.4 - 5.1)).toEqual([]);
    expect(found(90, 98.1 + 4.9)).toHaveLength(1);
    expect(found(90, 98.1 + 5.1)).toEqual([]);
  });

  it('leaves to the tables a bend that is near them, and asks nothing without boxes', () => {
    expect(found(90, 70, { practice: { bendClear: 70 } })).toEqual([]);
    expect(found(90, 70, { boxes: 0 })).toEqual([]);
  });
});

describe('box-on-leg', () => {
  /** Boxes every 20 m at the most: 52.4, 67.7, 82.9 and 98.1 m past the pin, 5 m to one side. */
  const found = (
    other: Course,
    side: 'left' | 'right' = 'right',
    keys: Partial<PlanStation> = {},
  ): readonly Finding[] => {
    const on = { course: 'c', measure: 1500, side, offset: 5 } as const;
    return boxOnLeg.find(layoutOf([turtle(ORIGIN, [[90, 3000]]), other], [{ on, races: ['c'], ...keys }]));
  };
  const crossing = (along: number): Course =>
    turtle(from(from(ORIGIN, 90, 1500 + along), 180, 500), [[0, 1000]], 20, 'd');

  it('is a warning where a box stands nearer to a leg that crosses than half a road', () => {
    expect(found(crossing(82.9 + 3.9))).toEqual([
      expect.objectContaining({
        code: 'box-on-leg',
        severity: 'warning',
        measured: expect.closeTo(3.9, 0),
        limit: 4,
        unit: 'm',
        params: expect.objectContaining({ boxes: 1, courses: ['d'] }),
        where: expect.objectContaining({ station: 's1', course: 'd', item: 'trash' }),
      }),
    ]);
    expect(found(crossing(82.9 + 4.2))).toEqual([]);
  });

  it('is one in the mouth by which another race leaves or comes, on the side of the boxes alone', () => {
    const leaves = turtle(
      ORIGIN,
      [
        [90, 1582.9],
        [180, 500],
      ],
      20,
      'd',
    );
    expect(found(leaves)).toHaveLength(1);
    expect(found(leaves, 'left')).toEqual([]);
    const comes = turtle(
      from(from(ORIGIN, 90, 1567.7), 180, 500),
      [
        [0, 500],
        [90, 500],
      ],
      20,
      'd',
    );
    expect(found(comes)).toHaveLength(1);
    expect(found(comes, 'left')).toEqual([]);
  });

  it('is none on the road that all boxes stand by, either way, nor beside it', () => {
    expect(found(turtle(ORIGIN, [[90, 3000]], 20, 'd'))).toEqual([]);
    expect(found(turtle(from(ORIGIN, 90, 3000), [[270, 3000]], 20, 'd'))).toEqual([]);
    expect(found(turtle(from(ORIGIN, 180, 3), [[90, 3000]], 20, 'd'))).toEqual([]);
    expect(found(crossing(300))).toEqual([]);
  });
});
