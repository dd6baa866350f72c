import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { ORIGIN, courseOfSegments, segmentThrough, turtle, turtlePoints, valueOf } from '../testing/courses.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import { buildCourse } from './build.ts';
import { courseLength } from './course.ts';
import { ascentBetween, legBetween } from './legs.ts';
import { ascentOf, pointAt } from './locate.ts';
import { indexCourse } from './segmentIndex.ts';

const OUT: readonly (readonly [number, number])[] = [
  [90, 3000],
  [270, 3000],
];
const points = turtlePoints(ORIGIN, OUT, 100);
const heights = points.map((_, k) => 20 + 15 * Math.sin(k * 1.7) + (k % 3));
const hilly = valueOf(buildCourse({ id: 'h', name: 'h', segments: [segmentThrough(points, heights)] }));
const LENGTH = courseLength(hilly);

describe('the ascent between two places', () => {
  it('of the whole course is that of the course', () => {
    expect(ascentBetween(hilly, 0, LENGTH)).toBeCloseTo(ascentOf(hilly)!, 9);
  });

  it('adds up wherever the stretch is parted, and the other way round is what falls', () => {
    const back = valueOf(
      buildCourse({ id: 'b', name: 'b', segments: [segmentThrough(points, heights)], reverse: true }),
    );
    const height = (measure: number): number =>
      ascentBetween(hilly, 0, measure)! - ascentBetween(back, LENGTH - measure, LENGTH)!;
    fc.assert(
      fc.property(fc.tuple(real(0, LENGTH), real(0, LENGTH), real(0, LENGTH)), (measures) => {
        const [a, b, c] = measures.toSorted((x, y) => x - y) as [number, number, number];
        expect(ascentBetween(hilly, a, b)! + ascentBetween(hilly, b, c)!).toBeCloseTo(ascentBetween(hilly, a, c)!, 6);
        // Rises less falls are the difference of the elevations, whatever lies between.
        const falls = ascentBetween(back, LENGTH - c, LENGTH - a)!;
        expect(ascentBetween(hilly, a, c)! - falls).toBeCloseTo(height(c) - height(a), 6);
      }),
      { numRuns: tries(500), seed: 14 },
    );
  });

  it('leaves a skipped gap out', () => {
    const [low, high] = [turtlePoints(ORIGIN, [[90, 1000]], 100), turtlePoints([-17.3, -33.2], [[90, 1000]], 100)];
    const course = valueOf(
      buildCourse({
        id: 'g',
        name: 'g',
        segments: [
          segmentThrough(
            low,
            low.map(() => 5),
          ),
          segmentThrough(
            high,
            high.map((_, k) => 500 + k),
          ),
        ],
        gaps: 'skip',
      }),
    );
    expect(ascentBetween(course, 0, 2000)).toBeCloseTo(ascentOf(course)!, 6);
    expect(ascentBetween(course, 500, 1500)).toBeCloseTo(5, 6);
  });

  it('is nothing without elevations, off the course and backwards', () => {
    expect(ascentBetween(turtle(ORIGIN, OUT), 0, 100)).toBeNull();
    for (const [from, to] of [
      [-1, 100],
      [0, LENGTH + 1],
      [200, 100],
      [NaN, 100],
      [0, NaN],
      [0, Infinity],
    ] as const)
      expect(ascentBetween(hilly, from, to)).toBeNull();
    expect(ascentBetween(hilly, 100, 100)).toBe(0);
  });
});

describe('the leg between two places', () => {
  it('from measure to measure is their difference; with positions it ends where the course next comes by', () => {
    fc.assert(
      fc.property(real(0, 2800), real(0, 2800), (first, second) => {
        const [a, b] = [pointAt(hilly, first)!.at, pointAt(hilly, second)!.at];
        const leg = legBetween(hilly, a, b)!;
        expect(leg.from).toBeCloseTo(first, 4);
        // Behind the start of the leg: on the way out where it lies farther out, else on the way home.
        const to = second > first + 0.01 ? second : LENGTH - second;
        if (Math.abs(second - first) > 0.01) expect(leg.to).toBeCloseTo(to, 2);
        expect(leg.length).toBe(leg.to - leg.from);
        expect(leg.ascent).toBe(ascentBetween(hilly, leg.from, leg.to));
        expect(legBetween(indexCourse(hilly), a, b)).toEqual(leg);
      }),
      { numRuns: tries(200), seed: 14 },
    );
    expect(legBetween(hilly, 1000, 2500)).toMatchObject({ from: 1000, to: 2500, length: 1500 });
    expect(legBetween(hilly, 1000, 1000)?.length).toBe(0);
  });

  it('is nothing where a place is not passed, or not behind', () => {
    const off: LonLat = [ORIGIN[0], ORIGIN[1] + 0.01];
    expect(legBetween(hilly, off, ORIGIN)).toBeNull();
    expect(legBetween(hilly, 0, off)).toBeNull();
    expect(legBetween(hilly, 2000, 1000)).toBeNull();
    expect(legBetween(hilly, -5, 1000)).toBeNull();
    expect(legBetween(hilly, 0, NaN)).toBeNull();
    expect(legBetween(hilly, LENGTH, ORIGIN)).toBeNull();
    expect(() => legBetween(hilly, [NaN, 0], ORIGIN)).toThrow(RangeError);
    expect(legBetween(courseOfSegments([points], 'refuse'), 0, 100)?.ascent).toBeNull();
  });
});
