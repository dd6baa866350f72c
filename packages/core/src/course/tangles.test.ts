import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { ORIGIN, type TurtleLeg, courseThrough, from, generator, turtle, turtlePoints } from '../testing/courses.ts';
import { type Tangle, tanglesOf } from './tangles.ts';

/** 200 m eastwards, then a recorder that wanders within `radius` metres, then 200 m on. */
function standing(radius: number, points: number, seed: number, origin: LonLat = ORIGIN): Tangle[] {
  const random = generator(seed);
  const stand = from(origin, 90, 200);
  const wander = Array.from({ length: points }, () => from(stand, 360 * random(), radius * Math.sqrt(random())));
  return tanglesOf(
    courseThrough([
      ...turtlePoints(origin, [[90, 190]], 10),
      ...wander,
      ...turtlePoints(from(stand, 90, 15), [[90, 185]], 10),
    ]),
  );
}

/** A circle of `radius` metres, run `times` times round in steps of 10°, between two straights. */
function circling(radius: number, times: number): Tangle[] {
  const step = 2 * radius * Math.sin(Math.PI / 36);
  const round = Array.from({ length: Math.round(36 * times) }, (_, k): TurtleLeg => [(90 + 10 * k) % 360, step]);
  return tanglesOf(turtle(ORIGIN, [[90, 300], ...round, [90, 300]], 50));
}

/** Legs of 2 m north and south by turns, between two straights. */
const zigzag = (legs: number): TurtleLeg[] => [
  [90, 100],
  ...Array.from({ length: legs }, (_, k): TurtleLeg => [k % 2 === 0 ? 0 : 180, 2]),
  [90, 100],
];

const tangle = (seed: number, at: LonLat): LonLat[] => {
  const random = generator(seed);
  return Array.from({ length: 40 }, () => from(at, 360 * random(), 4 * random()));
};

describe('standing-still tangles', () => {
  it('finds one where a recorder stood still, and where it did', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const tangles = standing(4, 60, seed);
      expect(tangles).toHaveLength(1);
      const [{ from: start, to: end }] = tangles as [Tangle];
      expect(start).toBeGreaterThan(175);
      expect(start).toBeLessThan(215);
      expect(end - start).toBeGreaterThan(100);
    }
  });

  it('finds it alike across the antimeridian and near a pole', () => {
    for (const origin of [
      [179.999, 12],
      [-179.999, -40],
      [25, 89],
    ] as LonLat[])
      expect(standing(4, 60, 1, origin)).toHaveLength(1);
  });

  it('finds none on roads: straight, a square corner, a turn-around, a roundabout', () => {
    const roads: TurtleLeg[][] = [
      [[90, 500]],
      [
        [90, 300],
        [0, 300],
      ],
      [
        [90, 300],
        [270, 300],
      ],
      [
        [90, 100],
        [0, 8],
        [90, 8],
        [180, 8],
        [90, 100],
      ],
    ];
    for (const road of roads) expect(tanglesOf(turtle(ORIGIN, road, 5))).toEqual([]);
    expect(circling(9, 1)).toEqual([]);
  });

  it('finds none where the stretch leaves a circle of 10 m radius, one where it just stays inside', () => {
    expect(circling(9.5, 3)).toHaveLength(1);
    expect(circling(10.6, 3)).toEqual([]);
  });

  it('finds none up to 720° of turning, one beyond', () => {
    expect(circling(6, 1.9)).toEqual([]);
    expect(circling(6, 2.3)).toHaveLength(1);
  });

  it('finds none up to 30 m of measure, however much it turns', () => {
    // Straights of 100 m in one step: only the zigzag itself can be in the circle.
    expect(tanglesOf(turtle(ORIGIN, zigzag(14), 200))).toEqual([]);
    expect(tanglesOf(turtle(ORIGIN, zigzag(17), 200))).toHaveLength(1);
  });

  it('finds every one of several, in running order', () => {
    const spots = [200, 600, 900].map((along) => from(ORIGIN, 90, along));
    const line = spots.flatMap((spot, k) => [
      ...turtlePoints(
        k === 0 ? ORIGIN : from(spots[k - 1]!, 90, 15),
        [[90, (k === 0 ? 200 : k === 1 ? 400 : 300) - 30]],
        10,
      ),
      ...tangle(k + 1, spot),
    ]);
    const tangles = tanglesOf(courseThrough([...line, from(spots[2]!, 90, 100)]));
    expect(tangles).toHaveLength(3);
    expect(tangles.every(({ from: start, to: end }, k) => start < end && (k === 0 || tangles[k - 1]!.to < start))).toBe(
      true,
    );
  });

  it('holds one of 4,000 points whole', () => {
    expect(standing(4, 4000, 9)).toHaveLength(1);
  });
});

