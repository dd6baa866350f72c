import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { DEGREES, azimuthDifference } from './ellipsoid.ts';
import { eastNorth, fromEastNorth } from './frame.ts';
import { direct, inverse } from './karney.ts';

const place = fc.record({ lon: fc.double({ min: -180, max: 180, noNaN: true }), lat: fc.double({ min: -89.9, max: 89.9, noNaN: true }), azimuthDeg: fc.double({ min: 0, max: 359.999, noNaN: true }) });
const distance = (max: number): fc.Arbitrary<number> => fc.double({ min: 0.01, max, noNaN: true });

describe('the local frame', () => {
  it('keeps distance and azimuth of the geodesic: 1 µm within 250 m, 1 mm within 10 km', () => {
    for (const [reach, within] of [[250, 1e-6], [10_000, 1e-3]] as const) {
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
