import { expect, it } from 'vitest';
import { analyse } from '../analyse.ts';
import { rawLength } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import { ORIGIN, courseThrough, from, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { gaussian } from '../testing/placed.ts';
import { layoutOf, planCourse, planOf, planRace, planStation } from '../testing/plans.ts';
import { lengthDiffers } from './lengthDiffers.ts';

const course = turtle(ORIGIN, [[90, 42_195]], 200);
const stated = (length?: number): Layout => {
  const layout = layoutOf([course], [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 } }]);
  return { ...layout, plan: { ...layout.plan, courses: [planCourse('c', length === undefined ? {} : { length })] } };
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

it('a recorded track is said to wander, a drawn line is not, and the start’s own mark counts', () => {
  const layout = stated(42_000);
  expect(lengthDiffers.find(layout)[0]!.message).toContain('(a recorded track usually runs long)');
  expect(lengthDiffers.find(layout)[0]!.message).toContain('195 m longer');
  const drawn = {
    ...layout,
    plan: { ...layout.plan, courses: layout.plan.courses.map((one) => ({ ...one, drawn: 'centre' as const })) },
  };
  expect(lengthDiffers.find(drawn)[0]!.message).not.toContain('recorded');
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
    'The line is 42.20 km, 195 m longer than the stated 42.00 km (a recorded track usually runs long). Course measurement allows 42 m;',
  );
});

it('a recorded line may be longer by what it wanders, and a little; a drawn one may not', () => {
  const normal = gaussian(7);
  const wandering = courseThrough(
    turtlePoints(ORIGIN, [[90, 10_000]], 8).map((at) => from(from(at, 0, 0.5 * normal()), 90, 0.5 * normal())),
  );
  // White noise of 0.5 m at points each 8 m: (2 · 0.5²) / (2 · 8²) = 0.4 % longer, to first order.
  expect(rawLength(wandering) / 10_000 - 1).toBeCloseTo(0.004, 3);
  const layout = layoutOf([wandering], [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 } }]);
  const foundOn = (length: number, drawn: 'recorded' | 'centre' = 'recorded'): readonly Finding[] =>
    lengthDiffers.find({ ...layout, plan: { ...layout.plan, courses: [planCourse('c', { length, drawn })] } });
  expect(foundOn(10_000)).toEqual([]);
  expect(foundOn(10_000, 'centre')).toHaveLength(1);
  // Half a kilometre forgotten is no wander, and neither is a line that is too short.
  expect(foundOn(9500)[0]!.message).toContain('Measuring and the wander of the track allow');
  expect(foundOn(9500)[0]!.message).toContain('only a measurement on the road certifies a course');
  expect(foundOn(rawLength(wandering) * 1.002)[0]!.message).toContain('Course measurement allows 10 m');
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
