/**
 * What must hold of every course, whatever its shape: by seeds, so that a failure comes back.
 * Courses are smooth roads, tracks with corners, and tracks with the noise of a recorder.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { azimuthDifference, normalAzimuth, wrapDegrees } from '../geodesy/ellipsoid.ts';
import { inverse } from '../geodesy/karney.ts';
import {
  ORIGIN,
  type TurtleLeg,
  courseThrough,
  from,
  generator,
  segmentThrough,
  turtlePoints,
  valueOf,
} from '../testing/courses.ts';
import { buildCourse } from './build.ts';
import { type Course, type Pass, courseLength, rawLength } from './course.ts';
import { pointAt, sliceLine } from './locate.ts';
import { passesOf } from './passes.ts';
import { indexCourse } from './segmentIndex.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

const SEED = 20_261_125;
const RUNS = tries(1000);
const MILLIMETRE = 1e-3;
const LAPS: readonly number[] = [0, 90, 180, 270];

/** Up to 79° of latitude, where the frame holds to 1 mm. */
const place: fc.Arbitrary<LonLat> = fc.tuple(real(-180, 180), real(-79, 79));

/** Legs of 15 to 180 m that bend at random, up to 100° each: corners, loops, crossings of its own way. */
const wandering: fc.Arbitrary<LonLat[]> = fc
  .tuple(place, real(0, 360), fc.array(fc.tuple(real(-100, 100), real(15, 180)), { minLength: 4, maxLength: 30 }))
  .map(([origin, azimuth, bends]) => {
    let heading = azimuth;
    return turtlePoints(
      origin,
      bends.map(([bend, length]): TurtleLeg => [normalAzimuth((heading += bend)), length]),
      200,
    );
  });

const moved = (at: LonLat, east: number, north: number): LonLat => from(from(at, 90, east), 0, north);

/**
 * Two or three times round an oblong, or out and back, with legs of 40 to 300 m; each point up to half a metre beside its road:
 * of two ways that are equally near to the last bit, either is right.
 */
const repeating: fc.Arbitrary<LonLat[]> = fc
  .tuple(place, real(0, 360), real(40, 300), real(40, 300), fc.integer({ min: 2, max: 3 }), fc.boolean(), fc.nat())
  .map(([origin, azimuth, a, b, times, back, seed]) => {
    const random = generator(seed);
    const lap = LAPS.map((turn, k): TurtleLeg => [normalAzimuth(azimuth + turn), k % 2 === 0 ? a : b]);
    const [out, home] = [normalAzimuth(azimuth), normalAzimuth(azimuth + 180)];
    const legs = back
      ? Array.from({ length: times }, (): TurtleLeg[] => [
          [out, a + b],
          [home, a + b],
        ]).flat()
      : Array.from({ length: times }, () => lap).flat();
    return turtlePoints(origin, legs, 30).map((at) => moved(at, random() - 0.5, random() - 0.5));
  });

const drawn = fc.oneof(wandering, repeating);

/** Where a pin stands: by the course, at a share of its length, up to 55 m to a side. */
const pin = fc.record({ share: real(0.02, 0.98), offset: real(-55, 55) });

const pinBy = (course: Course, { share, offset }: { share: number; offset: number }): LonLat =>
  pointAt(course, share * courseLength(course), offset)!.at;

const passesBy = (course: Course, at: LonLat): Pass[] => passesOf(indexCourse(course), at);

const turned = (points: readonly LonLat[], degrees: number): LonLat[] =>
  points.map(([lon, lat]) => [wrapDegrees(lon + degrees), lat]);

const lengthOf = (points: readonly LonLat[]): number =>
  points.slice(1).reduce((sum, [lon, lat], k) => sum + inverse(points[k]![0], points[k]![1], lon, lat).length, 0);

/** Every segment with more points on its geodesic, 1 to `pieces` of them by turns. */
const subdivided = (points: readonly LonLat[], pieces: number): LonLat[] =>
  points.flatMap((to, k) => {
    if (k === 0) return [to];
    const [lon, lat] = points[k - 1]!;
    const { length, azimuthDeg } = inverse(lon, lat, to[0], to[1]);
    const cuts = (k % pieces) + 1;
    return [
      ...Array.from({ length: cuts }, (_, cut) => from([lon, lat], azimuthDeg, (length * (cut + 1)) / (cuts + 1))),
      to,
    ];
  });

