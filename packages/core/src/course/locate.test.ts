import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import type { LonLat } from '../finding.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { inverse } from '../geodesy/karney.ts';
import {
  ORIGIN,
  courseOfSegments,
  courseThrough,
  from,
  segmentThrough,
  turtle,
  turtlePoints,
  valueOf,
} from '../testing/courses.ts';
import { buildCourse } from './build.ts';
import { type Course, courseLength, rawLength } from './course.ts';
import { ascentOf, elevationAt, groundAt, meanAzimuth, pointAt, sliceLine } from './locate.ts';
import { measureOf, rawOf } from './scale.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

const apart = (a: LonLat, b: LonLat): number => inverse(a[0], a[1], b[0], b[1]).length;
const lineLength = (line: readonly LonLat[]): number =>
  line.slice(1).reduce((sum, to, k) => sum + apart(line[k]!, to), 0);

/** 300 m east, a jump of 500 m north that is skipped, 200 m east. */
const skipped = (): Course =>
  courseOfSegments(
    [turtlePoints(ORIGIN, [[90, 300]], 100), turtlePoints(from(from(ORIGIN, 90, 300), 0, 500), [[90, 200]], 100)],
    'skip',
  );

const legs = fc.array(fc.tuple(real(0, 360), real(5, 400)), { minLength: 1, maxLength: 12 });
const share = fc.integer({ min: 0, max: 100_000 }).map((part) => part / 100_000);

/** 300 m that climb and fall. */
const climb = (): Course =>
  valueOf(
    buildCourse({
      id: 'c',
      name: 'c',
      segments: [segmentThrough(turtlePoints(ORIGIN, [[90, 300]], 100), [10, 30, 20, 25])],
    }),
  );

/** 1,000 m, of which the first 400 are known to be 410. */
const scaled = (): Course => {
  const course = turtle(ORIGIN, [[90, 1000]], 100);
  return { ...course, scale: { raw: [0, 400, rawLength(course)], measure: [0, 410, 1000] } };
};

const wrap = (lon: number): number => lon - 360 * Math.round(lon / 360);

describe('the point at a measure', () => {
  it('stands where Karney puts it, on a leg, at a vertex and at both ends', () => {
    const course = turtle(
      ORIGIN,
      [
        [40, 500],
        [130, 300],
      ],
      100,
    );
    const corner = from(ORIGIN, 40, 500);
    const cases: [number, LonLat][] = [
      [0, ORIGIN],
      [137, from(ORIGIN, 40, 137)],
      [500, corner],
      [650.5, from(corner, 130, 150.5)],
      [courseLength(course), from(corner, 130, 300)],
    ];
    for (const [measure, truth] of cases) expect(apart(pointAt(course, measure)!.at, truth)).toBeLessThan(1e-5);
  });

  it('has the running direction of its leg, and at a corner the mean of both', () => {
    const course = turtle(
      ORIGIN,
      [
        [40, 500],
        [130, 300],
      ],
      100,
    );
    const azimuth = (measure: number): number => pointAt(course, measure)!.azimuthDeg;
    expect(azimuth(0)).toBeCloseTo(40, 4);
    expect(azimuth(499.99)).toBeCloseTo(40, 2);
    expect(azimuth(course.raw[5]!)).toBeCloseTo(85, 2);
    // Also where a measure comes a rounding away from the corner's.
    for (const rounding of [-1e-9, 1e-9]) expect(azimuth(course.raw[5]! + rounding)).toBeCloseTo(85, 2);
    expect(azimuth(500.01)).toBeCloseTo(130, 2);
    expect(azimuth(courseLength(course))).toBeCloseTo(130, 2);
    expect(meanAzimuth(350, 20)).toBeCloseTo(5, 12);
    expect(meanAzimuth(0, 180)).toBe(180);
  });

  it('is null before the start and past the finish: nothing is clamped', () => {
    const course = turtle(ORIGIN, [[90, 1000]], 100);
    for (const measure of [-0.001, courseLength(course) + 0.001, -1e9, 1e9, NaN, Infinity, -Infinity]) {
      expect(pointAt(course, measure)).toBeNull();
      expect(pointAt(course, measure, 4)).toBeNull();
      expect(elevationAt(course, measure)).toBeNull();
    }
    for (const offset of [NaN, Infinity]) expect(pointAt(course, 500, offset)).toBeNull();
  });

  it('lies at its offset square to the course, left positive', () => {
    const course = turtle(ORIGIN, [[90, 1000]], 100);
    const [ground, left, right] = [pointAt(course, 250)!, pointAt(course, 250, 7)!, pointAt(course, 250, -7)!];
    for (const [beside, side] of [
      [left, -90],
      [right, 90],
    ] as const) {
      const truth = inverse(ground.at[0], ground.at[1], beside.at[0], beside.at[1]);
      expect(truth.length).toBeCloseTo(7, 6);
      expect(azimuthDifference(truth.azimuthDeg, ground.azimuthDeg + side)).toBeLessThan(1e-5);
    }
  });

  it('has no place where a gap is skipped, and its own on either side of it', () => {
    const course = skipped();
    const gap = course.skips[0]!.raw;
    expect(pointAt(course, gap)).toBeNull();
    expect(elevationAt(course, gap)).toBeNull();
    const [before, after] = [pointAt(course, gap - 0.01)!, pointAt(course, gap + 0.01)!];
    expect(apart(before.at, after.at)).toBeCloseTo(500, 1);
    // The jump runs north; the course runs east on both sides of it.
    expect(before.azimuthDeg).toBeCloseTo(90, 1);
    expect(after.azimuthDeg).toBeCloseTo(90, 1);
  });
});

