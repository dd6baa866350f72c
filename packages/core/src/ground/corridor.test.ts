/** What lies beside a course: beyond a gap that is skipped, across 180°, and lines of which no end is near. Distances are drawn in metres. */
import { describe, expect, it } from 'vitest';
import { fromEastNorth } from '../geodesy/frame.ts';
import type { LonLat } from '../finding.ts';
import { ORIGIN, courseOfSegments, courseThrough } from '../testing/courses.ts';
import { type Place, placed } from '../testing/towns.ts';
import { type Corridor, corridorOf, holds, meets } from './corridor.ts';

const REACH = 300;
const meetsLine = (corridor: Corridor, from: LonLat, to: LonLat): boolean[] => [
  meets(corridor, ...from, ...to),
  meets(corridor, ...to, ...from),
];

describe('a line', () => {
  // 6 km east, then 6 km north: the bounds of the course hold much that is far from it.
  const corridor = corridorOf(
    [
      courseThrough(
        (
          [
            [0, 0],
            [6000, 0],
            [6000, 6000],
          ] as Place[]
        ).map(placed),
      ),
    ],
    REACH,
  );
  const line = (from: Place, to: Place): boolean[] => meetsLine(corridor, placed(from), placed(to));
  const [yes, no] = [
    [true, true],
    [false, false],
  ];

  it('comes near where it crosses the course though both its ends are far', () => {
    expect(line([3000, -2000], [3000, 2000])).toEqual(yes);
    expect(line([3000, 400], [5650, 2000])).toEqual(no);
    expect(line([2000, 4000], [9000, 4100])).toEqual(yes);
    expect(line([-5000, 2000], [20_000, 2500])).toEqual(yes);
  });

  it('comes near where it passes a bend at the distance, not where it passes beyond', () => {
    // From the bend at 6000, 0 the line x − y = 6000 + d·√2 is d metres away.
    const beyond = (metres: number): boolean[] => {
      const x = 6000 + metres * Math.SQRT2;
      return line([x - 1500, -1500], [x + 1500, 1500]);
    };
    expect(beyond(297)).toEqual(yes);
    expect(beyond(303)).toEqual(no);
    expect(beyond(600)).toEqual(no);
  });

  it('is far where it stays in the open middle of the bounds, short or long', () => {
    expect(line([3000, 3000], [3050, 3020])).toEqual(no);
    expect(line([1000, 5000], [5000, 1000])).toEqual(no);
    expect(line([-2000, 400], [5000, 8000])).toEqual(no);
  });
});

it('of a gap that the course skips nothing is kept, of the runs before and behind it all', () => {
  const segments = [
    [0, 1000],
    [5000, 6000],
  ].map((ends) => ends.map((east) => placed([east, 0])));
  const corridor = corridorOf([courseOfSegments(segments, 'skip')], REACH);
  const held = [500, 1290, 1310, 3000, 4690, 4710, 5500].map((east) => holds(corridor, ...placed([east, 0])));
  expect(held).toEqual([true, true, false, false, false, true, true]);
  const joined = corridorOf([courseOfSegments(segments, 'join')], REACH);
  expect(holds(joined, ...placed([3000, 0]))).toBe(true);
});

describe('across 180°', () => {
  const near = (east: number, north: number): LonLat => {
    const [lon, lat] = fromEastNorth([180, ORIGIN[1]], east, north);
    return [lon > 180 ? lon - 360 : lon, lat];
  };
  it.each([
    ['eastward', [near(-2000, 0), near(2000, 0)]],
    ['westward', [near(2000, 0), near(-2000, 0)]],
  ] as const)('a course %s holds what is beside it on either side of the line', (_, course) => {
    const corridor = corridorOf([courseThrough(course)], REACH);
    for (const east of [-1900, -10, 10, 1900])
      expect([290, 310].map((north) => holds(corridor, ...near(east, north)))).toEqual([true, false]);
    expect(holds(corridor, 0, ORIGIN[1])).toBe(false);
  });

  it('a street goes the short way over the line, not around the earth', () => {
    const corridor = corridorOf([courseThrough([near(-2000, 0), near(2000, 0)])], REACH);
    expect(meetsLine(corridor, near(-500, -900), near(500, 900))).toEqual([true, true]);
    expect(meetsLine(corridor, near(-500, 400), near(500, 400))).toEqual([false, false]);
    // A course on the other side of the earth is on no such street.
    const far = corridorOf(
      [
        courseThrough([
          [0, ORIGIN[1]],
          [0.02, ORIGIN[1]],
        ]),
      ],
      REACH,
    );
    expect(meetsLine(far, near(-500, 0), near(500, 0))).toEqual([false, false]);
  });
});
