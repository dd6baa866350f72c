import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAR_FRAME, placeAfar } from './farFrame.ts';
import { type Spot, frameAt } from './frame.ts';
import { wrapDegrees } from './ellipsoid.ts';
import { direct } from './karney.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

describe('the frame of points far away', () => {
  it("holds Karney's distance and azimuth: 3 µm up to 20 km, 0.2 mm up to 50 km", () => {
    for (const [reach, within] of [
      [20_000, 3e-6],
      [FAR_FRAME, 2e-4],
    ] as const) {
      fc.assert(
        fc.property(real(-180, 180), real(-80, 80), real(0, 360), real(1, reach), (lon, lat, azimuthDeg, length) => {
          const at = direct(lon, lat, azimuthDeg, length);
          const spot: Spot = { east: 0, north: 0 };
          placeAfar(frameAt(lon, lat), wrapDegrees(at[0] - lon), at[1] - lat, spot);
          const azimuth = (azimuthDeg * Math.PI) / 180;
          const off = Math.hypot(spot.east - length * Math.sin(azimuth), spot.north - length * Math.cos(azimuth));
          expect(off).toBeLessThan(within);
        }),
        { seed: 1, numRuns: tries(2000) },
      );
    }
  });

  it('has the origin at 0', () => {
    const spot: Spot = { east: 1, north: 1 };
    placeAfar(frameAt(7, 45), 0, 0, spot);
    expect(spot).toEqual({ east: 0, north: 0 });
  });
});
