import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import type { LonLat } from '../finding.ts';
import { inverse } from '../geodesy/karney.ts';
import { ORIGIN, courseThrough, from, generator, turtle, turtlePoints } from '../testing/courses.ts';
import type { Course } from './course.ts';
import { groundAt } from './locate.ts';
import { type IndexedCourse, type VertexRun, indexCourse, runsIn, windowAround } from './segmentIndex.ts';
import { real } from '../testing/numbers.ts';

const nearRuns = (indexed: IndexedCourse, at: LonLat, radius: number): VertexRun[] =>
  runsIn(indexed, windowAround(indexed, at, radius));

/** Least distance from a point to a segment, by Karney at 33 places along it: never less than the true one. */
function distanceTo(course: Course, vertex: number, at: LonLat): number {
  let least = Infinity;
  for (let k = 0; k <= 32; k++) {
    const place = groundAt(course, { vertex, share: k / 32, raw: 0 }).at;
    least = Math.min(least, inverse(at[0], at[1], place[0], place[1]).length);
  }
  return least;
}

const holds = (indexed: IndexedCourse, at: LonLat, radius: number, vertex: number): boolean =>
  nearRuns(indexed, at, radius).some(({ first, last }) => first <= vertex && vertex + 1 <= last);

const legs = fc.array(fc.tuple(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 5, max: 900 })), {
  minLength: 1,
  maxLength: 14,
});
const near = fc.record({
  along: fc.integer({ min: 0, max: 1000 }),
  azimuthDeg: fc.integer({ min: 0, max: 359 }),
  away: fc.integer({ min: 0, max: 90 }),
});

function findsAll(origin: fc.Arbitrary<LonLat>, seed: number): void {
  fc.assert(
    fc.property(origin, legs, near, fc.constantFrom(20, 60, 70), (start, ways, { along, azimuthDeg, away }, radius) => {
      const course = turtle(start, ways, 150);
      const vertex = Math.floor((along / 1000) * (course.lon.length - 1));
      const at = from([course.lon[vertex]!, course.lat[vertex]!], azimuthDeg, away);
      const indexed = indexCourse(course);
      for (let segment = 0; segment < course.lon.length - 1; segment++) {
        if (distanceTo(course, segment, at) <= radius) expect(holds(indexed, at, radius, segment)).toBe(true);
      }
    }),
    { seed, numRuns: 60 },
  );
}

const place = (lon: [number, number], lat: [number, number]): fc.Arbitrary<LonLat> =>
  fc.tuple(real(lon[0], lon[1]), real(lat[0], lat[1]));

describe('the segment index', () => {
  it('finds every segment within the radius: the same as by trying all', () =>
    findsAll(place([-180, 180], [-80, 80]), 1));
  it('finds them across the antimeridian', () => findsAll(place([179.99, 180], [-75, 75]), 2));
  it('finds them at 89° of latitude', () => findsAll(place([-180, 180], [89, 89.01]), 3));
  it('finds them within sight of a pole', () => findsAll(place([-180, 180], [89.95, 89.99]), 4));

  it('finds a point at the antimeridian, given from either side', () => {
    const indexed = indexCourse(
      courseThrough([
        [179.9995, 10],
        [-179.9995, 10],
      ]),
    );
    for (const lon of [180, -180]) expect(nearRuns(indexed, [lon, 10.0001], 60)).toEqual([{ first: 0, last: 1 }]);
  });

  it('leaves out what is far: most of a long course is never looked at', () => {
    const indexed = indexCourse(turtle(ORIGIN, [[90, 40_000]], 20));
    const runs = nearRuns(indexed, from(ORIGIN, 90, 20_000), 60);
    expect(runs).toHaveLength(1);
    expect(runs[0]!.last - runs[0]!.first).toBeLessThanOrEqual(32);
    expect(nearRuns(indexed, from(ORIGIN, 0, 500), 60)).toEqual([]);
  });

  it('gives runs in running order, apart from each other, touching ones merged', () => {
    const random = generator(5);
    const points = [
      ...turtlePoints(
        ORIGIN,
        [
          [90, 1500],
          [270, 1500],
          [90, 1500],
        ],
        10,
      ),
    ];
    const indexed = indexCourse(courseThrough(points));
    for (let k = 0; k < 50; k++) {
      const runs = nearRuns(indexed, from(ORIGIN, 90, 1500 * random()), 60);
      expect(runs.length).toBeGreaterThan(0);
      runs.forEach(({ first, last }, i) => {
        expect(first).toBeLessThan(last);
        if (i > 0) expect(first).toBeGreaterThan(runs[i - 1]!.last);
      });
    }
  });

  it('knows the tangles of its course', () => {
    const random = generator(3);
    const stand = Array.from({ length: 60 }, () => from(from(ORIGIN, 90, 205), 360 * random(), 4 * random()));
    expect(indexCourse(courseThrough([...turtlePoints(ORIGIN, [[90, 200]]), ...stand])).tangles).toHaveLength(1);
  });
});

describe('the boxes of an index', () => {
  it('hold 16 segments each', () => {
    const boxes = (segments: number): number =>
      indexCourse(turtle(ORIGIN, [[90, segments * 10]], 10)).boxes.levels[0]!.length / 4;
    expect([1, 15, 16, 17, 32, 33].map(boxes)).toEqual([1, 1, 1, 2, 2, 3]);
  });

  it('that do not touch make runs of their own: one on the way out, one on the way home', () => {
    const indexed = indexCourse(
      courseThrough(
        turtlePoints(
          ORIGIN,
          [
            [90, 1500],
            [270, 1500],
          ],
          10,
        ),
      ),
    );
    const runs = nearRuns(indexed, from(ORIGIN, 90, 200), 60);
    expect(runs).toHaveLength(2);
    expect(runs[0]!.last).toBeLessThan(48);
    expect(runs[1]!.first).toBeGreaterThan(240);
    expect(nearRuns(indexed, from(ORIGIN, 90, 1500), 60)).toEqual([{ first: 128, last: 160 }]);
  });
});
