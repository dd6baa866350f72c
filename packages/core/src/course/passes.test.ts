import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import { azimuthDifference, normalAzimuth } from '../geodesy/ellipsoid.ts';
import { inverse } from '../geodesy/karney.ts';
import type { LonLat } from '../finding.ts';
import { ORIGIN, courseThrough, from, generator, turtle } from '../testing/courses.ts';
import { courseLength } from './course.ts';
import { pointAt } from './locate.ts';
import { nearestOn, passesOf } from './passes.ts';
import { indexCourse } from './segmentIndex.ts';
import { real } from '../testing/numbers.ts';
import { tries } from '../testing/tries.ts';

describe('passes of a point', () => {
  it('throws on what is no position instead of finding nothing', () => {
    const indexed = indexCourse(turtle(ORIGIN, [[90, 1000]]));
    const beyond: unknown[] = [
      [NaN, 0],
      [0, Infinity],
      [0, 90.1],
      [361, 0],
    ];
    for (const at of beyond) expect(() => passesOf(indexed, at as LonLat)).toThrow(RangeError);
    for (const at of [...beyond, ['1', 2], [], [1]]) {
      expect(() => passesOf(indexed, at as LonLat)).toThrow(
        /^passesOf wants at as \[longitude, latitude\] in degrees/u,
      );
      expect(() => nearestOn(indexed, at as LonLat)).toThrow(
        /^nearestOn wants at as \[longitude, latitude\] in degrees/u,
      );
    }
    expect(passesOf(indexed, [ORIGIN[0] + 360 * (ORIGIN[0] < 0 ? 1 : -1), ORIGIN[1]])).toHaveLength(1);
  });

  it('finds a single pass on a straight road, with the side that the runner sees', () => {
    const indexed = indexCourse(turtle(ORIGIN, [[90, 1000]]));
    const road = from(ORIGIN, 90, 400);
    const [left] = passesOf(indexed, from(road, 0, 8));
    expect(left).toMatchObject({ side: 'left' });
    expect(left!.offset).toBeCloseTo(8, 4);
    expect(left!.measure).toBeCloseTo(400, 3);
    expect(passesOf(indexed, from(road, 180, 8))[0]).toMatchObject({ side: 'right' });
  });

  it('finds both passes of an out-and-back, on opposite sides', () => {
    const indexed = indexCourse(
      turtle(ORIGIN, [
        [70, 900],
        [250, 900],
      ]),
    );
    const passes = passesOf(indexed, from(from(ORIGIN, 70, 300), 160, 7));
    expect(passes.map((pass) => pass.side)).toEqual(['right', 'left']);
    expect(passes[0]!.measure).toBeCloseTo(300, 2);
    expect(passes[1]!.measure).toBeCloseTo(1500, 2);
    expect(azimuthDifference(passes[0]!.azimuthDeg, passes[1]!.azimuthDeg)).toBeGreaterThan(179.9);
  });

  it('counts the turn of an out-and-back right at the tables once', () => {
    const indexed = indexCourse(
      turtle(ORIGIN, [
        [70, 900],
        [250, 900],
      ]),
    );
    expect(passesOf(indexed, from(from(ORIGIN, 70, 900), 70, 4))).toHaveLength(1);
  });

  it('counts every lap', () => {
    const lap: [number, number][] = [
      [0, 400],
      [90, 300],
      [180, 400],
      [270, 300],
    ];
    const indexed = indexCourse(turtle(ORIGIN, [...lap, ...lap, ...lap]));
    const passes = passesOf(indexed, from(from(ORIGIN, 0, 200), 90, 6));
    expect(passes.map((pass) => Math.round(pass.measure))).toEqual([200, 1600, 3000]);
    expect(new Set(passes.map((pass) => pass.side))).toEqual(new Set(['right']));
  });

  it('says on which end a point lies that is beyond it', () => {
    const indexed = indexCourse(turtle(ORIGIN, [[90, 500]]));
    expect(passesOf(indexed, from(ORIGIN, 270, 20))[0]).toMatchObject({ end: 'start', measure: 0 });
    expect(passesOf(indexed, from(from(ORIGIN, 90, 500), 90, 20))[0]).toMatchObject({ end: 'finish' });
    expect(passesOf(indexed, from(from(ORIGIN, 90, 100), 0, 20))[0]).not.toHaveProperty('end');
  });

  it('leaves the side unclear on the line and at a vertex that turns back', () => {
    const indexed = indexCourse(
      turtle(ORIGIN, [
        [90, 500],
        [272, 400],
      ]),
    );
    expect(passesOf(indexed, from(from(ORIGIN, 90, 100), 0, 1))[0]!.side).toBe('unclear');
    expect(passesOf(indexed, from(from(ORIGIN, 90, 500), 91, 15))[0]!.side).toBe('unclear');
  });

  it('has none beyond the snap radius, and tells the nearest place instead', () => {
    const indexed = indexCourse(turtle(ORIGIN, [[90, 500]]));
    const away = from(from(ORIGIN, 90, 200), 0, 750);
    expect(passesOf(indexed, away)).toEqual([]);
    expect(nearestOn(indexed, away).distance).toBeCloseTo(750, 2);
    expect(nearestOn(indexed, [10, 52]).distance).toBeGreaterThan(9e6);
  });

  it('sees the same passes across the antimeridian and at 79° north as anywhere', () => {
    for (const origin of [
      [179.999, 12],
      [-179.9999, -40],
      [25, 79],
    ] as LonLat[]) {
      const indexed = indexCourse(
        turtle(origin, [
          [80, 900],
          [260, 900],
        ]),
      );
      const passes = passesOf(indexed, from(from(origin, 80, 300), 170, 7));
      expect(passes.map((pass) => pass.side)).toEqual(['right', 'left']);
      expect(passes[0]!.distance).toBeCloseTo(7, 3);
    }
  });

  it('counts a jittering recorder that stands still once', () => {
    const random = generator(7);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    let single = 0;
    for (let round = 0; round < 60; round++) {
      const before = Array.from({ length: 30 }, (_, k) => from(ORIGIN, 90, k * 10));
      const stand = from(ORIGIN, 90, 300);
      const jitter = Array.from({ length: 60 }, () => from(from(stand, 90, 2 * normal()), 0, 2 * normal()));
      const after = Array.from({ length: 30 }, (_, k) => from(ORIGIN, 90, 310 + k * 10));
      const indexed = indexCourse(courseThrough([...before, ...jitter, ...after]));
      if (passesOf(indexed, from(stand, 0, 12)).length === 1) single++;
    }
    expect(single).toBeGreaterThanOrEqual(57);
  });

  it('sees both passes of a tight U-turn through 0.8 m of noise in 95 % of cases', () => {
    const random = generator(11);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    let both = 0;
    for (let round = 0; round < 60; round++) {
      // Out eastwards 5 m right of the axis, a half circle of 5 m radius, and back; the pin on the axis 10 m back from the turn's centre.
      const centre = from(ORIGIN, 90, 300);
      const spot = (e: number, n: number): LonLat => from(from(centre, 90, e + 0.8 * normal()), 0, n + 0.8 * normal());
      const out = Array.from({ length: 60 }, (_, k) => spot(-300 + k * 5, -5));
      const turn = Array.from({ length: 5 }, (_, k) =>
        spot(5 * Math.sin((Math.PI * (k + 0.5)) / 5), -5 * Math.cos((Math.PI * (k + 0.5)) / 5)),
      );
      const back = Array.from({ length: 60 }, (_, k) => spot(-k * 5, 5));
      const indexed = indexCourse(courseThrough([...out, ...turn, ...back]));
      if (passesOf(indexed, from(centre, 270, 10)).length === 2) both++;
    }
    expect(both).toBeGreaterThanOrEqual(57);
  });
});

