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
const corner = (turn: number): Course =>
  centre(
    turtle(ORIGIN, [
      [90, 1000],
      [90 + turn, 1000],
    ]),
  );
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
        message: expect.stringMatching(/46° to the right 30 m before the tables, on their side/),
        where: expect.objectContaining({
          path: '/stations/0',
          station: 's1',
          course: 'c',
          measure: expect.closeTo(1000, 1),
        }),
      }),
    ]);
    expect(at(corner(44.9), 1029.9)).toEqual([]);
    expect(at(corner(46), 1030.1)).toEqual([]);
  });

  it('is a warning within 30 m downstream of the last table too, and says when tables stand outside the bend', () => {
    expect(at(corner(-46), 1000 - TABLES - 29.9)).toEqual([
      expect.objectContaining({
        message: expect.stringMatching(/46° to the left 30 m after the tables, away from them/),
      }),
    ]);
    expect(at(corner(-46), 1000 - TABLES - 30.1)).toEqual([]);
    expect(at(corner(46), 1040, { practice: { bendClear: 41 } })).toHaveLength(1);
  });

  it('tells no inside where the course turns back', () => {
    const [back] = at(
      centre(
        turtle(ORIGIN, [
          [90, 1000],
          [265, 1000],
        ]),
      ),
      970,
    );
    expect(back).toMatchObject({ measured: expect.closeTo(175, 1) as number });
    expect(back!.message).not.toMatch(/on their side|away from them/);
  });

  it('adds up a bend that is drawn in steps over 30 m, not one drawn over more', () => {
    const curve = (step: number): Course =>
      centre(
        turtle(ORIGIN, [[90, 1000], ...[100, 110, 120, 130].map((azimuth) => [azimuth, step] as const), [140, 1000]]),
      );
    // Five corners of 10°: over 4 × 7 m all of them; of 4 × 8 m four at a time.
    expect(at(curve(7), 1010)).toEqual([expect.objectContaining({ measured: expect.closeTo(50, 1) })]);
    expect(at(curve(8), 1010)).toEqual([]);
  });

  it('takes no wiggle for a bend, nor the noise of a recorder', () => {
    expect(
      at(
        centre(
          turtle(ORIGIN, [
            [90, 1000],
            [120, 5],
            [90, 1000],
          ]),
        ),
        1010,
      ),
    ).toEqual([]);
    const random = generator(7);
    const points = turtlePoints(ORIGIN, [[90, 2000]], 5).map((point) => from(point, random() * 360, random() * 1.5));
    expect(at(courseThrough(points), 1010)).toEqual([]);
  });

  it('finds a recorded corner', () => {
    expect(
      at(
        turtle(
          ORIGIN,
          [
            [90, 1000],
            [180, 1000],
          ],
          5,
        ),
        1015,
      ),
    ).toEqual([expect.objectContaining({ measured: expect.closeTo(90, 0) })]);
  });

  it('is told once where two courses share the bend, and on the course that has it', () => {
    const two = (other: Course): readonly Finding[] =>
      bendNearTables.find(
        layoutOf([corner(90), other], [{ on: { course: 'c', measure: 1020, side: 'right', offset: 5 } }]),
      );
    expect(
      two(
        centre(
          turtle(
            ORIGIN,
            [
              [90, 1000],
              [180, 1000],
            ],
            20,
            'd',
          ),
        ),
      ),
    ).toHaveLength(1);
    // The second race comes straight down the road that the first turns into.
    expect(two(centre(turtle(from(ORIGIN, 90, 1000), [[180, 1000]], 20, 'd')))).toHaveLength(1);
    const straight = bendNearTables.find(
      layoutOf(
        [centre(turtle(from(from(ORIGIN, 90, 1000), 0, 500), [[180, 1500]], 20, 'd')), corner(90)],
        [{ on: { course: 'c', measure: 1020, side: 'right', offset: 5 } }],
      ),
    );
    expect(straight).toEqual([expect.objectContaining({ where: expect.objectContaining({ course: 'c' }) })]);
  });
});

