import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { courseLength } from '../course/course.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { itemOutside } from './itemOutside.ts';

const course = turtle(ORIGIN, [[90, 3000]], 100);
const found = (measure: number): readonly Finding[] =>
  itemOutside.find(layoutOf([course], [{ on: { course: 'c', measure, side: 'right', offset: 5 } }]));

it('a sign before the start is an error that says how far', () => {
  expect(found(91.43)).toEqual([
    expect.objectContaining({
      code: 'item-outside',
      severity: 'error',
      measured: expect.closeTo(-0.01, 4),
      limit: [0, courseLength(course)],
      unit: 'm',
      where: expect.objectContaining({ path: '/stations/0', station: 's1', course: 'c', item: 'sign' }),
    }),
  ]);
  expect(found(91.45)).toEqual([]);
});

it('a sign just at the start is on the course, whatever rounding says', () => {
  expect(found(91.44)).toEqual([]);
  const layout = layoutOf([course], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 } }]);
  const station = layout.stations[0]!;
  const [direction] = station.directions;
  const withSign = (at: number): readonly Finding[] => {
    const items = direction!.items.map((item) =>
      item.kind === 'sign' ? Object.assign({}, item, { from: at, to: at }) : item,
    );
    return itemOutside.find({ ...layout, stations: [{ ...station, directions: [{ ...direction!, items }] }] });
  };
  expect(withSign(-1e-9)).toEqual([]);
  expect(withSign(courseLength(course) + 1e-9)).toEqual([]);
  expect(withSign(-1e-3)).toHaveLength(1);
});

it('a trash drop past the finish is an error', () => {
  // From the pin to the last box: 22 ft of tables and the gap between, and 100 yd.
  const reach = 6.7056 + 91.44;
  expect(found(courseLength(course) - reach + 0.01)).toEqual([
    expect.objectContaining({
      measured: expect.closeTo(courseLength(course) + 0.01, 4),
      where: expect.objectContaining({ item: 'trash' }),
    }),
  ]);
  expect(found(courseLength(course) - reach - 0.01)).toEqual([]);
});

it('the start is where the course’s own measure begins', () => {
  const marked = {
    ...course,
    scale: { raw: course.scale.raw, measure: course.scale.measure.map((measure) => measure + 500) },
  };
  const at = (measure: number): readonly Finding[] =>
    itemOutside.find(layoutOf([marked], [{ on: { course: 'c', measure, side: 'right', offset: 5 } }]));
  expect(at(591.45)).toEqual([]);
  expect(at(591.43)).toEqual([
    expect.objectContaining({
      limit: [500, courseLength(marked)],
      message: expect.stringContaining('0.1 m before the start'),
    }),
  ]);
});

it('says how far before the start or past the finish, or across what, an item would stand', () => {
  expect(found(50)[0]!.message).toContain(
    'The sign would stand 42 m before the start, where there is no course. Move the station forward 42 m,',
  );
  expect(found(2930)[0]!.message).toMatch(
    /^The trash would stand 29 m past the finish, .* Move the station back 29 m,/u,
  );
  expect(found(2930)[0]!.where.measure).toBeCloseTo(3028.1456, 2);
  expect(found(50)[0]!.where.measure).toBeCloseTo(-41.44, 2);
});

it('several items are one finding, told by what lies farthest out', () => {
  // Gel stands from 9.4488 m to 7.62 m before the pin, the sign 91.44 m before it.
  const [finding, ...more] = itemOutside.find(
    layoutOf([course], [{ on: { course: 'c', measure: 5, side: 'right', offset: 5 }, serves: ['gel', 'water'] }]),
  );
  expect(more).toEqual([]);
  expect(finding).toMatchObject({
    measured: expect.closeTo(-95.8888, 3),
    params: { item: 'sign', items: ['sign', 'gel'] },
    message: expect.stringContaining('The sign and the gel would stand up to 96 m before the start'),
  });
});
