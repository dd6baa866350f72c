import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { DEGREES, azimuthDifference } from './ellipsoid.ts';
import { eastNorth, fromEastNorth } from './frame.ts';
import { direct, inverse } from './karney.ts';
import { real } from '../testing/numbers.ts';

const place = fc.record({ lon: real(-180, 180), lat: real(-89.9, 89.9), azimuthDeg: real(0, 359.999) });
const distance = (max: number): fc.Arbitrary<number> => real(0.01, max);

describe('the local frame', () => {
  it('keeps distance and azimuth of the geodesic: 1 µm within 250 m, 1 mm within 20 km', () => {
    for (const [reach, within] of [[250, 1e-6], [5000, 1e-3], [20_000, 1e-3]] as const) {
      fc.assert(
        fc.property(place, distance(reach), ({ lon, lat, azimuthDeg }, length) => {
          const { east, north } = eastNorth([lon, lat], direct(lon, lat, azimuthDeg, length));
          expect(Math.abs(Math.hypot(east, north) - length)).toBeLessThan(within);
          expect(length * Math.sin(azimuthDifference(Math.atan2(east, north) * DEGREES, azimuthDeg) / DEGREES)).toBeLessThan(within);
        }),
        { seed: 1, numRuns: 2000 },
      );
    }
  });

  it('gives the same point back, to 1 µm', () => {
    fc.assert(
      fc.property(place, distance(5000), ({ lon, lat, azimuthDeg }, length) => {
        const east = length * Math.sin(azimuthDeg / DEGREES);
        const north = length * Math.cos(azimuthDeg / DEGREES);
        const at = fromEastNorth([lon, lat], east, north);
        const truth = direct(lon, lat, azimuthDeg, length);
        expect(inverse(at[0], at[1], truth[0], truth[1]).length).toBeLessThan(1e-6);
      }),
      { seed: 2, numRuns: 2000 },
    );
  });
});
