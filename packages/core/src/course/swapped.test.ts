import { expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { indexCourse } from './segmentIndex.ts';
import { swappedPosition } from './swapped.ts';

/** The two numbers in the wrong order, which the types would refuse. */
const turned = (at: LonLat): LonLat => at.toReversed() as readonly number[] as LonLat;
const indexed = indexCourse(turtle(ORIGIN, [[90, 1000]]));

it('a point whose two numbers changed places is told by the place that they would be, near the course', () => {
  expect(swappedPosition(indexed, turned(ORIGIN))).toEqual(ORIGIN);
  const near = from(ORIGIN, 180, 99_900);
  expect(swappedPosition(indexed, turned(near))).toEqual(near);
  const far = from(ORIGIN, 180, 100_100);
  expect(swappedPosition(indexed, turned(far))).toBeNull();
});

it('a point that lies within 100 km of the course itself is meant so, and one that has no latitude to swap is not looked at', () => {
  expect(swappedPosition(indexed, from(ORIGIN, 0, 99_900))).toBeNull();
  // On a course by the equator both readings may be near: the point stays what it is.
  const equator = indexCourse(turtle([0.1, 0.2], [[90, 1000]]));
  expect(swappedPosition(equator, [0.2, 0.1])).toBeNull();
  expect(swappedPosition(indexed, [95, 10])).toBeNull();
  expect(swappedPosition(indexed, [-95, 10])).toBeNull();
  const east = indexCourse(turtle([20, 89.9], [[90, 1000]]));
  expect(swappedPosition(east, [90, 20])).toEqual([20, 90]);
});
