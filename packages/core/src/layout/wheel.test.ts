import { describe, expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import { type Course, courseLength } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import { fromEastNorth } from '../geodesy/frame.ts';
import { courseOfSegments } from '../testing/courses.ts';
import { offsetUncertainty, readWheel, wheelBetween, wheelLine } from './wheel.ts';

type Point = readonly [x: number, y: number];

/** A course through points of a plane, metres from an origin. */
function courseOf(
  points: readonly Point[],
  drawn: Course['drawn'] = 'centre',
  origin: LonLat = [-17.4, -33.2],
): Course {
  const placed = points.map(([x, y]) => fromEastNorth(origin, x, y));
  const segment = {
    lon: Float64Array.from(placed, (p) => p[0]),
    lat: Float64Array.from(placed, (p) => p[1]),
    ele: new Float64Array(placed.length).fill(NaN),
  };
  const built = buildCourse({ id: 'c', name: 'c', segments: [segment], drawn });
  if (!built.ok) throw new Error(built.findings[0]!.message);
  return built.value;
}

/** Straight, a bend of `radius` through `turnDeg` (left positive), straight; vertices every `step` metres. */
function bend(turnDeg: number, radius: number, leg = 60, step = 2): Point[] {
  const points: Point[] = [];
  for (let s = 0; s < leg; s += step) points.push([s, 0]);
  const sign = Math.sign(turnDeg);
  const turn = (Math.abs(turnDeg) * Math.PI) / 180;
  const pieces = Math.ceil((radius * turn) / step);
  for (let k = 0; k <= pieces; k++) {
    const angle = (turn * k) / pieces;
    points.push([leg + radius * Math.sin(angle), sign * radius * (1 - Math.cos(angle))]);
  }
  const [x, y] = points.at(-1)!;
  for (let s = step; s <= leg; s += step) points.push([x + s * Math.cos(turn), y + sign * s * Math.sin(turn)]);
  return points;
}

const corner = (turnDeg: number, leg = 60): Point[] => {
  const turn = (turnDeg * Math.PI) / 180;
  return [
    [0, 0],
    [leg / 2, 0],
    [leg, 0],
    [leg + (leg / 2) * Math.cos(turn), (leg / 2) * Math.sin(turn)],
    [leg + leg * Math.cos(turn), leg * Math.sin(turn)],
  ];
};

function toSegment([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const dx = bx - ax;
  const dy = by - ay;
  const t = Math.min(Math.max(((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy), 0), 1);
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}

/**
 * The reference, which knows nothing of trims and arcs: walk the course in steps of 10 cm, stand square beside it
 * (turning on the spot at vertices), keep only the places that are no nearer than the offset to any of the course, and measure the way between them.
 */
function walked(points: readonly Point[], offset: number): number {
  const spots: Point[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [ax, ay] = points[i]!;
    const [bx, by] = points[i + 1]!;
    const length = Math.hypot(bx - ax, by - ay);
    const heading = Math.atan2(by - ay, bx - ax);
    for (let s = 0; s <= length; s += 0.1) {
      const t = s / length;
      spots.push([ax + t * (bx - ax) - offset * Math.sin(heading), ay + t * (by - ay) + offset * Math.cos(heading)]);
    }
    spots.push([bx - offset * Math.sin(heading), by + offset * Math.cos(heading)]);
    const next = points[i + 2];
    if (next === undefined) continue;
    const turn = Math.atan2(
      Math.sin(Math.atan2(next[1] - by, next[0] - bx) - heading),
      Math.cos(Math.atan2(next[1] - by, next[0] - bx) - heading),
    );
    for (let k = 1; k <= 40; k++) {
      const angle = heading + (turn * k) / 40;
      spots.push([bx - offset * Math.sin(angle), by + offset * Math.cos(angle)]);
    }
  }
  const kept = spots.filter((spot) =>
    points.slice(1).every((point, i) => toSegment(spot, points[i]!, point) > Math.abs(offset) - 1e-6),
  );
  return kept.slice(1).reduce((sum, spot, k) => sum + Math.hypot(spot[0] - kept[k]![0], spot[1] - kept[k]![1]), 0);
}

describe('wheel distance', () => {
  it('is the course distance on a straight road, on the line and on both sides', () => {
    const course = courseOf([
      [0, 0],
      [50, 0],
      [120, 0],
    ]);
    for (const offset of [-8, 0, 8])
      expect(wheelBetween(course, 110, 20, offset, 1)).toEqual({
        length: expect.closeTo(-90, 6),
        margin: expect.closeTo(0, 6),
      });
  });

  it('loses 12 m inside a square corner at 6 m, and gains a quarter circle outside', () => {
    const course = courseOf(corner(90));
    const length = courseLength(course);
    expect(wheelBetween(course, 0, length, 6, 1)!.length).toBeCloseTo(length - 12, 5);
    expect(wheelBetween(course, 0, length, -6, 1)!.length).toBeCloseTo(length + 3 * Math.PI, 5);
    expect(wheelBetween(course, 0, length, 6, 1)!.margin).toBeCloseTo(Math.PI / 2, 5);
  });

  it('equals the offset line walked by a reference, to 0.3 m, on corners of 30 to 120° and smooth bends, on both sides', () => {
    for (const offset of [2, -2, 5, -5, 8, -8, 12, -12]) {
      for (const turnDeg of [30, 60, 90, 120, -30, -90, -120]) {
        const shapes = [corner(turnDeg), bend(turnDeg, 15), bend(turnDeg, 40, 60, 5)];
        for (const points of shapes) {
          const course = courseOf(points);
          const reading = wheelBetween(course, 0, courseLength(course), offset, 1)!;
          expect(Math.abs(reading.length! - walked(points, offset)), `${turnDeg}° at ${offset} m`).toBeLessThan(0.3);
        }
      }
    }
  });

  it('is null where the inside of a smooth bend is tighter than the offset, however finely it is drawn, and only there', () => {
    for (const step of [0.3, 1, 2.5]) {
      const course = courseOf(bend(90, 7, 60, step));
      expect(wheelBetween(course, 0, courseLength(course), 7.6, 1)!.length, `step ${step}`).toBeNull();
      expect(wheelBetween(course, 0, courseLength(course), 6.4, 1)!.length, `step ${step}`).not.toBeNull();
      expect(wheelBetween(course, 0, courseLength(course), -7.6, 1)!.length, `step ${step}`).not.toBeNull();
    }
  });

  it('is null where a leg is shorter than the trims on it, and at a turn over 150°', () => {
    const chicane = courseOf([
      [0, 0],
      [50, 0],
      [50, 15],
      [0, 15],
    ]);
    expect(wheelBetween(chicane, 0, courseLength(chicane), 8, 1)!.length).toBeNull();
    expect(wheelBetween(chicane, 0, courseLength(chicane), 7, 1)!.length).toBeCloseTo(115 - 28, 5);
    const short = courseOf(corner(90));
    expect(wheelBetween(short, 56, courseLength(short), 6, 1)!.length).toBeNull();
    const back = courseOf([
      [0, 0],
      [60, 0],
      [0, 10],
    ]);
    expect(wheelBetween(back, 0, courseLength(back), -4, 1)!.length).toBeNull();
  });

  it('trims a drawn corner over vertices of a leg that hardly turn', () => {
    const points: Point[] = [
      [0, 0],
      [20, 0],
      [40, 0.2],
      [50, 0.2],
      [54, 0.25],
      [58, 0.25],
      [60, 0.25],
      [60, 3],
      [60, 8],
      [60, 40],
    ];
    const course = courseOf(points);
    expect(Math.abs(wheelBetween(course, 0, courseLength(course), 10, 1)!.length! - walked(points, 10))).toBeLessThan(
      0.3,
    );
  });

  it('smooths a recorded track first, so that its jitter is not taken for turns', () => {
    let state = 5;
    const noise = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state / 4294967296 - 0.5) * 0.6;
    };
    const points = Array.from({ length: 41 }, (_, k): Point => [k * 5 + noise(), noise()]);
    const drawn = courseOf(points, 'centre');
    const recorded = courseOf(points, 'recorded');
    const length = courseLength(recorded);
    const reading = wheelBetween(recorded, 20, length - 20, 6, 1)!;
    expect(Math.abs(reading.length! - (length - 40))).toBeLessThan(1);
    // A part of its margin is the doubt about the headings at both ends.
    expect(reading.margin).toBeLessThan(wheelBetween(drawn, 20, length - 20, 6, 1)!.margin);
  });

  it('does not take the rounding of a straight line next to an end for a corner without a leg', () => {
    const course = courseOf(Array.from({ length: 41 }, (_, k): Point => [k * 10, 0]));
    for (const end of [200, 200 + 2e-9, 200 - 2e-9])
      expect(wheelBetween(course, 50, end, 6, 1)!.length).toBeCloseTo(end - 50, 5);
  });

  it('has no reading where an end is off the course', () => {
    const course = courseOf(corner(90));
    expect(wheelBetween(course, -1, 50, 3, 1)).toBeNull();
    expect(wheelBetween(course, 10, courseLength(course) + 1, 3, 1)).toBeNull();
  });

  it('has no reading of a number that is none', () => {
    const course = courseOf(corner(90));
    for (const [from, to, offset, uncertainty] of [
      [NaN, 50, 3, 1],
      [10, NaN, 3, 1],
      [10, 50, NaN, 1],
      [10, 50, 3, NaN],
      [10, 50, Infinity, 1],
    ] as const)
      expect(wheelBetween(course, from, to, offset, uncertainty)).toBeNull();
  });

  it('is read backwards with its sign: upstream of the chalk mark as long as downstream', () => {
    const course = courseOf(corner(90));
    const length = courseLength(course);
    const [ahead, back] = [wheelBetween(course, 10, length - 10, 6, 2)!, wheelBetween(course, length - 10, 10, 6, 2)!];
    expect(ahead.length).toBeCloseTo(length - 20 - 12, 5);
    expect(back).toEqual({ length: -ahead.length!, margin: ahead.margin });
    expect(ahead.margin).toBeCloseTo(Math.PI, 5);
    expect(wheelBetween(course, 20, 20, 6, 2)).toEqual({ length: 0, margin: 0 });
    expect(Object.is(wheelBetween(course, 20, 20, 6, 2)!.length, 0)).toBe(true);
  });

  it('reaches to the very ends of the course, and is not there where a skipped gap lies between, or at an end', () => {
    const course = courseOf([
      [0, 0],
      [100, 0],
    ]);
    expect(wheelBetween(course, 0, courseLength(course), 6, 1)!.length).toBeCloseTo(100, 5);
    const origin: LonLat = [-17.4, -33.2];
    const [a, b] = [
      [
        [0, 0],
        [100, 0],
      ],
      [
        [200, 0],
        [300, 0],
      ],
    ].map((points) => points.map(([x, y]) => fromEastNorth(origin, x!, y!)));
    const gapped = courseOfSegments([a!, b!], 'skip');
    const gap = gapped.skips[0]!.raw;
    expect(wheelBetween(gapped, 20, gap + 20, 6, 1)).toBeNull();
    expect(wheelBetween(gapped, gap + 20, 20, 6, 1)).toBeNull();
    expect(wheelBetween(gapped, 20, gap - 0.01, 6, 1)!.length).toBeCloseTo(gap - 20.01, 4);
    expect(wheelBetween(gapped, gap + 0.01, gap + 50, 6, 1)!.length).toBeCloseTo(49.99, 4);
    expect(wheelBetween(gapped, 20, gap, 6, 1)).toBeNull();
  });

  it('keeps the heading of a recorded track at the ends of the course, and reads its bends over 10 m', () => {
    const straight = courseOf(
      Array.from({ length: 21 }, (_, k): Point => [k * 5, 0]),
      'recorded',
    );
    const length = courseLength(straight);
    expect(wheelBetween(straight, 0, length, 6, 1)!.length).toBeCloseTo(length, 4);
    const turned = courseOf(bend(60, 40, 60, 2), 'recorded');
    const reading = wheelBetween(turned, 5, courseLength(turned) - 5, 5, 1)!;
    expect(reading.length! - (courseLength(turned) - 10)).toBeCloseTo((-5 * Math.PI) / 3, 1);
    expect(reading.margin).toBeCloseTo(Math.PI / 3, 2);
  });

  it('has an uncertainty of 1 m on a line drawn on the road’s centre, else half the road, or 4 m where that is unknown', () => {
    const drawn = (how: Course['drawn']): Course =>
      courseOf(
        [
          [0, 0],
          [100, 0],
        ],
        how,
      );
    expect([offsetUncertainty(drawn('centre'), 9), offsetUncertainty(drawn('centre'), undefined)]).toEqual([1, 1]);
    for (const how of ['shortest', 'recorded'] as const)
      expect([offsetUncertainty(drawn(how), 9), offsetUncertainty(drawn(how), undefined)]).toEqual([4.5, 4]);
  });
});

it('a line found for more of the course reads the same, also next to a recorded corner', () => {
  const course = courseOf(bend(80, 12, 60, 2), 'recorded');
  const length = courseLength(course);
  for (const [from, to] of [
    [61, 101],
    [71, 111],
    [1, 61],
    [65, 73],
  ] as const) {
    const [own, whole] = [
      readWheel(wheelLine(course, from, to), from, to, 5, 1)!,
      readWheel(wheelLine(course, 0, length), from, to, 5, 1)!,
    ];
    expect(own.length).toBeCloseTo(whole.length!, 6);
    expect(own.margin).toBeCloseTo(whole.margin, 6);
  }
});