describe('a course', () => {
  // Grouping goes in running order: where a small block lies in the snap radius whole, it may have a pass more from one end than from the other.
  it('that is reversed has the same passes in the other order: measures mirrored, sides flipped; in 1 case of 100 at most one more or less', () => {
    let unequal = 0;
    fc.assert(
      fc.property(drawn, pin, (points, where) => {
        const course = courseThrough(points);
        const back = valueOf(buildCourse({ id: 'c', name: 'c', segments: [segmentThrough(points)], reverse: true }));
        const at = pinBy(course, where);
        const [ahead, behind] = [passesBy(course, at), passesBy(back, at).reverse()];
        if (behind.length !== ahead.length) {
          expect(Math.abs(behind.length - ahead.length)).toBe(1);
          unequal++;
          return;
        }
        ahead.forEach((pass, k) => {
          const mirror = behind[k]!;
          expect(Math.abs(pass.distance - mirror.distance)).toBeLessThan(MILLIMETRE);
          expect(Math.abs(pass.measure + mirror.measure - courseLength(course))).toBeLessThan(MILLIMETRE);
          expect(Math.abs(pass.offset + mirror.offset)).toBeLessThan(MILLIMETRE);
          expect([pass.side, mirror.side]).toEqual(
            pass.side === 'unclear'
              ? ['unclear', 'unclear']
              : pass.side === 'left'
                ? ['left', 'right']
                : ['right', 'left'],
          );
          expect(azimuthDifference(pass.azimuthDeg, mirror.azimuthDeg)).toBeGreaterThan(180 - 1e-3);
        });
      }),
      { seed: SEED, numRuns: RUNS },
    );
    expect(unequal).toBeLessThanOrEqual(RUNS / 100);
  });

  it('that is moved by a constant longitude has the same length and the same passes, also across the antimeridian', () => {
    fc.assert(
      fc.property(drawn, pin, real(-360, 360), (points, where, degrees) => {
        const [here, there] = [courseThrough(points), courseThrough(turned(points, degrees))];
        expect(Math.abs(rawLength(here) - rawLength(there))).toBeLessThan(1e-6);
        const at = pinBy(here, where);
        const [own, moved] = [passesBy(here, at), passesBy(there, turned([at], degrees)[0]!)];
        expect(moved.map(({ side }) => side)).toEqual(own.map(({ side }) => side));
        own.forEach((pass, k) => {
          expect(Math.abs(pass.measure - moved[k]!.measure)).toBeLessThan(1e-5);
          expect(Math.abs(pass.offset - moved[k]!.offset)).toBeLessThan(1e-5);
        });
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('is the sum of its slices, each as long by geographiclib as its measures say', () => {
    fc.assert(
      fc.property(drawn, fc.array(real(0, 1), { minLength: 1, maxLength: 8 }), (points, shares) => {
        const course = courseThrough(points);
        const cuts = [
          0,
          ...shares.sort((a, b) => a - b).map((share) => share * courseLength(course)),
          courseLength(course),
        ];
        const lengths = cuts.slice(1).map((to, k) => lengthOf(sliceLine(course, cuts[k]!, to)));
        lengths.forEach((length, k) => expect(Math.abs(length - (cuts[k + 1]! - cuts[k]!))).toBeLessThan(1e-5));
        expect(Math.abs(lengths.reduce((a, b) => a + b, 0) - lengthOf(points))).toBeLessThan(1e-4);
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });

  it('with more points on the same line has the same passes to a millimetre', () => {
    fc.assert(
      fc.property(drawn, pin, fc.integer({ min: 1, max: 5 }), (points, where, pieces) => {
        const course = courseThrough(points);
        const finer = courseThrough(subdivided(points, pieces));
        expect(Math.abs(rawLength(course) - rawLength(finer))).toBeLessThan(1e-4);
        const at = pinBy(course, where);
        const [own, fine] = [passesBy(course, at), passesBy(finer, at)];
        expect(fine.map(({ side }) => side)).toEqual(own.map(({ side }) => side));
        own.forEach((pass, k) => {
          expect(Math.abs(pass.measure - fine[k]!.measure)).toBeLessThan(MILLIMETRE);
          expect(Math.abs(pass.distance - fine[k]!.distance)).toBeLessThan(MILLIMETRE);
          expect(Math.abs(pass.offset - fine[k]!.offset)).toBeLessThan(MILLIMETRE);
        });
      }),
      { seed: SEED, numRuns: RUNS },
    );
  });
});

it('of two ways that are equally near, the first in running order has the foot, whatever the last bit says', () => {
  fc.assert(
    fc.property(place, real(0, 360), real(5, 55), (origin, azimuth, offset) => {
      const out = turtlePoints(origin, [[azimuth, 300]], 20);
      const course = courseThrough([...out, ...out.slice(0, -1).reverse()]);
      const [pass, ...more] = passesBy(course, pointAt(course, 298, offset)!.at);
      expect(more).toEqual([]);
      expect(Math.abs(pass!.measure - 298)).toBeLessThan(MILLIMETRE);
    }),
    { seed: SEED, numRuns: RUNS },
  );
});

/** Normal variates by Box and Muller (Ann. Math. Stat. 29, 1958). */
const normals = (seed: number): (() => number) => {
  const random = generator(seed);
  return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
};

describe('a recorder’s noise', () => {
  it('of 0.8 m leaves two passes at a U-turn of 5 m radius, the pin 10 m back, in at least 95 % of cases', () => {
    const normal = normals(SEED);
    const centre = from(ORIGIN, 90, 300);
    const spot = (east: number, north: number): LonLat => moved(centre, east + 0.8 * normal(), north + 0.8 * normal());
    let two = 0;
    for (let run = 0; run < RUNS; run++) {
      const out = Array.from({ length: 60 }, (_, k) => spot(-300 + k * 5, -5));
      const turn = Array.from({ length: 5 }, (_, k) =>
        spot(5 * Math.sin((Math.PI * (k + 0.5)) / 5), -5 * Math.cos((Math.PI * (k + 0.5)) / 5)),
      );
      const back = Array.from({ length: 60 }, (_, k) => spot(-k * 5, 5));
      if (passesBy(courseThrough([...out, ...turn, ...back]), from(centre, 270, 10)).length === 2) two++;
    }
    expect(two).toBeGreaterThanOrEqual(0.95 * RUNS);
  });

  it('of 2 m while it stands still makes no pass of its own in at least 95 % of cases', () => {
    const normal = normals(SEED + 1);
    const stand = from(ORIGIN, 90, 300);
    let one = 0;
    for (let run = 0; run < RUNS; run++) {
      const before = turtlePoints(ORIGIN, [[90, 290]], 10);
      const still = Array.from({ length: 60 }, () => moved(stand, 2 * normal(), 2 * normal()));
      const after = turtlePoints(from(ORIGIN, 90, 310), [[90, 290]], 10);
      if (passesBy(courseThrough([...before, ...still, ...after]), from(stand, 0, 12)).length === 1) one++;
    }
    expect(one).toBeGreaterThanOrEqual(0.95 * RUNS);
  });
});
