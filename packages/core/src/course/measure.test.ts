import { expect, it } from 'vitest';
import { inverse } from '../geodesy/karney.ts';
import { ORIGIN, courseThrough, turtlePoints } from '../testing/courses.ts';
import { measureLine } from './measure.ts';

it('the raw measure is the running sum of geodesics from 0, the same as that of a course', () => {
  const points = turtlePoints(
    ORIGIN,
    [
      [40, 500],
      [130, 300],
    ],
    90,
  );
  const [lon, lat] = [Float64Array.from(points, (at) => at[0]), Float64Array.from(points, (at) => at[1])];
  const raw = measureLine(lon, lat);
  expect(raw[0]).toBe(0);
  // A course is built by series, which differ in the last digits.
  expect([...raw]).toEqual([...courseThrough(points).raw].map((value) => expect.closeTo(value, 8) as number));
  for (let i = 1; i < points.length; i++)
    expect(raw[i]! - raw[i - 1]!).toBeCloseTo(inverse(...points[i - 1]!, ...points[i]!).length, 6);
  expect(measureLine(new Float64Array(0), new Float64Array(0))).toEqual(new Float64Array(0));
  expect(measureLine(Float64Array.of(5), Float64Array.of(5))).toEqual(Float64Array.of(0));
});
