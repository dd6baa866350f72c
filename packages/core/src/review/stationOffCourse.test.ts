import { expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { stationOffCourse } from './stationOffCourse.ts';

const found = (away: number, snapRadius?: number): readonly Finding[] =>
  stationOffCourse.find(
    layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ at: from(from(ORIGIN, 90, 1500), 180, away) }], {
      practice: snapRadius === undefined ? {} : { snapRadius },
    }),
  );

it('a station over 60 m from every course it serves is an error, with the nearest place', () => {
  expect(found(60.01)).toEqual([
    expect.objectContaining({
      code: 'station-off-course',
      severity: 'error',
      measured: expect.closeTo(60.01, 3),
      limit: 60,
      unit: 'm',
      where: expect.objectContaining({
        path: '/stations/0',
        station: 's1',
        course: 'c',
        measure: expect.closeTo(1500, 1),
      }),
    }),
  ]);
  expect(found(59.99)).toEqual([]);
});

it('the plan’s own radius is the limit', () => {
  expect(found(20.01, 20)).toEqual([expect.objectContaining({ limit: 20 })]);
  expect(found(60.01, 61)).toEqual([]);
});

it('a station by a course of a race that it does not serve is off its course', () => {
  const courses = [turtle(ORIGIN, [[90, 3000]], 20, 'a'), turtle(from(ORIGIN, 0, 500), [[90, 3000]], 20, 'b')];
  const by = { at: from(from(ORIGIN, 90, 1500), 180, 5) };
  expect(stationOffCourse.find(layoutOf(courses, [{ ...by, races: ['b'] }]))).toEqual([
    expect.objectContaining({ measured: expect.closeTo(505, 0), where: expect.objectContaining({ course: 'b' }) }),
  ]);
  expect(stationOffCourse.find(layoutOf(courses, [by]))).toEqual([]);
});

it('a station whose longitude and latitude were swapped is told so, with the place that is meant', () => {
  const courses = [turtle(ORIGIN, [[90, 3000]])];
  const [lon, lat] = from(from(ORIGIN, 90, 1500), 180, 5);
  const [finding] = stationOffCourse.find(layoutOf(courses, [{ at: [lat, lon] as readonly number[] as LonLat }]));
  expect(finding?.message).toContain(`Longitude comes first: the two numbers may be swapped (${lon}, ${lat}).`);
  expect(found(90_000)[0]?.message).toContain('Move the pin to the road');
});