describe('the circle that holds a tangle', () => {
  /** Seven times along the sides of an equilateral triangle, between two straights: the circle through its corners has side ÷ √3. */
  const triangle = (side: number, turned: number): Tangle[] =>
    tanglesOf(
      turtle(
        ORIGIN,
        [[90, 300], ...Array.from({ length: 21 }, (_, k): TurtleLeg => [(120 * k + turned) % 360, side]), [90, 300]],
        400,
      ),
    );

  it('is the smallest through three points where no two lie as far apart as it is wide', () => {
    for (const turned of [0, 25, 50, 75, 100]) {
      expect(triangle(10.05 * Math.sqrt(3), turned)).toEqual([]);
      expect(triangle(9.95 * Math.sqrt(3), turned)).toHaveLength(1);
    }
  });

  it('is that over two points where a third lies within it', () => {
    /** To and fro over so many metres, with a corner aside. */
    const shuttle = (width: number): Tangle[] =>
      tanglesOf(
        turtle(
          ORIGIN,
          [
            [90, 300],
            ...Array.from({ length: 18 }, (_, k): TurtleLeg =>
              k % 3 === 0 ? [0, width] : [k % 3 === 1 ? 170 : 190, width / 2 / Math.cos(Math.PI / 18)],
            ),
            [90, 300],
          ],
          400,
        ),
      );
    expect(shuttle(19.5)).toHaveLength(1);
    expect(shuttle(20.5)).toEqual([]);
  });

  it('goes as far as it holds: measures of both ends are those of vertices', () => {
    const course = turtle(
      ORIGIN,
      [[90, 300], ...Array.from({ length: 40 }, (_, k): TurtleLeg => [k % 2 === 0 ? 0 : 180, 5]), [90, 300]],
      400,
    );
    const [found, ...more] = tanglesOf(course);
    expect(more).toEqual([]);
    expect([...course.raw]).toEqual(expect.arrayContaining([found!.from, found!.to]));
    expect([found!.from, found!.to]).toEqual([expect.closeTo(300, 4), expect.closeTo(500, 4)]);
  });

  it('is looked for to the very end of the course', () => {
    const course = turtle(
      ORIGIN,
      [[90, 300], ...Array.from({ length: 40 }, (_, k): TurtleLeg => [k % 2 === 0 ? 0 : 180, 5])],
      400,
    );
    expect(tanglesOf(course)).toEqual([{ from: expect.closeTo(300, 4), to: expect.closeTo(500, 4) }]);
    expect(tanglesOf(turtle(ORIGIN, [[90, 20]], 5))).toEqual([]);
  });
});

it('every turn within the stretch counts, to the last', () => {
  /** Legs north and south by turns, between two straights of one step each: so many turns of 180° as there are legs, less one. */
  const turning = (legs: number, length: number): Tangle[] =>
    tanglesOf(
      turtle(
        ORIGIN,
        [[90, 100], ...Array.from({ length: legs }, (_, k): TurtleLeg => [k % 2 === 0 ? 0 : 180, length]), [90, 100]],
        200,
      ),
    );
  expect(turning(6, 6)).toHaveLength(1);
  expect(turning(5, 7)).toEqual([]);
});