describe('what is told of a bend', () => {
  it('is where it lies: beside the tables, upstream or downstream of them, and which way it turns', () => {
    expect(at(corner(-60), 998)[0]!.message).toContain('bends 60° to the left beside the tables, away from them:');
    expect(at(corner(60), 1010)[0]!.message).toContain(
      'bends 60° to the right 10 m before the tables, on their side: runners cut in along them. Within 30 m of them it should bend at most 45°.',
    );
    expect(at(corner(-60), 1010)[0]!.message).toContain(
      'bends 60° to the left 10 m before the tables, away from them: runners on the shortest way must come across to them.',
    );
    expect(at(corner(60), 980)[0]!.message).toMatch(/60° to the right 1[34] m after the tables/u);
  });

  it('has an inside up to a turn of 150°, and none where the side is unclear', () => {
    expect(at(corner(149), 1010)[0]!.message).toContain('on their side');
    expect(at(corner(151), 1010)[0]!.message).not.toMatch(/on their side|away from them/u);
    const [unclear] = bendNearTables.find(
      layoutOf([corner(60)], [{ at: from(from(from(ORIGIN, 90, 1000), 150, 12), 240, 0.2) }]),
    );
    expect(unclear!.message).not.toMatch(/on their side|away from them/u);
  });

  it('is a bend of the course, not of a place where the recorder stood still', () => {
    const random = generator(3);
    const stand = from(ORIGIN, 90, 1000);
    const jitter = Array.from({ length: 60 }, () => from(stand, 360 * random(), 4 * random()));
    const recorded = courseThrough([
      ...turtlePoints(ORIGIN, [[90, 995]], 5),
      ...jitter,
      ...turtlePoints(from(ORIGIN, 90, 1008), [[90, 900]], 5),
    ]);
    const layout = layoutOf([recorded], [{ at: from(from(ORIGIN, 90, 1020), 180, 5) }]);
    expect(layout.courses[0]!.tangles).toHaveLength(1);
    expect(bendNearTables.find(layout)).toEqual([]);
    expect(
      bendNearTables.find({ ...layout, courses: layout.courses.map((indexed) => ({ ...indexed, tangles: [] })) }),
    ).toHaveLength(1);
  });

  it('is the sharpest of several, by its net turn, with its middle weighed by turn', () => {
    const two = centre(
      turtle(ORIGIN, [
        [90, 1000],
        [110, 10],
        [170, 1000],
      ]),
    );
    // 20° and, 10 m on, 60°: together 80°, their middle 7.5 m behind the first.
    expect(at(two, 1020)).toEqual([
      expect.objectContaining({
        measured: expect.closeTo(80, 1),
        where: expect.objectContaining({ measure: expect.closeTo(1007.5, 1) }),
      }),
    ]);
    const apart = centre(
      turtle(ORIGIN, [
        [90, 1000],
        [140, 31],
        [200, 1000],
      ]),
    );
    expect(at(apart, 1020)).toEqual([expect.objectContaining({ measured: expect.closeTo(60, 1) })]);
  });

  it('is looked for on every served course, and told for each bend by itself where they lie over 30 m apart', () => {
    /** Comes straight down the road that the first turns into, and bends so many metres behind that turn. */
    const other = (behind: number): Course =>
      centre(
        turtle(
          from(from(ORIGIN, 90, 1000), 330, 500),
          [
            [150, 500 + behind],
            [90, 500],
          ],
          20,
          'd',
        ),
      );
    const served = (course: Course): readonly Finding[] =>
      bendNearTables.find(
        layoutOf([corner(60), course], [{ on: { course: 'c', measure: 1025, side: 'right', offset: 5 } }]),
      );
    expect(served(other(60)).map(({ where }) => where.course)).toEqual(['c', 'd']);
    expect(served(other(28)).map(({ where }) => where.course)).toEqual(['c']);
  });

  it('is none without tables', () => {
    expect(at(corner(60), 1000, { serves: [] })).toEqual([]);
  });
});

it('a place elsewhere where the recorder stood still takes no bend away, be it before or behind', () => {
  const random = generator(3);
  const still = (at: ReturnType<typeof from>): ReturnType<typeof from>[] =>
    Array.from({ length: 60 }, () => from(at, 360 * random(), 4 * random()));
  const south = (along: number): ReturnType<typeof from> => from(from(ORIGIN, 90, 1000), 180, along);
  const recorded = courseThrough([
    ...turtlePoints(ORIGIN, [[90, 295]], 5),
    ...still(from(ORIGIN, 90, 300)),
    ...turtlePoints(from(ORIGIN, 90, 305), [[90, 690]], 5),
    ...turtlePoints(south(0), [[180, 595]], 5),
    ...still(south(600)),
    ...turtlePoints(south(605), [[180, 300]], 5),
  ]);
  const layout = layoutOf([recorded], [{ at: from(south(15), 270, 5), side: 'right' }]);
  expect(layout.courses[0]!.tangles).toHaveLength(2);
  expect(bendNearTables.find(layout)).toEqual([expect.objectContaining({ measured: expect.closeTo(90, 0) })]);
});
