import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf, planRace } from '../testing/plans.ts';
import { raceUnserved } from './raceUnserved.ts';

const found = (length: number, races: readonly string[]): readonly Finding[] =>
  raceUnserved.find(
    layoutOf(
      [turtle(ORIGIN, [[90, length]], 100)],
      [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 }, races }],
      { races: [planRace('m', 'c'), planRace('h', 'c')] },
    ),
  );

it('a race that no station serves is an error, with its place in the plan', () => {
  expect(found(5000.1, ['m'])).toEqual([
    expect.objectContaining({
      code: 'race-unserved',
      severity: 'error',
      where: { path: '/races/1', race: 'h', course: 'c' },
      measured: 0,
      limit: 1,
    }),
  ]);
  expect(found(5000.1, ['m', 'h'])).toEqual([]);
});

it('a race no longer than a leg may be is only a warning', () => {
  expect(found(4999.9, ['m'])).toEqual([expect.objectContaining({ severity: 'warning' })]);
});

it('a course that begins at another measure than 0 counts by its length, and just as long as a leg is short', () => {
  const course = turtle(ORIGIN, [[90, 5000.1]], 100);
  const layout = layoutOf([course], [], { races: [{ ...planRace('m', 'c'), name: 'Long Bay' }] });
  const marked = {
    ...course,
    scale: { raw: course.scale.raw, measure: course.scale.measure.map((measure) => measure + 300) },
  };
  const severity = (maxSpacing: number): unknown =>
    raceUnserved
      .find({
        ...layout,
        courses: layout.courses.map((one) => ({ ...one, course: marked })),
        plan: { ...layout.plan, practice: { ...layout.plan.practice, maxSpacing } },
      })
      .map((one) => one.severity);
  expect([severity(5000), severity(5001), severity(5300)]).toEqual([['error'], ['warning'], ['warning']]);
  expect(raceUnserved.find(layout)[0]!.message).toContain('No station serves this race over its 5.00 km.');
});

it('each race is told by the length of its own course', () => {
  const courses = [turtle(ORIGIN, [[90, 9000]], 100, 'a'), turtle(ORIGIN, [[90, 3000]], 100, 'b')];
  expect(raceUnserved.find(layoutOf(courses, [])).map(({ severity, where }) => [where.course, severity])).toEqual([
    ['a', 'error'],
    ['b', 'warning'],
  ]);
});
