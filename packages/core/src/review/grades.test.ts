import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { Division, PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, segmentThrough, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { layoutOf, planRace } from '../testing/plans.ts';
import { gradeBetween } from '../course/grades.ts';
import { afterDescent, descentWithWheels, gradeAtTables } from './grades.ts';

/** A road of 3000 m with the elevation that a function of the measure gives, a point each 10 m. */
function hilly(elevation: (measure: number) => number): Course {
  const points = turtlePoints(ORIGIN, [[90, 3000]], 10);
  return valueOf(
    buildCourse({
      id: 'c',
      name: 'c',
      segments: [
        segmentThrough(
          points,
          points.map((_, k) => elevation(k * 10)),
        ),
      ],
      gaps: 'refuse',
    }),
  );
}

const laid = (course: Course, measure: number, division: Division = 'run', keys: Partial<PlanStation> = {}): Layout =>
  layoutOf([course], [{ on: { course: 'c', measure, side: 'right', offset: 5 }, ...keys }], {
    races: [{ ...planRace('w', 'c'), division }],
  });

/** By the road at 1500 m. */
const ROADSIDE = from(from(ORIGIN, 90, 1500), 180, 5);

describe('grade-at-tables', () => {
  const found = (grade: number, measure: number = 1500): readonly Finding[] =>
    gradeAtTables.find(
      laid(
        hilly((along) => 200 + grade * along),
        measure,
      ),
    );

  it('is a warning over 4 %, up or down, with the grade', () => {
    expect(found(0.0401)).toEqual([
      expect.objectContaining({
        code: 'grade-at-tables',
        severity: 'warning',
        measured: expect.closeTo(0.0401, 6),
        limit: [-0.04, 0.04],
        where: expect.objectContaining({ path: '/stations/0', station: 's1', course: 'c' }),
      }),
    ]);
    expect(found(-0.0401)).toEqual([
      expect.objectContaining({
        measured: expect.closeTo(-0.0401, 6),
        message: expect.stringContaining(
          'falls 4.01 % at the tables, measured from 25 m before them to 25 m after. It should be at most 4 %.',
        ),
      }),
    ]);
    expect(found(0.0399)).toEqual([]);
    expect(found(-0.0399)).toEqual([]);
  });

  it('looks at the tables and 25 m to either side', () => {
    // Level but for a step of 3 m over 10 m: 3 ÷ (6.7056 + 50) is 5.3 %.
    const step = (at: number): readonly Finding[] =>
      gradeAtTables.find(
        laid(
          hilly((along) => (along > at ? 3 : 0)),
          1500,
        ),
      );
    expect(step(1510)).toEqual([expect.objectContaining({ measured: expect.closeTo(3 / 56.7056, 5) })]);
    expect(step(1540)).toEqual([]);
    expect(step(1460)).toEqual([]);
  });

  it('takes what there is of the course near its start', () => {
    expect(found(0.05, 10)).toEqual([expect.objectContaining({ measured: expect.closeTo(0.05, 6) })]);
  });

  it('cannot run without elevations', () => {
    expect(gradeAtTables.missing!(laid(turtle(ORIGIN, [[90, 3000]]), 1500))).toBe('no-elevations');
    expect(
      gradeAtTables.missing!(
        laid(
          hilly(() => 0),
          1500,
        ),
      ),
    ).toBeNull();
  });
});

describe('descent-with-wheels', () => {
  /** Down at a grade to 1500 m, then level. */
  const down = (grade: number): Course => hilly((along) => 100 + grade * Math.max(1500 - along, 0));
  const found = (grade: number, division: Division = 'wheels', keys: Partial<PlanStation> = {}): readonly Finding[] =>
    descentWithWheels.find(laid(down(grade), 1500, division, keys));

  it('is a warning where the 100 m before the tables fall by 4 % or more', () => {
    expect(found(0.0401)).toEqual([
      expect.objectContaining({
        code: 'descent-with-wheels',
        severity: 'warning',
        measured: expect.closeTo(-0.0401, 6),
        limit: -0.04,
        where: expect.objectContaining({ station: 's1', race: 'w', course: 'c' }),
      }),
    ]);
    expect(found(0.0399)).toEqual([]);
    expect(found(-0.08)).toEqual([]);
  });

  it('is silent where runners come down it, and not where wheels pass unserved', () => {
    expect(found(0.08, 'run')).toEqual([]);
    expect(found(0.08, 'wheels', { races: [] })).toHaveLength(1);
  });

  it('is silent where the descent ends before those 100 m', () => {
    expect(descentWithWheels.find(laid(down(0.08), 1600, 'wheels'))).toEqual([]);
    // The half of it: 4 % in the mean.
    expect(descentWithWheels.find(laid(down(0.08), 1549, 'wheels'))).toHaveLength(1);
    expect(descentWithWheels.find(laid(down(0.08), 1551, 'wheels'))).toEqual([]);
  });

  it('cannot run without wheels, or without elevations of their course', () => {
    expect(descentWithWheels.missing!(laid(down(0.08), 1500, 'run'))).toBe('no-wheels');
    expect(descentWithWheels.missing!(laid(turtle(ORIGIN, [[90, 3000]]), 1500, 'wheels'))).toBe('no-wheels-elevations');
    expect(descentWithWheels.missing!(laid(down(0.08), 1500, 'wheels'))).toBeNull();
  });
});

describe('after-descent', () => {
  /** Down at a grade to the tables at 1500 m, and level from there. */
  const found = (grade: number, division: Division = 'run', keys: Partial<PlanStation> = {}): readonly Finding[] =>
    afterDescent.find(
      laid(
        hilly((along) => 200 - grade * Math.min(along, 1500)),
        1500,
        division,
        keys,
      ),
    );

  it('is a warning where runners come down 4 % or more over the 100 m before the tables', () => {
    expect(found(0.0401)).toEqual([
      expect.objectContaining({
        code: 'after-descent',
        severity: 'warning',
        measured: expect.closeTo(-0.0401, 6),
        limit: -0.04,
        params: expect.objectContaining({ races: ['w'], over: 100 }),
        where: expect.objectContaining({ path: '/stations/0', station: 's1', race: 'w' }),
      }),
    ]);
    expect(found(0.0399)).toEqual([]);
    expect(found(-0.08)).toEqual([]);
    expect(found(0.05, 'run', { practice: { maxGrade: 0.06 } })).toEqual([]);
  });

  it('leaves to the wheels what they come down too', () => {
    expect(found(0.08, 'wheels')).toEqual([]);
    expect(found(0.08, 'walk')).toHaveLength(1);
  });

  it('cannot run without elevations', () => {
    expect(afterDescent.missing!(laid(turtle(ORIGIN, [[90, 3000]]), 1500))).toBe('no-elevations');
  });
});

describe('which pass the grade is taken from', () => {
  const level = turtle(ORIGIN, [[90, 3000]], 10, 'level');
  const steep: Course = { ...hilly((along) => 200 + 0.05 * along), id: 'steep', name: 'steep' };
  const at = ROADSIDE;

  it('is the first served one whose course has elevations', () => {
    expect(gradeAtTables.find(layoutOf([level, steep], [{ at }]))).toEqual([
      expect.objectContaining({ where: expect.objectContaining({ course: 'steep' }) }),
    ]);
    expect(gradeAtTables.find(layoutOf([level, steep], [{ at, races: ['level'] }]))).toEqual([]);
    expect(gradeAtTables.find(layoutOf([steep, level], [{ at, races: ['level'] }]))).toEqual([]);
    expect(gradeAtTables.find(layoutOf([level, steep], [{ at, serves: [] }]))).toEqual([]);
  });

  it('allows just what the practice allows', () => {
    const exactly = gradeBetween(steep, 1500 - 25, 1506.7056 + 25)!;
    const held = (maxGrade: number): number =>
      gradeAtTables.find(
        layoutOf(
          [steep],
          [{ on: { course: 'steep', measure: 1500, side: 'right', offset: 5 }, practice: { maxGrade } }],
        ),
      ).length;
    expect(exactly).toBeCloseTo(0.05, 5);
    expect([held(0.0501), held(0.0499)]).toEqual([0, 1]);
    expect(gradeAtTables.find(layoutOf([steep], [{ at }]))[0]!.message).toContain('climbs 5 %');
  });

  it('is measured between two places of the course, and is none without a stretch or elevations', () => {
    expect(gradeBetween(steep, -500, 100)).toBeCloseTo(0.05, 6);
    expect(gradeBetween(steep, 2900, 9000)).toBeCloseTo(0.05, 6);
    expect(gradeBetween(steep, 100, 100)).toBeNull();
    expect(gradeBetween(steep, 200, 100)).toBeNull();
    expect(gradeBetween(level, 100, 200)).toBeNull();
  });

  it('asks nothing of wheels whose pin lies beyond the end of the course, and tells the grade of a descent at the limit', () => {
    const down = hilly((along) => 300 - 0.08 * along);
    expect(
      descentWithWheels.find(
        layoutOf([down], [{ at: from(from(ORIGIN, 90, 3000), 90, 20) }], {
          races: [{ ...planRace('w', 'c'), division: 'wheels' }],
        }),
      ),
    ).toEqual([]);
    const held = (maxGrade: number): number =>
      descentWithWheels.find(laid(down, 1500, 'wheels', { practice: { maxGrade } })).length;
    expect([held(0.0799), held(0.0801)]).toEqual([1, 0]);
    expect(descentWithWheels.find(laid(down, 1500, 'wheels'))[0]!.message).toContain('descends at 8 % over the 100 m');
  });

  it('looks at the tables of another direction where those meet it, and at the foot where a pass is not served', () => {
    // Out level, and home down the last 300 m before the tables: 100 m before them the way home falls.
    const points = turtlePoints(
      ORIGIN,
      [
        [90, 2000],
        [270, 2000],
      ],
      10,
    );
    const heights = points.map((_, k) => (k * 10 <= 2000 ? 100 : 100 - 0.06 * (k * 10 - 2000)));
    const there = valueOf(buildCourse({ id: 'c', name: 'c', segments: [segmentThrough(points, heights)] }));
    const races = [{ ...planRace('w', 'c'), division: 'wheels' as const }];
    for (const passes of ['all', 'lead'] as const) {
      const found = descentWithWheels.find(
        layoutOf([there], [{ at: from(from(ORIGIN, 90, 1000), 180, 5), lead: { race: 'w', pass: 0 }, passes }], {
          races,
        }),
      );
      expect(found).toEqual([
        expect.objectContaining({
          measured: expect.closeTo(-0.06, 4),
          where: expect.objectContaining({ measure: expect.closeTo(3000, 0) }),
        }),
      ]);
    }
  });
});

it('a race on wheels is told among others by its own name, and others are not', () => {
  const down = hilly((along) => 300 - 0.08 * along);
  const races = [
    planRace('r', 'c'),
    { ...planRace('w', 'c'), name: 'Wheels 5', division: 'wheels' as const },
    planRace('q', 'c'),
  ];
  const found = descentWithWheels.find(layoutOf([down], [{ at: ROADSIDE }], { races }));
  expect(found.map(({ where }) => where.race)).toEqual(['w']);
  expect(found[0]!.message).toContain('w, on wheels, descends at 8 %');
});
