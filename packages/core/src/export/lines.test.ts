import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import type { Course } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import type { LonLat } from '../finding.ts';
import { segmentLength } from '../geodesy/segment.ts';
import { boundsOf } from './bounds.ts';
import { courseRuns, cutAtAntimeridian, lineBeside } from './lines.ts';
import { toMicro, toPosition } from './rounding.ts';
import { real } from '../testing/numbers.ts';

function courseOf(...segments: readonly (readonly LonLat[])[]): Course {
  const columns = segments.map((points) => ({
    lon: Float64Array.from(points, ([lon]) => lon),
    lat: Float64Array.from(points, ([, lat]) => lat),
    ele: new Float64Array(points.length).fill(NaN),
  }));
  const built = buildCourse({ id: 'c', name: 'C', segments: columns, gaps: 'skip' });
  if (!built.ok) throw new Error('no course');
  return built.value;
}

describe('cutting at the antimeridian', () => {
  it('leaves a line alone that does not cross it', () => {
    const line: LonLat[] = [
      [179.9, 1],
      [180, 2],
      [179.8, 3],
    ];
    expect(cutAtAntimeridian(line)).toEqual([line]);
  });

  it('ends one piece at 180 and begins the next at -180, at one latitude', () => {
    expect(
      cutAtAntimeridian([
        [179, 0],
        [-179, 2],
      ]),
    ).toEqual([
      [
        [179, 0],
        [180, 1],
      ],
      [
        [-180, 1],
        [-179, 2],
      ],
    ]);
    expect(
      cutAtAntimeridian([
        [-179, 0],
        [179, 2],
      ]),
    ).toEqual([
      [
        [-179, 0],
        [-180, 1],
      ],
      [
        [180, 1],
        [179, 2],
      ],
    ]);
  });

  it('makes no piece without length where the line begins or ends on it', () => {
    expect(
      cutAtAntimeridian([
        [180, 0],
        [-179, 1],
      ]),
    ).toEqual([
      [
        [-180, 0],
        [-179, 1],
      ],
    ]);
    expect(
      cutAtAntimeridian([
        [-179, 0],
        [180, 1],
      ]),
    ).toEqual([
      [
        [-179, 0],
        [-180, 1],
      ],
    ]);
    expect(cutAtAntimeridian([])).toEqual([]);
  });

  it('takes a line that runs along it, told as 180 and as -180, as one that does not leave it', () => {
    expect(
      cutAtAntimeridian([
        [179, 0],
        [180, 1],
        [-180, 2],
        [-179, 3],
      ]),
    ).toEqual([
      [
        [179, 0],
        [180, 1],
      ],
      [
        [-180, 1],
        [-180, 2],
        [-179, 3],
      ],
    ]);
  });

  it('never leaves a step of over 180 degrees, and keeps every place', () => {
    const walk = fc.array(fc.tuple(real(-2, 2), real(-1, 1)), { minLength: 2, maxLength: 30 });
    fc.assert(
      fc.property(walk, (steps) => {
        let [lon, lat] = [179, 0];
        const line = steps.map(([dLon, dLat]): LonLat => {
          lon += dLon;
          lat += dLat;
          return [lon > 180 ? lon - 360 : lon <= -180 ? lon + 360 : lon, lat];
        });
        const pieces = cutAtAntimeridian(line);
        for (const piece of pieces) {
          expect(piece.length).toBeGreaterThan(1);
          piece.slice(1).forEach(([to], k) => expect(Math.abs(to - piece[k]![0])).toBeLessThanOrEqual(180));
        }
      }),
      { seed: 5 },
    );
  });
});

describe('lines of a course', () => {
  it('are one run for each stretch between skipped gaps', () => {
    const course = courseOf(
      [
        [0, 0],
        [0.001, 0],
      ],
      [
        [0.01, 0],
        [0.011, 0],
        [0.012, 0],
      ],
    );
    expect(courseRuns(course).map((run) => run.length)).toEqual([2, 3]);
  });

  it('beside it keep the offset at every vertex between two measures', () => {
    const course = courseOf(Array.from({ length: 20 }, (_, k): LonLat => [-17 + k * 2e-4, -33 + k * k * 1e-5]));
    const ends: [LonLat, LonLat] = [pointAt(course, 50, 4)!.at, pointAt(course, 200, 4)!.at];
    const line = lineBeside(course, 50, 200, 4, ends);
    expect(line.length).toBeGreaterThan(6);
    for (const [lon, lat] of line) {
      const nearest = Math.min(
        ...Array.from({ length: 2501 }, (_, k) => pointAt(course, k / 10)!.at).map((at) =>
          segmentLength(lon, lat, at[0], at[1]),
        ),
      );
      expect(Math.abs(nearest - 4)).toBeLessThan(0.05);
    }
  });
});

describe('numbers of documents', () => {
  it('are rounded, have no negative nought, and are never not a number', () => {
    expect(toMicro(1.23456789)).toBe(1.234568);
    expect(Object.is(toMicro(-1e-9), 0)).toBe(true);
    expect(toPosition([-1e-12, 12.34567890123])).toEqual([0, 12.345678901]);
    for (const value of [NaN, Infinity, -Infinity]) expect(() => toMicro(value)).toThrow(/finite/u);
  });

  it('give a box whose west is larger than its east across the antimeridian', () => {
    expect(boundsOf([1, 3, 2], [5, 4, 6])).toEqual([1, 4, 3, 6]);
    expect(boundsOf([179, 181], [0, 1])).toEqual([179, 0, -179, 1]);
    expect(boundsOf([179, 180], [0, 1])).toEqual([179, 0, 180, 1]);
    expect(boundsOf([-10, 360], [80, 81])).toEqual([-180, 80, 180, 81]);
  });
});

it('the line beside a course leaves out the vertices at a skipped gap, which have no place', () => {
  const course = courseOf(
    [
      [0, 0],
      [0.001, 0],
      [0.002, 0],
    ],
    [
      [0.004, 0],
      [0.005, 0],
      [0.006, 0],
    ],
  );
  const gap = course.skips[0]!.raw;
  const line = lineBeside(course, gap - 150, gap + 150, 5, [
    [1, 1],
    [2, 2],
  ]);
  // One vertex 111.3 m before the gap and one as far behind it (0.001° on the equator, WGS 84), 5 m to the north.
  expect(line.map(([lon]) => lon)).toEqual([1, expect.closeTo(0.001, 9), expect.closeTo(0.005, 9), 2]);
  expect(line[1]![1]).toBeCloseTo(5 / 110_574, 8);
});
