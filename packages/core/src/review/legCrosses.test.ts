import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, type TurtleLeg, courseThrough, from, turtle } from '../testing/courses.ts';
import { layoutOf, planRace } from '../testing/plans.ts';
import { legCrosses } from './legCrosses.ts';

/** Sign 91.44 m before the pin at 1500 m; 6.7056 m of tables; last box 98.1456 m past the pin. */
const PIN: Partial<PlanStation> = { on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, races: ['c'] };
const road = turtle(ORIGIN, [[90, 3000]]);
const find = (...others: readonly Course[]): readonly Finding[] => legCrosses.find(layoutOf([road, ...others], [PIN]));

/** A leg that runs over the road at an azimuth, so many metres along it. */
const over = (along: number, azimuth: number): Course =>
  turtle(from(from(ORIGIN, 90, along), azimuth + 180, 500), [[azimuth, 1000]], 20, 'd');
/** A leg that comes up to so many metres from the road's line, and goes back. */
const upTo = (along: number, south: number): Course => {
  const tip = from(from(ORIGIN, 90, along), 180, south);
  return courseThrough([from(tip, 160, 400), tip, from(tip, 200, 400)], 'd');
};

describe('leg-crosses', () => {
  it('is a warning where another leg crosses between sign and last box, with its distance from the tables', () => {
    expect(find(over(1440, 0))).toEqual([
      expect.objectContaining({
        code: 'leg-crosses',
        severity: 'warning',
        params: { courses: ['d'], measure: expect.closeTo(500, 0), touches: false, away: expect.closeTo(-56, 0) },
        where: expect.objectContaining({ station: 's1', course: 'd' }),
      }),
    ]);
  });

  it('ends at the sign and at the last box, half a road aside', () => {
    const [sign, box] = [1500 - 91.44, 1500 + 98.1456];
    expect(find(over(sign - 3, 0))).toHaveLength(1);
    expect(find(over(sign - 5, 0))).toEqual([]);
    expect(find(over(box + 3, 0))).toHaveLength(1);
    expect(find(over(box + 5, 0))).toEqual([]);
  });

  it('is an error beside the tables', () => {
    expect(find(over(1503, 0))).toEqual([
      expect.objectContaining({ severity: 'error', params: expect.objectContaining({ away: 0 }) }),
    ]);
  });

  it('is found at any angle, from either side', () => {
    for (const azimuth of [10, 45, 75, 105, 170, 190, 250, 285, 350])
      expect(
        find(over(1450, azimuth)).map(({ params }) => params),
        String(azimuth),
      ).toEqual([expect.objectContaining({ touches: false })]);
  });

  it('is found where a leg comes up to the road and goes back, as near as half a road', () => {
    expect(find(upTo(1560, 3.5)).map(({ params }) => params)).toEqual([expect.objectContaining({ touches: true })]);
    expect(find(upTo(1560, 4.5))).toEqual([]);
    expect(find(upTo(1560, 9))).toEqual([]);
  });

  it('is found where the course crosses itself, once for courses that do so in one place', () => {
    const eight = turtle(ORIGIN, [
      [90, 2000],
      [0, 400],
      [270, 550],
      [180, 800],
    ]);
    const twin = { ...eight, id: 'd', name: 'd' };
    const found = legCrosses.find(layoutOf([eight, twin], [PIN]));
    expect(found.map(({ params }) => params)).toEqual([
      expect.objectContaining({ courses: expect.arrayContaining(['c', 'd']), touches: false }),
    ]);
  });

  it('is found where a way that runs against the road comes onto it', () => {
    const against = turtle(
      from(from(ORIGIN, 90, 1560), 180, 300),
      [
        [0, 300],
        [270, 1000],
      ],
      20,
      'd',
    );
    expect(find(against).map(({ params }) => params)).toEqual([expect.objectContaining({ touches: true })]);
  });
});

describe('what does not cross', () => {
  const legs: readonly (readonly [string, readonly TurtleLeg[], number])[] = [
    ['a race on the same road', [[90, 3000]], 0],
    ['a road beside it', [[90, 3000]], 12],
    ['a race that comes against it on one line', [[270, 3000]], 0],
  ];
  it.each(legs)('%s', (_, way, aside) => {
    const start = from(way[0]![0] === 270 ? from(ORIGIN, 90, 3000) : ORIGIN, 180, aside);
    expect(find(turtle(start, way, 20, 'd'))).toEqual([]);
  });

  it('laps, and an out-and-back with its turn behind the boxes or among them', () => {
    const back = (turn: number): Course =>
      turtle(ORIGIN, [
        [90, turn],
        [270, turn],
      ]);
    for (const turn of [3000, 1610, 1570])
      expect(legCrosses.find(layoutOf([back(turn)], [PIN])), String(turn)).toEqual([]);
    const lap: readonly TurtleLeg[] = [
      [90, 2000],
      [0, 500],
      [270, 2000],
      [180, 500],
    ];
    expect(legCrosses.find(layoutOf([turtle(ORIGIN, [...lap, ...lap])], [PIN]))).toEqual([]);
  });

  it('recorders’ noise of races that share the road', () => {
    const noisy = (id: string, phase: number): Course =>
      courseThrough(
        Array.from({ length: 301 }, (_, k) => from(from(ORIGIN, 90, 10 * k), 0, 4 * Math.sin(k / 3 + phase))),
        id,
      );
    expect(legCrosses.find(layoutOf([noisy('c', 0), noisy('d', 2)], [PIN]))).toEqual([]);
  });

  it('a recorded way back that wanders off the way out by more than a road is wide; drawn so, it leaves and returns', () => {
    const out = Array.from({ length: 301 }, (_, k) => from(ORIGIN, 90, 10 * k));
    const aside = (along: number): number => 20 * Math.max(0, 1 - Math.abs(along - 1560) / 60);
    const back = out.toReversed().map((at, k) => from(at, 180, aside(3000 - 10 * k)));
    const course = courseThrough([...out, ...back], 'c');
    expect(legCrosses.find(layoutOf([course], [PIN]))).toEqual([]);
    expect(legCrosses.find(layoutOf([{ ...course, drawn: 'centre' }], [PIN]))).not.toEqual([]);
  });

  it('a course that no race runs', () => {
    const layout = layoutOf([road, over(1450, 0)], [PIN], { races: [planRace('c', 'c')] });
    expect(legCrosses.find(layout)).toEqual([]);
  });

  it('courses that part or join: a fork is another finding', () => {
    const parting = turtle(
      ORIGIN,
      [
        [90, 1560],
        [150, 500],
      ],
      20,
      'd',
    );
    const joining = turtle(
      from(from(ORIGIN, 90, 1450), 210, 500),
      [
        [30, 500],
        [90, 1000],
      ],
      20,
      'd',
    );
    for (const other of [parting, joining]) expect(find(other)).toEqual([]);
  });
});
