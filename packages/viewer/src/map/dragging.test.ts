import { pointAt } from '@halfcup/core/geometry';
import { expect, test } from 'vitest';
import { openedFrom, straightPlan } from '../testing.ts';
import { openFiles } from '../state/open/open.ts';
import { measureMeant } from './dragging.ts';

/** Out by 0.1 degrees on the equator and back again on the same line. */
const { analysis } = openedFrom(
  openFiles(
    [
      straightPlan({
        courses: [
          {
            id: 'c',
            name: 'Out and back',
            line: [
              [0, 0],
              [0.05, 0],
              [0.1, 0],
              [0.05, 0.00001],
              [0, 0.00001],
            ],
            drawn: 'centre',
          },
        ],
      }),
    ],
    null,
  ),
);
const [course] = analysis.courses;

test('of two lanes the one is meant on which the station was', () => {
  const out = measureMeant(course!, [0.04, 0.00003], 4000);
  const back = measureMeant(course!, [0.04, 0.00003], 18_000);
  // 0.04 degrees of the equator of WGS 84: 4,452.78 m.
  expect(out).toBeCloseTo(4452.78, 0);
  expect(back).toBeCloseTo(2 * 11_131.95 - 4452.78, 0);
});

test('far from the course its nearest place is meant', () => {
  const measure = measureMeant(course!, [0.04, 0.02], 0);
  const { at } = pointAt(course!.course, measure)!;
  expect(at[0]).toBeCloseTo(0.04, 4);
});