const smoothCourse = fc
  .record({
    lat: real(-79, 79),
    lon: real(-180, 180),
    azimuth: real(0, 360),
    bends: fc.array(real(-4, 4), { minLength: 20, maxLength: 40 }),
  })
  .map(({ lat, lon, azimuth, bends }) => {
    let heading = azimuth;
    // Legs of 25 m that turn by at most 4°: the local radius is at least 350 m.
    return turtle(
      [lon, lat],
      bends.map((bend) => [normalAzimuth((heading += bend)), 25]),
      25,
    );
  });

describe('a point placed and snapped', () => {
  it('comes back to its measure and offset within a millimetre', () => {
    fc.assert(
      fc.property(smoothCourse, real(0.2, 0.8), real(-50, 50), (course, share, offset) => {
        const measure = courseLength(course) * share;
        const placed = pointAt(course, measure, offset)!;
        const nearVertex = course.raw.some((raw) => Math.abs(raw - measure) < Math.abs(offset) * 0.1 + 0.01);
        fc.pre(!nearVertex);
        const passes = passesOf(indexCourse(course), placed.at);
        const pass = passes.reduce((best, p) =>
          Math.abs(p.measure - measure) < Math.abs(best.measure - measure) ? p : best,
        );
        expect(Math.abs(pass.measure - measure)).toBeLessThan(1e-3);
        expect(Math.abs(pass.offset - offset)).toBeLessThan(1e-3);
        expect(azimuthDifference(pass.azimuthDeg, placed.azimuthDeg)).toBeLessThan(1e-4);
        // Against Karney: the foot is as far as the pass says.
        expect(
          Math.abs(inverse(placed.at[0], placed.at[1], pass.foot[0], pass.foot[1]).length - pass.distance),
        ).toBeLessThan(1e-4);
      }),
      { seed: 20261125, numRuns: tries(1000) },
    );
  });
});

