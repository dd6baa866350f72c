import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { frameAt, fromEastNorth } from '../geodesy/frame.ts';
import { ORIGIN, courseOfSegments, courseThrough } from '../testing/courses.ts';
import { type Minimum, minimaNear } from './minima.ts';
import { nearestOn, passesOf } from './passes.ts';
import { type IndexedCourse, indexCourse } from './segmentIndex.ts';

type Point = readonly [east: number, north: number];

const ground = ([east, north]: Point): LonLat => fromEastNorth(ORIGIN, east, north);
/** A course through points of a plane, metres from the pin. */
const through = (...points: Point[]): IndexedCourse => indexCourse(courseThrough(points.map(ground)));
const minima = (indexed: IndexedCourse): Minimum[] => minimaNear(indexed, frameAt(...ORIGIN), 60, 10);
const close = (value: number): number => expect.closeTo(value, 4) as number;

const polar = (radius: number, degrees: number): Point => [
  radius * Math.cos((degrees * Math.PI) / 180),
  radius * Math.sin((degrees * Math.PI) / 180),
];

describe('a place where the course comes nearest', () => {
  it('inside a segment is square to it, with its measure, its tangent and no turn', () => {
    expect(minima(through([-90, -10], [70, -10]))).toEqual([
      {
        distance: close(10),
        raw: close(90),
        east: close(0),
        north: close(-10),
        tangentEast: close(1),
        tangentNorth: close(0),
        turnDeg: 0,
        rise: Infinity,
      },
    ]);
  });

  it('at a corner has the mean of both directions, and says by how much the course turns there', () => {
    const [minimum, ...more] = minima(through([-100, 10], [-10, 10], [-10, 100]));
    expect(more).toEqual([]);
    expect(minimum).toMatchObject({
      raw: close(90),
      tangentEast: close(Math.SQRT1_2),
      tangentNorth: close(Math.SQRT1_2),
      turnDeg: expect.closeTo(90, 3),
      distance: close(Math.hypot(10, 10)),
    });
  });

  it('where the course turns right back has the direction of the way back', () => {
    const [minimum] = minima(through([100, 0], [10, 0], [100, 0]));
    expect(minimum).toMatchObject({
      distance: close(10),
      tangentEast: close(1),
      tangentNorth: close(0),
      turnDeg: expect.closeTo(180, 3),
    });
  });

  it('at an end of the course says which end where the point lies beyond it, and not where it stands right there', () => {
    expect(minima(through([20, 0], [90, 0]))).toMatchObject([
      { end: 'start', raw: 0, distance: close(20), tangentEast: close(1) },
    ]);
    expect(minima(through([-90, 0], [-20, 0]))).toMatchObject([
      { end: 'finish', raw: close(70), distance: close(20), tangentEast: close(1) },
    ]);
    const [start] = minima(indexCourse(courseThrough([ORIGIN, ground([90, 0])])));
    expect(start).not.toHaveProperty('end');
    const [finish] = minima(indexCourse(courseThrough([ground([90, 0]), ORIGIN])));
    expect(finish).not.toHaveProperty('end');
  });

  it('is none beyond the radius, and just inside it is one', () => {
    expect(minima(through([-90, 60.01], [90, 60.01]))).toEqual([]);
    expect(minima(through([-90, 59.99], [90, 59.99]))).toHaveLength(1);
  });

  it('knows how far the course goes before it comes back, be it to a vertex or beyond the radius', () => {
    const [first, second, third] = minima(through([-90, -10], [30, -10], [30, 10], [-90, 10]));
    expect(first!.rise).toBeCloseTo(Math.hypot(30, 10), 4);
    expect(second!.rise).toBeCloseTo(Math.hypot(30, 10), 4);
    expect(third!.rise).toBe(Infinity);
    // At 64 m it turns back, beyond the radius: no minimum of its own.
    const away = minima(through([-20, -90], [-20, 0], [50, 50], [50, 40], [0, 20], [-90, 20]));
    expect(away[0]!.rise).toBeCloseTo(Math.hypot(50, 50), 3);
  });

  it('at a skipped gap is looked for on both sides of it by itself: no tangent of the jump, no end of the course', () => {
    const course = courseOfSegments(
      [
        [ground([-90, 5]), ground([-10, 5])],
        [ground([10, 100]), ground([10, 10]), ground([90, 10])],
      ],
      'skip',
    );
    const found = minima(indexCourse(course));
    expect(found).toHaveLength(2);
    expect(found[0]).toMatchObject({
      raw: close(80),
      tangentEast: close(1),
      tangentNorth: close(0),
      turnDeg: 0,
      rise: Infinity,
    });
    expect(found[1]).toMatchObject({ raw: close(80 + 90), turnDeg: expect.closeTo(90, 3), rise: Infinity });
    expect(found.every((minimum) => minimum.end === undefined)).toBe(true);
    const begins = minima(
      indexCourse(
        courseOfSegments(
          [
            [ground([-90, 90]), ground([-90, 80])],
            [ground([10, 10]), ground([90, 10])],
          ],
          'skip',
        ),
      ),
    );
    expect(begins).toMatchObject([
      {
        raw: close(10),
        distance: close(Math.hypot(10, 10)),
        tangentEast: close(1),
        tangentNorth: close(0),
        turnDeg: 0,
      },
    ]);
    expect(begins[0]).not.toHaveProperty('end');
  });
});

