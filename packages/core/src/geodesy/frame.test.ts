import geodesic from 'geographiclib-geodesic';
import { describe, expect, it, vi } from 'vitest';
import fc from 'fast-check';
import { DEGREES, azimuthDifference } from './ellipsoid.ts';
import { eastNorth, fromEastNorth, project } from './frame.ts';
import { direct, inverse } from './karney.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

const place = fc.record({ lon: real(-180, 180), lat: real(-89.9, 89.9), azimuthDeg: real(0, 359.999) });
const distance = (max: number): fc.Arbitrary<number> => real(0.01, max);

describe('the local frame', () => {
  it('keeps distance and azimuth of the geodesic: 1 µm within 250 m, 1 mm within 20 km', () => {
    for (const [reach, within] of [
      [250, 1e-6],
      [5000, 1e-3],
      [20_000, 1e-3],
    ] as const) {
      fc.assert(
        fc.property(place, distance(reach), ({ lon, lat, azimuthDeg }, length) => {
          const { east, north } = eastNorth([lon, lat], direct(lon, lat, azimuthDeg, length));
          expect(Math.abs(Math.hypot(east, north) - length)).toBeLessThan(within);
          expect(
            length * Math.sin(azimuthDifference(Math.atan2(east, north) * DEGREES, azimuthDeg) / DEGREES),
          ).toBeLessThan(within);
        }),
        { seed: 1, numRuns: tries(2000) },
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
      { seed: 2, numRuns: tries(2000) },
    );
  });
});

describe('the exact geodesic of a frame', () => {
  const solved = (what: 'Inverse' | 'Direct', work: () => void): number => {
    const solve = vi.spyOn(geodesic.Geodesic.WGS84, what);
    work();
    const count = solve.mock.calls.length;
    solve.mockRestore();
    return count;
  };
  const there = (lat: number, dLon: number, dLat: number): number =>
    solved('Inverse', () => void eastNorth([0, lat], [dLon, lat + dLat]));

  it('is not solved within 0.025° of the origin, and from there on is', () => {
    for (const lat of [-79.9, 0, 79.9])
      for (const [dLon, dLat] of [
        [0.0249, 0.0249],
        [-0.0249, -0.0249],
      ] as const)
        expect(there(lat, dLon, dLat)).toBe(0);
    for (const [dLon, dLat] of [
      [0.025, 0],
      [-0.025, 0],
      [0, 0.025],
      [0, -0.025],
      [0.03, 0.01],
      [0.01, 0.03],
    ] as const)
      expect(there(0, dLon, dLat)).toBe(1);
    for (const lat of [-80, 80, 85]) expect(there(lat, 0.001, 0)).toBe(1);
  });

  it('is not solved for a point up to 250 m away, and beyond is', () => {
    const back = (lat: number, east: number, north: number): number =>
      solved('Direct', () => void fromEastNorth([0, lat], east, north));
    expect([back(45, 250, 0), back(45, 0, -250), back(-79.9, -150, 200)]).toEqual([0, 0, 0]);
    expect([back(45, 250.001, 0), back(45, 180, 180), back(80, 1, 0), back(-80, 0, 1)]).toEqual([1, 1, 1, 1]);
  });
});

it('columns are projected from the first point taken on, and nothing else is written', () => {
  const [lon, lat] = [Float64Array.of(5, 0.001, 0.002, 5), Float64Array.of(5, 0, 0.001, 5)];
  const [east, north] = [new Float64Array(3).fill(7), new Float64Array(3).fill(7)];
  project([0, 0], lon, lat, 1, 2, east, north);
  expect([...east]).toEqual([expect.closeTo(111.3195, 3), expect.closeTo(222.639, 3), 7]);
  expect([...north]).toEqual([expect.closeTo(0, 9), expect.closeTo(110.5743, 3), 7]);
});

it('the origin is its own point, its longitude within ±180', () => {
  expect(fromEastNorth([190, 10], 0, 0)).toEqual([-170, 10]);
  expect(fromEastNorth([179.9999, 10], 100, 0)[0]).toBeLessThan(-179.99);
  expect(eastNorth([179.9999, 10], [-179.9999, 10]).east).toBeCloseTo(21.93, 1);
});
