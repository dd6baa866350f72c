import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, generator, turtle, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { bendNearTables } from './bendNearTables.ts';

const centre = (course: Course): Course => ({ ...course, drawn: 'centre' });
const at = (course: Course, measure: number, keys: Partial<PlanStation> = {}): readonly Finding[] =>
  bendNearTables.find(layoutOf([course], [{ on: { course: 'c', measure, side: 'right', offset: 5 }, ...keys }]));

/** A drawn corner at 1000 m, so many degrees to the right. */
const corner = (turn: number): Course => centre(turtle(ORIGIN, [[90, 1000], [90 + turn, 1000]]));
/** Tables reach from the pin to 6.7056 m downstream: 6 ft, 10 ft, 6 ft. */
const TABLES = 22 * 0.3048;

describe('bend-near-tables', () => {
  it('is a warning where the course turns by over 45° within 30 m upstream of the tables', () => {
    expect(at(corner(46), 1029.9)).toEqual([
      expect.objectContaining({
        code: 'bend-near-tables',
        severity: 'warning',
        measured: expect.closeTo(46, 1),
        limit: 45,
        unit: '°',
        message: expect.stringMatching(/46° to the right 29\.9 m upstream .* on its inside/),
        where: expect.objectContaining({ path: '/stations/0', station: 's1', course: 'c', measure: expect.closeTo(1000, 1) }),
      }),
    ]);
    expect(at(corner(44.9), 1029.9)).toEqual([]);
    expect(at(corner(46), 1030.1)).toEqual([]);
  });

  it('is a warning within 30 m downstream of the last table too, and says when tables stand outside the bend', () => {
    expect(at(corner(-46), 1000 - TABLES - 29.9)).toEqual([expect.objectContaining({ message: expect.stringMatching(/46° to the left 29\.9 m downstream .* on its outside/) })]);
    expect(at(corner(-46), 1000 - TABLES - 30.1)).toEqual([]);
    expect(at(corner(46), 1040, { practice: { bendClear: 41 } })).toHaveLength(1);
  });

  it('tells no inside where the course turns back', () => {
    const [back] = at(centre(turtle(ORIGIN, [[90, 1000], [265, 1000]])), 970);
    expect(back).toMatchObject({ measured: expect.closeTo(175, 1) as number });
    expect(back!.message).not.toMatch(/inside|outside/);
  });

  it('adds up a bend that is drawn in steps over 30 m, not one drawn over more', () => {
    const curve = (step: number): Course => centre(turtle(ORIGIN, [[90, 1000], ...[100, 110, 120, 130].map((azimuth) => [azimuth, step] as const), [140, 1000]]));
    // Five corners of 10°: over 4 × 7 m all of them; of 4 × 8 m four at a time.
    expect(at(curve(7), 1010)).toEqual([expect.objectContaining({ measured: expect.closeTo(50, 1) })]);
    expect(at(curve(8), 1010)).toEqual([]);
  });

  it('takes no wiggle for a bend, nor the noise of a recorder', () => {
    expect(at(centre(turtle(ORIGIN, [[90, 1000], [120, 5], [90, 1000]])), 1010)).toEqual([]);
    const random = generator(7);
    const points = turtlePoints(ORIGIN, [[90, 2000]], 5).map((point) => from(point, random() * 360, random() * 1.5));
    expect(at(courseThrough(points), 1010)).toEqual([]);
  });

  it('finds a recorded corner', () => {
    expect(at(turtle(ORIGIN, [[90, 1000], [180, 1000]], 5), 1015)).toEqual([expect.objectContaining({ measured: expect.closeTo(90, 0) })]);
  });

  it('is told once where two courses share the bend, and on the course that has it', () => {
    const two = (other: Course): readonly Finding[] => bendNearTables.find(layoutOf([corner(90), other], [{ on: { course: 'c', measure: 1020, side: 'right', offset: 5 } }]));
    expect(two(centre(turtle(ORIGIN, [[90, 1000], [180, 1000]], 20, 'd')))).toHaveLength(1);
    // The second race comes straight down the road that the first turns into.
    expect(two(centre(turtle(from(ORIGIN, 90, 1000), [[180, 1000]], 20, 'd')))).toHaveLength(1);
    const straight = bendNearTables.find(layoutOf([centre(turtle(from(from(ORIGIN, 90, 1000), 0, 500), [[180, 1500]], 20, 'd')), corner(90)], [{ on: { course: 'c', measure: 1020, side: 'right', offset: 5 } }]));
    expect(straight).toEqual([expect.objectContaining({ where: expect.objectContaining({ course: 'c' }) })]);
  });
});
