/** Grades along a course whose heights are known. */
import { describe, expect, it } from 'vitest';
import { buildCourse } from './build.ts';
import { courseLength } from './course.ts';
import { gradeBetween, steepStretches } from './grades.ts';
import { valueOf } from '../testing/courses.ts';

/** A straight course with a height every 100 m. */
function hilly(heights: readonly number[]) {
  const step = 100 / 111_319.49;
  return valueOf(
    buildCourse({
      id: 'c',
      name: 'c',
      segments: [
        {
          lon: Float64Array.from(heights, (_, k) => -30 + k * step),
          lat: new Float64Array(heights.length),
          ele: Float64Array.from(heights),
        },
      ],
      drawn: 'centre',
    }),
  );
}

describe('Steep stretches', () => {
  it('begin and end where the grade over 50 m passes the limit, to 10 m', () => {
    // Level, up 8 %, level, down 6 %, level: over 50 m half a ramp's grade stands 0 m from its end.
    const found = steepStretches(hilly([0, 0, 8, 16, 16, 16, 10, 10, 10]), 0.0401);
    expect(found.map(({ from, to, grade }) => [from, to, Math.round(grade * 1000)])).toEqual([
      [100, 300, 80],
      [510, 590, -60],
    ]);
  });

  it('are apart uphill and downhill, and none is found in level ground or without elevations', () => {
    const found = steepStretches(hilly([0, 10, 0, 0]), 0.05);
    expect(found.map(({ grade }) => Math.sign(grade))).toEqual([1, -1]);
    expect(found[0]!.to).toBeLessThanOrEqual(found[1]!.from);
    expect(steepStretches(hilly([5, 5, 5]), 0.01)).toEqual([]);
    const flat = { ...hilly([0, 10]), ele: null };
    expect(steepStretches(flat, 0.01)).toEqual([]);
    expect(gradeBetween(flat, 0, 50)).toBeNull();
  });

  it('reach both ends of the course, and refuse a limit that is none', () => {
    const course = hilly([0, 10, 20]);
    const [only] = steepStretches(course, 0.05);
    expect([only!.from, only!.to]).toEqual([0, courseLength(course)]);
    expect(() => steepStretches(course, 0)).toThrow(RangeError);
    expect(() => steepStretches(course, 0.04, Number.NaN)).toThrow(RangeError);
    expect(() => gradeBetween(course, Number.NaN, 1)).toThrow(RangeError);
  });
});