describe('a stretch of a course', () => {
  it('has the course’s own vertices between its ends, each once', () => {
    const course = turtle(ORIGIN, [[90, 1000]], 100);
    expect(sliceLine(course, 250, 449).length).toBe(4);
    const [first, ...rest] = sliceLine(course, course.raw[2]!, course.raw[4]!);
    expect(rest).toHaveLength(2);
    expect(apart(first!, from(ORIGIN, 90, 200))).toBeLessThan(1e-5);
    expect(sliceLine(course, 0, courseLength(course))).toHaveLength(course.lon.length);
  });

  it('adds up: the parts before and after any place are the whole, and each is as long as its measures say', () => {
    fc.assert(
      fc.property(legs, share, share, share, (ways, a, b, c) => {
        const course = turtle(ORIGIN, ways, 60);
        const [low, middle, high] = [a, b, c].sort((x, y) => x - y).map((part) => part * courseLength(course)) as [
          number,
          number,
          number,
        ];
        fc.pre(middle - low > 1e-3 && high - middle > 1e-3);
        const [first, second, whole] = [
          sliceLine(course, low, middle),
          sliceLine(course, middle, high),
          sliceLine(course, low, high),
        ];
        expect(first.at(-1)).toEqual(second[0]);
        expect(Math.abs(lineLength(first) - (middle - low))).toBeLessThan(1e-5);
        expect(Math.abs(lineLength(first) + lineLength(second) - lineLength(whole))).toBeLessThan(1e-5);
      }),
      { seed: 3, numRuns: tries(300) },
    );
  });

  it('is the part that the course has, where its ends lie beyond the course, and empty where there is none', () => {
    const course = turtle(ORIGIN, [[90, 300]], 100);
    expect(lineLength(sliceLine(course, -50, 120))).toBeCloseTo(120, 4);
    expect(lineLength(sliceLine(course, 200, 900))).toBeCloseTo(100, 4);
    for (const [low, high] of [
      [200, 100],
      [100, 100],
      [400, 500],
      [-200, -100],
      [NaN, 100],
    ] as const)
      expect(sliceLine(course, low, high)).toEqual([]);
  });

  it('ends before a skipped gap or begins behind it, and keeps both ends where it runs over', () => {
    const course = skipped();
    const gap = course.skips[0]!.raw;
    const behind = from(from(ORIGIN, 90, 300), 0, 500);
    const [before, after, over] = [
      sliceLine(course, 100, gap),
      sliceLine(course, gap, 400),
      sliceLine(course, 100, 400),
    ];
    expect(lineLength(before)).toBeCloseTo(200, 4);
    expect(lineLength(after)).toBeCloseTo(100, 4);
    expect(apart(after[0]!, behind)).toBeLessThan(1e-5);
    expect(over).toEqual([...before, ...after]);
  });
});

