import { expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { type Course, rawLength } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanCourse } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { layoutOf, planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import { lengthDiffers, wanderOf } from './lengthDiffers.ts';

const course = turtle(ORIGIN, [[90, 42_195]], 200);
const stated = (length?: number, keys: Partial<PlanCourse> = {}): Layout => {
  const layout = layoutOf([course], [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 } }]);
  return {
    ...layout,
    plan: {
      ...layout.plan,
      courses: [planCourse('c', length === undefined ? {} : { drawn: 'centre', length, ...keys })],
    },
  };
};
const found = (length: number): readonly Finding[] => lengthDiffers.find(stated(length));

// 0.1 %, 42 m of a marathon: IAAF rule 240 (2004–05, 2009), read.
it('a stated length more than 0.1 % from the line is a warning, whichever is longer', () => {
  expect(rawLength(course)).toBeCloseTo(42_195, 2);
  expect(found(42_195 / 1.00101)).toEqual([
    expect.objectContaining({
      code: 'length-differs',
      severity: 'warning',
      measured: expect.closeTo(42_195, 2),
      unit: 'm',
      where: { path: '/courses/0/length', course: 'c' },
      message: expect.stringContaining('only a measurement on the road certifies a course'),
    }),
  ]);
  expect(found(42_195 / 1.00099)).toEqual([]);
  expect(found(42_195 / 0.99901)).toEqual([]);
  expect(found(42_195 / 0.99899)).toEqual([expect.objectContaining({ message: expect.stringContaining('shorter') })]);
});

it('cannot run where no course states a length', () => {
  expect(lengthDiffers.missing!(stated())).toBe('no-length');
  expect(lengthDiffers.missing!(stated(42_195))).toBeNull();
});

it('a recorded line may be off by 1 %, and is said to wander, a drawn line is not', () => {
  const recorded = (length: number): readonly Finding[] => lengthDiffers.find(stated(length, { drawn: 'recorded' }));
  expect(recorded(42_195 / 1.0099)).toEqual([]);
  expect(recorded(42_195 / 0.9901)).toEqual([]);
  expect(recorded(42_195 / 0.9899)).toEqual([expect.objectContaining({ message: expect.stringContaining('shorter') })]);
  expect(recorded(42_195 / 1.0101)[0]!.message).toContain(
    'longer than the stated 41.77 km (a recorded track usually runs long). By its noise a recorded line may be off 418 m;',
  );
  expect(found(42_000)[0]!.message).not.toContain('recorded');
});

it('a recorded line may be longer by what its noise adds, and no shorter for it', () => {
  // Every 5 m of a straight road so many metres to one side and to the other: Pythagoras tells how much longer it is.
  const zigzag = (aside: number): Course =>
    courseThrough(Array.from({ length: 1001 }, (_, k) => from(from(ORIGIN, 90, 5 * k), k % 2 === 0 ? 0 : 180, aside)));
  const noisy = zigzag(0.6);
  expect(rawLength(noisy)).toBeCloseTo(1000 * Math.hypot(5, 1.2), 0);
  expect(wanderOf(noisy)).toBeCloseTo(rawLength(noisy) - 5000, -1.5);
  expect(wanderOf(turtle(ORIGIN, [[90, 5000]]))).toBeCloseTo(0, 2);
  const of = (course: Course, length: number): readonly Finding[] => {
    const layout = layoutOf([course], [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 } }]);
    return lengthDiffers.find({ ...layout, plan: { ...layout.plan, courses: [planCourse('c', { length })] } });
  };
  // 141 m longer by its noise, and 1 %.
  expect(of(noisy, 4980)).toEqual([]);
  expect(of(noisy, 4930)).toHaveLength(1);
  expect(of(noisy, rawLength(noisy) / 0.988)).toHaveLength(1);
});

it('a length that is surely another course’s is an error, and not used', () => {
  const used = (length: number): Finding | undefined => {
    const plan = planOf({
      courses: [planCourse('c', { line: turtlePoints(ORIGIN, [[90, 5000]], 100), drawn: 'centre', length })],
      races: [planRace('c', 'c')],
      stations: [planStation({ on: { course: 'c', measure: 2000, side: 'right', offset: 5 } })],
    });
    return valueOf(analyse(plan, { gpx: new Map() })).findings.find(({ code }) => code === 'length-differs');
  };
  expect(used(4500)).toMatchObject({ severity: 'error', params: { used: false } });
  expect(used(4500)!.message).toContain('so far off, the stated length is not used');
  expect(used(4600)).toMatchObject({ severity: 'warning', params: { used: true } });
});

it('the start’s own mark counts', () => {
  // Measures that begin at 200 m: the line from there to 42,395 m is as long as it should be.
  const marked = {
    ...course,
    scale: { raw: course.scale.raw, measure: course.scale.measure.map((measure) => measure + 200) },
  };
  const shifted = stated(42_395);
  expect(
    lengthDiffers.find({ ...shifted, courses: shifted.courses.map((indexed) => ({ ...indexed, course: marked })) }),
  ).toEqual([]);
});

it('tells both ends of what is tolerated', () => {
  expect(found(42_000)[0]!.limit).toEqual([expect.closeTo(41_958, 6), expect.closeTo(42_042, 6)]);
  expect(found(42_000)[0]!.message).toContain(
    'The line is 42.20 km, 195 m longer than the stated 42.00 km. Course measurement allows 42 m;',
  );
});