const passCount = (indexed: IndexedCourse): number => passesOf(indexed, ORIGIN).length;

describe('two places where the course comes near', () => {
  /** Comes to 20 m, goes off to `20 + rise`, comes to 20 m again, and runs much the same way at both. */
  const bulge = (rise: number): IndexedCourse =>
    through(polar(100, -40), polar(20, 0), polar(20 + rise, 30), polar(20, 60), polar(100, 100));

  it('are two passes from a rise of 10 m on, and one below', () => {
    expect(passCount(bulge(9.99))).toBe(1);
    expect(passCount(bulge(10.01))).toBe(2);
  });

  it('count the rise above the farther of the two', () => {
    const uneven = (rise: number): IndexedCourse =>
      through(polar(100, -40), polar(12, 0), polar(20 + rise, 30), polar(20, 60), polar(100, 100));
    expect(passCount(uneven(9.99))).toBe(1);
    expect(passCount(uneven(10.01))).toBe(2);
  });

  it('are two from a rise of 3 m on where the course has turned back', () => {
    /** Out 5 m right of the pin, across `length` beyond it, and back 5 m left of it. */
    const hairpin = (length: number): IndexedCourse => through([-90, -5], [length, -5], [length, 5], [-90, 5]);
    const rising = (rise: number): number => Math.sqrt((5 + rise) ** 2 - 25);
    expect(passCount(hairpin(rising(2.99)))).toBe(1);
    expect(passCount(hairpin(rising(3.01)))).toBe(2);
  });

  it('are one where less than 10 m of course lie between, though it turns back', () => {
    /** East to a point 20 m north of the pin, a spike of `leg` metres, and west again. */
    const spike = (leg: number): IndexedCourse => through([-90, 20], [0, 20], [0, 20 + leg], [0, 20], [-90, 20.5]);
    expect(passCount(spike(4.95))).toBe(1);
    expect(passCount(spike(5.05))).toBe(2);
  });

  it('are one where the course turns by less than 90° between them, two beyond', () => {
    /** Two straights that meet at a bulge of 5 m, the second turned by `turn` degrees against the first. */
    const bent = (turn: number): IndexedCourse => {
      const [enter, leave] = [polar(20, 0), polar(20, 60)];
      const [out, back] = [polar(60, -90), polar(60, turn)];
      return through(
        [enter[0] + out[0], enter[1] + out[1]],
        enter,
        [enter[0], enter[1] + 10.5],
        polar(25.5, 30),
        [leave[0] - 10.5 * Math.cos((turn * Math.PI) / 180), leave[1] - 10.5 * Math.sin((turn * Math.PI) / 180)],
        leave,
        [leave[0] + back[0], leave[1] + back[1]],
      );
    };
    expect(passCount(bent(175))).toBe(1);
    expect(passCount(bent(185))).toBe(2);
  });

  it('are held against the nearest so far: of three that rise by 6 m from one to the next, one pass with the nearest as its foot', () => {
    const indexed = through(
      polar(100, -80),
      polar(24, -40),
      polar(30, -20),
      polar(20, 0),
      polar(26, 20),
      polar(23, 40),
      polar(100, 80),
    );
    const [pass, ...more] = passesOf(indexed, ORIGIN);
    expect(more).toEqual([]);
    expect(pass!.distance).toBeCloseTo(20, 4);
  });

  it('add up what the course rises between a foot and the next, over places that are no passes', () => {
    // 20 m; up to 29; down to 22; up to 31, which is 10 above the farther of foot and last; down to 21.
    const indexed = through(
      polar(100, -80),
      polar(20, -45),
      polar(29, -22),
      polar(22, 0),
      polar(31.5, 22),
      polar(21, 45),
      polar(100, 80),
    );
    expect(passesOf(indexed, ORIGIN).map(({ distance }) => distance)).toEqual([close(20), close(21)]);
    const first = through(
      polar(100, -80),
      polar(20, -45),
      polar(31.5, -22),
      polar(22, 0),
      polar(29, 22),
      polar(21, 45),
      polar(100, 80),
    );
    expect(passesOf(first, ORIGIN).map(({ distance }) => distance)).toEqual([close(20), close(21)]);
  });
});