describe('elevation along a course', () => {
  it('is linear between vertices, and exact at them', () => {
    const course = climb();
    expect(elevationAt(course, 0)).toBe(10);
    expect(elevationAt(course, 25)).toBeCloseTo(15, 5);
    expect(elevationAt(course, 250)).toBeCloseTo(22.5, 5);
    expect(elevationAt(course, courseLength(course))).toBe(25);
  });

  it('rises by the sum of all rises, and is null where the course has none', () => {
    expect(ascentOf(climb())).toBe(25);
    const flat = turtle(ORIGIN, [[90, 300]]);
    expect([ascentOf(flat), elevationAt(flat, 100)]).toEqual([null, null]);
  });

  it('counts no rise over a skipped gap', () => {
    const segments = [
      segmentThrough(turtlePoints(ORIGIN, [[90, 100]], 100), [0, 5]),
      segmentThrough(turtlePoints(from(ORIGIN, 90, 900), [[90, 100]], 100), [80, 81]),
    ];
    expect(ascentOf(valueOf(buildCourse({ id: 'c', name: 'c', segments, gaps: 'skip' })))).toBe(6);
  });
});

describe('between raw and calibrated measure', () => {
  it('runs linear between the knots, and each knot is hit exactly', () => {
    const course = scaled();
    expect([0, 200, 400, rawLength(course)].map((raw) => measureOf(course, raw))).toEqual([0, 205, 410, 1000]);
    expect([0, 205, 410, 1000].map((measure) => rawOf(course, measure))).toEqual([
      0,
      expect.closeTo(200, 9),
      400,
      rawLength(course),
    ]);
  });

  it('lets the first and the last factor hold beyond the ends', () => {
    const course = scaled();
    expect(measureOf(course, -40)).toBeCloseTo(-41, 9);
    expect(measureOf(course, 1600)).toBeCloseTo(1590, 3);
  });

  it('comes back to the same measure', () => {
    const course = scaled();
    fc.assert(
      fc.property(real(-100, 1100), (measure) => {
        expect(measureOf(course, rawOf(course, measure))).toBeCloseTo(measure, 8);
      }),
      { seed: 4, numRuns: tries(500) },
    );
  });

  it('rules where a point stands: the point at a calibrated measure is the one at its raw measure', () => {
    expect(apart(pointAt(scaled(), 205)!.at, from(ORIGIN, 90, 200))).toBeLessThan(1e-5);
  });
});

describe('a constant added to every longitude', () => {
  it('changes no length, no measure and no azimuth, wherever the antimeridian then lies', () => {
    fc.assert(
      fc.property(legs, real(-360, 360), real(-78, 78), share, (ways, shift, lat, part) => {
        const points = turtlePoints([0, lat], ways, 60);
        const [here, there] = [
          courseThrough(points),
          courseThrough(points.map(([lon, y]): LonLat => [wrap(lon + shift), y])),
        ];
        expect(Math.abs(rawLength(there) - rawLength(here))).toBeLessThan(1e-6);
        const [a, b] = [pointAt(here, part * rawLength(here), 5), pointAt(there, part * rawLength(here), 5)];
        fc.pre(a !== null && b !== null);
        expect(apart([wrap(a.at[0] + shift), a.at[1]], b.at)).toBeLessThan(1e-5);
        expect(Math.abs(b.at[0])).toBeLessThanOrEqual(180);
      }),
      { seed: 5, numRuns: tries(300) },
    );
  });
});

it('at a vertex before or behind a skipped gap the course runs as it does on its own side', () => {
  const course = skipped();
  const { vertex } = course.skips[0]!;
  for (const place of [
    { vertex, share: 0, raw: 300 },
    { vertex: vertex + 1, share: 0, raw: 300 },
    { vertex, share: 1, raw: 300 },
  ])
    expect(groundAt(course, place).azimuthDeg).toBeCloseTo(90, 1);
});
