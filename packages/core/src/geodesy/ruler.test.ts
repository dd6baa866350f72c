import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { direct, inverseLength } from './karney.ts';
import { ruler } from './ruler.ts';
import { segmentLength } from './segment.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

describe('a ruler', () => {
  it('holds Karney to 0.4 µm along any line of short segments, and to 1e-9 where they are long', () => {
    const place = fc.tuple(real(-180, 180), real(-89, 89));
    const ways = fc.array(fc.tuple(real(0, 360), real(0.01, 400)), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(place, ways, ([lon, lat], steps) => {
        const length = ruler();
        let from: readonly [number, number] = [lon, lat];
        for (const [azimuthDeg, metres] of steps) {
          const to = direct(from[0], from[1], azimuthDeg, metres);
          const truth = inverseLength(from[0], from[1], to[0], to[1]);
          expect(Math.abs(length(from[0], from[1], to[0], to[1]) - truth)).toBeLessThan(4e-7);
          from = to;
        }
      }),
      { seed: 1, numRuns: tries(500) },
    );
  });

  it('measures the same after a jump to another place as one that has begun there', () => {
    const length = ruler();
    length(0, 0, 0.001, 0.001);
    for (const lat of [0.0199, 0.0201, 45, -79.9, 79.9])
      expect(length(10, lat, 10.001, lat + 0.001)).toBeCloseTo(segmentLength(10, lat, 10.001, lat + 0.001), 7);
  });

  it('gives NaN for a number that is none', () => {
    for (const [lon, lat] of [
      [NaN, 5],
      [5, NaN],
    ] as const) {
      expect(ruler()(lon, lat, 5, 5)).toBeNaN();
      expect(ruler()(5, 5, lon, lat)).toBeNaN();
    }
  });
});