describe('the side of a pass', () => {
  const beside = (offset: number): IndexedCourse => through([-90, -offset], [90, -offset]);

  it('is told from the set confidence on, on both sides, and confidence is that of the normal distribution', () => {
    // σ = √(5² + 3²) ÷ 2.4477 = 2.3822 m; 95 % of a normal variate lie under 1.64485 σ (Abramowitz and Stegun, table 26.1).
    const sigma = Math.hypot(5, 3) / 2.4477;
    expect(passesOf(beside(1.6448 * sigma), ORIGIN)[0]!.side).toBe('unclear');
    expect(passesOf(beside(1.6449 * sigma), ORIGIN)[0]!.side).toBe('left');
    expect(passesOf(beside(-1.6449 * sigma), ORIGIN)[0]!.side).toBe('right');
    expect(passesOf(beside(sigma), ORIGIN)[0]!.confidence).toBeCloseTo(0.8413447, 5);
    const exact = { snapRadius: 60, pinR95: 0, courseR95: 0, sideConfidence: 0.95 };
    expect(passesOf(beside(0.01), ORIGIN, exact)[0]).toMatchObject({ side: 'left', confidence: 1 });
    expect(
      passesOf(indexCourse(courseThrough([ground([-90, 0]), ORIGIN, ground([90, 0])])), ORIGIN, {
        ...exact,
        sideConfidence: 0.5,
      })[0],
    ).toMatchObject({ side: 'unclear', confidence: 0.5, offset: 0 });
  });

  it('is unclear at a vertex that turns by more than 150°, and told at one that turns less', () => {
    /** Comes from the west to 20 m before the pin and goes back west, turned by so many degrees. */
    const tip = (degrees: number): IndexedCourse => {
      const half = ((180 - degrees) * Math.PI) / 360;
      return through(
        [-20 - 80 * Math.cos(half), -80 * Math.sin(half)],
        [-20, 0],
        [-20 - 80 * Math.cos(half), 80 * Math.sin(half)],
      );
    };
    expect(passesOf(tip(149), ORIGIN)[0]!.side).toBe('right');
    expect(passesOf(tip(151), ORIGIN)[0]!.side).toBe('unclear');
  });

  it('beyond an end is that across the course, and its offset the part across it', () => {
    const [start] = passesOf(through([20, -7], [90, -7]), ORIGIN);
    expect(start).toMatchObject({ end: 'start', side: 'left', offset: close(7), distance: close(Math.hypot(20, 7)) });
    const [finish] = passesOf(through([-90, 7], [-20, 7]), ORIGIN);
    expect(finish).toMatchObject({
      end: 'finish',
      side: 'right',
      offset: close(-7),
      distance: close(Math.hypot(20, 7)),
    });
  });
});

it('the nearest place is the nearest of several, the first of equal ones, and is found however far it is', () => {
  const indexed = through([-500, -300], [500, -300], [500, 200], [-500, 200]);
  expect(nearestOn(indexed, ORIGIN)).toMatchObject({
    distance: expect.closeTo(200, 3),
    measure: expect.closeTo(2000, 2),
  });
  const equal = through([-500, -300], [500, -300], [500, 300], [-500, 300]);
  expect(nearestOn(equal, ORIGIN).measure).toBeCloseTo(500, 2);
});

it('the offset at a corner is the whole distance, also off the line that halves it', () => {
  const [pass] = passesOf(through([-100, 6], [-12, 6], [-12, 100]), ORIGIN);
  expect(pass).toMatchObject({ distance: close(Math.hypot(12, 6)), offset: close(-Math.hypot(12, 6)), side: 'right' });
});
