import geodesic from 'geographiclib-geodesic';
import { describe, expect, it, vi } from 'vitest';
import { DEGREES, azimuthDifference, normalAzimuth, wrapDegrees } from './ellipsoid.ts';
import { direct, inverse } from './karney.ts';
import { segmentAzimuthDeg, segmentLength } from './segment.ts';

/** Uniform in 0 … 1 (excluded), repeatable. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
}

/** 10,000 segments of 0.1 m to 2,000 km, at all latitudes, at the poles, across the antimeridian and the equator. */
function segments(count: number, longest: number): { lon1: number; lat1: number; lon2: number; lat2: number }[] {
  const random = generator(20261125);
  return Array.from({ length: count }, (_, k) => {
    const kind = k % 5;
    const lat1 =
      kind === 0 ? 90 - random() * 0.01 : kind === 1 ? -90 + random() * 0.01 : Math.asin(2 * random() - 1) * DEGREES;
    const lon1 = kind === 2 ? 180 - random() * 0.001 : random() * 360 - 180;
    const length = 0.1 * (longest / 0.1) ** random();
    const [lon2, lat2] = direct(lon1, lat1, random() * 360, length);
    return { lon1, lat1, lon2, lat2 };
  });
}

describe('length and azimuth of a segment', () => {
  it('agree with geographiclib-geodesic to 1 µm up to 200 m, and to 1e-9 beyond, everywhere on the globe', () => {
    for (const { lon1, lat1, lon2, lat2 } of segments(10_000, 2e6)) {
      const truth = inverse(lon1, lat1, lon2, lat2).length;
      const error = Math.abs(segmentLength(lon1, lat1, lon2, lat2) - truth);
      expect(error, `${lon1},${lat1} to ${lon2},${lat2}`).toBeLessThan(truth <= 200 ? 1e-6 : 1e-9 * truth);
    }
  });

  it('agree in azimuth within 1e-5° on segments of 1 to 200 m', () => {
    for (const { lon1, lat1, lon2, lat2 } of segments(10_000, 200)) {
      const truth = inverse(lon1, lat1, lon2, lat2);
      if (truth.length < 1) continue;
      expect(
        azimuthDifference(segmentAzimuthDeg(lon1, lat1, lon2, lat2), truth.azimuthDeg),
        `${lon1},${lat1} to ${lon2},${lat2}`,
      ).toBeLessThan(1e-5);
    }
  });

  it('have no length and azimuth 0 between equal points, also when one says 180° and the other −180°', () => {
    expect(segmentLength(12, 34, 12, 34)).toBe(0);
    expect(segmentAzimuthDeg(12, 34, 12, 34)).toBe(0);
    expect(segmentLength(180, 34, -180, 34)).toBe(0);
  });
});

// Source: GDA technical manual, Geoscience Australia (Flinders Peak to Buninyong; quoted, on GRS 80, whose difference from
// WGS 84 is 0.1 mm in the semi-minor axis); geographiclib-geodesic 2.2.0, its test table and GeodSolve0 (read);
// Land's End to John o' Groats (quoted).
const dms = (degrees: number, minutes: number, seconds: number): number =>
  Math.sign(degrees) * (Math.abs(degrees) + minutes / 60 + seconds / 3600);
const LINES = [
  {
    name: 'Flinders Peak to Buninyong',
    from: [dms(144, 25, 29.5244), dms(-37, 57, 3.7203)],
    to: [dms(143, 55, 35.3839), dms(-37, 39, 10.1561)],
    length: 54972.271,
    within: 1e-3,
    azimuthDeg: dms(306, 52, 5.37),
    azimuthWithin: 0.01 / 3600,
  },
  {
    name: 'row 1 of the table',
    from: [-139.44815, 35.60777],
    to: [-69.95921, -11.17491],
    length: 8935244.56048183,
    within: 1e-7,
    azimuthDeg: 111.09874842956033,
    azimuthWithin: 1e-11,
  },
  {
    name: 'a row of 2,319 km',
    from: [-174.47484, -19.79938],
    to: [-154.35109, -11.99349],
    length: 2319004.860116939,
    within: 1e-7,
    azimuthDeg: null,
    azimuthWithin: 0,
  },
  {
    name: 'GeodSolve0',
    from: [-73.8, 40.6],
    to: [2.55, 49.01666667],
    length: 5853226,
    within: 0.5,
    azimuthDeg: 53.47022,
    azimuthWithin: 5e-6,
  },
  {
    name: "Land's End to John o' Groats",
    from: [-5.71475, 50.06632],
    to: [-3.07009, 58.64402],
    length: 969954.166314,
    within: 1e-6,
    azimuthDeg: 9.141877,
    azimuthWithin: 1e-6,
  },
] as const;

describe('published lines', () => {
  for (const line of LINES) {
    it(`${line.name} has its published length and azimuth`, () => {
      const [lon1, lat1] = line.from;
      const [lon2, lat2] = line.to;
      expect(Math.abs(segmentLength(lon1, lat1, lon2, lat2) - line.length)).toBeLessThan(line.within);
      if (line.azimuthDeg !== null)
        expect(azimuthDifference(segmentAzimuthDeg(lon1, lat1, lon2, lat2), line.azimuthDeg)).toBeLessThanOrEqual(
          line.azimuthWithin,
        );
    });
  }
});

describe('angles', () => {
  it('wrap to −180 (excluded) … 180, and azimuths to 0 … 360 (excluded), without a negative zero', () => {
    expect([wrapDegrees(190), wrapDegrees(-190), wrapDegrees(540), wrapDegrees(-180), wrapDegrees(0)]).toEqual([
      -170, 170, 180, 180, 0,
    ]);
    expect([normalAzimuth(-90), normalAzimuth(720), normalAzimuth(-1e-20)]).toEqual([270, 0, 0]);
    expect(Object.is(normalAzimuth(-0), 0)).toBe(true);
  });
});

describe('the exact geodesic', () => {
  const solved = (work: () => void): number => {
    const solve = vi.spyOn(geodesic.Geodesic.WGS84, 'Inverse');
    work();
    const count = solve.mock.calls.length;
    solve.mockRestore();
    return count;
  };
  const by = (lat: number, azimuthDeg: number, length: number): [number, number] => {
    const [lon2, lat2] = direct(10, lat, azimuthDeg, length);
    return [
      solved(() => void segmentLength(10, lat, lon2, lat2)),
      solved(() => void segmentAzimuthDeg(10, lat, lon2, lat2)),
    ];
  };

  it('is not solved up to 200 m within 80° of latitude, whichever way the segment runs', () => {
    for (const lat of [-79.9, -45, 0, 45, 79.9])
      for (const azimuthDeg of [0, 45, 90, 180, 225, 270]) expect(by(lat, azimuthDeg, 199.9)).toEqual([0, 0]);
  });

  it('is solved over 200 m, and from 80° of latitude on', () => {
    for (const azimuthDeg of [0, 45, 90, 180, 225, 270]) expect(by(45, azimuthDeg, 200.1)).toEqual([1, 1]);
    for (const lat of [-80.1, -80, 80, 80.1]) expect(by(lat, 90, 100)).toEqual([1, 1]);
  });
});
