import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { inverse } from '../geodesy/karney.ts';
import { ORIGIN, courseOfSegments, courseThrough, from, turtle, turtlePoints } from '../testing/courses.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';
import type { Course } from './course.ts';
import { groundAt, pointAt } from './locate.ts';
import { nearestOn } from './passes.ts';
import { indexCourse } from './segmentIndex.ts';

const metresBetween = (a: LonLat, b: LonLat): number => inverse(a[0], a[1], b[0], b[1]).length;

/** Least distance from a point to a course by Karney at places along every segment: never less than the true one. */
function leastDistance(course: Course, at: LonLat): number {
  let least = Infinity;
  for (let vertex = 0; vertex < course.lon.length - 1; vertex++)
    for (let k = 0; k <= 4; k++)
      least = Math.min(least, metresBetween(at, groundAt(course, { vertex, share: k / 4, raw: 0 }).at));
  return least;
}

const legs = fc.array(fc.tuple(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 5, max: 2500 })), {
  minLength: 1,
  maxLength: 8,
});

function findsNearest(lon: [number, number], lat: [number, number], away: [number, number], seed: number): void {
  fc.assert(
    fc.property(
      fc.tuple(real(...lon), real(...lat)),
      legs,
      real(0, 359),
      real(...away),
      (start, ways, azimuthDeg, metres) => {
        const course = turtle(start, ways, 150);
        const at = from(start, azimuthDeg, metres);
        const nearest = nearestOn(indexCourse(course), at);
        expect(nearest.distance).toBeLessThan(leastDistance(course, at) + 1e-3);
        expect(Math.abs(metresBetween(at, nearest.foot) - nearest.distance)).toBeLessThan(1e-3);
        expect(metresBetween(pointAt(course, nearest.measure)!.at, nearest.foot)).toBeLessThan(1e-3);
      },
    ),
    { seed, numRuns: tries(60) },
  );
}

describe('the nearest place', () => {
  it('is no farther than any place of the course by Karney, and lies at its measure: up to 50 km and beyond', () =>
    findsNearest([-180, 180], [-79, 79], [100, 90_000], 1));
  it('is so across the antimeridian', () => findsNearest([179.98, 180], [-70, 70], [10, 60_000], 2));
  it('is so around 80° of latitude, where the series end', () =>
    findsNearest([-180, 180], [79.6, 80.3], [10, 60_000], 3));
  it('is so within sight of a pole', () => findsNearest([-180, 180], [89.5, 89.98], [10, 60_000], 4));
  it('is so from another continent', () => findsNearest([-180, 180], [-79, 79], [100_000, 5_000_000], 5));

  it('is the first in running order where a road is run both ways or in laps', () => {
    const out = turtlePoints(ORIGIN, [[90, 2000]], 50);
    const indexed = indexCourse(courseThrough([...out, ...out.toReversed(), ...out]));
    for (const [metres, east] of [
      [20_000, 730],
      [300, 730],
      [20_000, 1000],
    ] as const) {
      const nearest = nearestOn(indexed, from(from(ORIGIN, 90, east), 0, metres));
      expect(nearest.measure).toBeGreaterThan(0);
      expect(nearest.measure).toBeLessThan(2000);
      expect(nearest.side).toBe('left');
    }
  });

  it('never stands in a gap that the course skips', () => {
    const course = courseOfSegments(
      [
        [from(ORIGIN, 270, 900), from(ORIGIN, 270, 500)],
        [from(ORIGIN, 90, 600), from(ORIGIN, 90, 900)],
      ],
      'skip',
    );
    const indexed = indexCourse(course);
    for (const metres of [200, 20_000, 300_000]) {
      const nearest = nearestOn(indexed, from(ORIGIN, 0, metres));
      expect(metresBetween(nearest.foot, from(ORIGIN, 270, 500))).toBeLessThan(0.01);
    }
  });

  it('tells beyond which end a point lies, from far away too', () => {
    const indexed = indexCourse(courseThrough([ORIGIN, from(ORIGIN, 90, 190)]));
    for (const metres of [90, 20_000, 200_000]) {
      expect(nearestOn(indexed, from(ORIGIN, 270, metres))).toMatchObject({ end: 'start', measure: 0 });
      expect(nearestOn(indexed, from(ORIGIN, 90, 190 + metres)).end).toBe('finish');
    }
  });
});