describe('a recorder that stood still near the point', () => {
  const tangled = (seed: number, at: LonLat): LonLat[] => {
    const random = generator(seed);
    return Array.from({ length: 50 }, () => from(at, 360 * random(), 4 * random()));
  };
  const along = (measure: number): LonLat => from(ORIGIN, 90, measure);
  const straight = (start: number, end: number): LonLat[] =>
    Array.from({ length: Math.abs(end - start) / 10 + 1 }, (_, k) => along(start + Math.sign(end - start) * 10 * k));

  it('makes one pass, with the nearest of its places as the foot', () => {
    const indexed = indexCourse(courseThrough([...straight(0, 290), ...tangled(5, along(300)), ...straight(310, 600)]));
    const pin = from(along(300), 0, 14);
    const [pass, ...more] = passesOf(indexed, pin);
    expect(indexed.tangles).toHaveLength(1);
    expect(more).toEqual([]);
    const nearest = Math.min(
      ...indexed.course.raw.map((_, k) => inverse(indexed.course.lon[k]!, indexed.course.lat[k]!, ...pin).length),
    );
    expect(pass!.distance).toBeLessThanOrEqual(nearest);
    expect(pass!.distance).toBeGreaterThan(9);
  });

  it('on the way out leaves the way home a pass of its own, and on the way home the way out', () => {
    const pin = from(along(300), 0, 12);
    const out = indexCourse(
      courseThrough([...straight(0, 290), ...tangled(5, along(300)), ...straight(310, 500), ...straight(490, 0)]),
    );
    const home = indexCourse(
      courseThrough([...straight(0, 500), ...straight(490, 310), ...tangled(6, along(300)), ...straight(290, 0)]),
    );
    for (const indexed of [out, home]) {
      expect(indexed.tangles).toHaveLength(1);
      expect(passesOf(indexed, pin)).toHaveLength(2);
    }
  });

  it('twice, on the way out and on the way home, makes two passes', () => {
    const indexed = indexCourse(
      courseThrough([
        ...straight(0, 290),
        ...tangled(5, along(300)),
        ...straight(310, 500),
        ...straight(490, 310),
        ...tangled(6, along(300)),
        ...straight(290, 0),
      ]),
    );
    expect(indexed.tangles).toHaveLength(2);
    expect(passesOf(indexed, from(along(300), 0, 12))).toHaveLength(2);
  });
});

it('a side is told with a wanted confidence of 1 where positions are taken as exact', () => {
  const indexed = indexCourse(turtle(ORIGIN, [[90, 1000]]));
  const exact = { snapRadius: 60, pinR95: 0, courseR95: 0, sideConfidence: 1 };
  expect(passesOf(indexed, from(from(ORIGIN, 90, 300), 0, 2), exact)[0]).toMatchObject({ side: 'left', confidence: 1 });
});
