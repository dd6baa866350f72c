import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inverse } from '../geodesy/karney.ts';
import { courseThrough, from } from '../testing/courses.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import { drawnOn, planeOf, shareNearest } from './plane.ts';

describe('the plane of a course', () => {
  it('keeps lengths to 0.1 % up to 40 km from the middle, at every latitude and across the antimeridian', () =>
    fc.assert(
      fc.property(
        real(-180, 180),
        real(-88, 88),
        real(0, 360),
        real(0, 40_000),
        real(0, 360),
        (lon, lat, way, far, turn) => {
          const plane = planeOf(courseThrough([from([lon, lat], 90, 300), from([lon, lat], 270, 300)]));
          const a = from([lon, lat], way, far);
          const b = from(a, turn, 100);
          const { x, y } = drawnOn(plane, { lon: Float64Array.of(a[0], b[0]), lat: Float64Array.of(a[1], b[1]) });
          const length = inverse(a[0], a[1], b[0], b[1]).length;
          expect(Math.abs(Math.hypot(x[1]! - x[0]!, y[1]! - y[0]!) - length)).toBeLessThan(0.1);
        },
      ),
      { seed: 4, numRuns: tries(1000) },
    ));

  it('finds the nearest place of a segment, its ends included, and the first end of one without length', () => {
    expect(shareNearest(3, 5, 0, 0, 10, 0)).toBeCloseTo(0.3, 12);
    expect(shareNearest(-3, 5, 0, 0, 10, 0)).toBe(0);
    expect(shareNearest(13, 5, 0, 0, 10, 0)).toBe(1);
    expect(shareNearest(3, 5, 1, 1, 1, 1)).toBe(0);
  });
});
