/** What leads a matching astray, drawn by hand. */
import { describe, expect, it } from 'vitest';
import { calibrate } from '../course/calibrate.ts';
import { indexCourse } from '../course/segmentIndex.ts';
import { courseOfSegments, valueOf } from '../testing/courses.ts';
import { type Drawing, type Place, courseAlong, drawnGround, placed } from '../testing/towns.ts';
import type { GroundAlong } from './along.ts';
import type { Tags } from './ground.ts';
import { groundAlong } from './groundAlong.ts';

const named = (name: string, more: Tags = {}): Tags => ({ highway: 'residential', name, ...more });
/** A line of places with made-up names: `(p, [0, 0], [9, 0])` is `p0 p1`. */
const line = (id: string, ...places: Place[]): Drawing['places'] =>
  Object.fromEntries(places.map((place, k) => [`${id}${k}`, place]));
const alongOf = (
  course: readonly Place[],
  places: Drawing['places'],
  ways: Drawing['ways'],
  areas: Drawing['areas'] = {},
): GroundAlong => groundAlong(courseAlong(course), drawnGround({ places, ways, areas }));
const brief = ({ streets }: GroundAlong): unknown[] =>
  streets.map(({ way, from, to }) => [way, Math.round(from), Math.round(to)]);
const OUT: readonly Place[] = [
  [0, 0],
  [400, 0],
];

describe('a course', () => {
  it('stays on its street where another runs beside it, nearer for a while', () => {
    const places = { ...line('a', [0, 0], [400, 0]), ...line('b', [0, 12], [400, 12]) };
    const ways: Drawing['ways'] = { a: ['a0 a1', named('A')], b: ['b0 b1', named('B')] };
    const swaying: Place[] = [
      [0, 0],
      [150, 1],
      [180, 7],
      [220, 7],
      [250, 1],
      [400, 0],
    ];
    expect(alongOf(swaying, places, ways).streets.map(({ way }) => way)).toEqual(['a']);
  });

  it('does not turn into a street that it crosses, however bent the crossing', () => {
    const places = {
      ...line('a', [0, 0], [190, 0], [200, 3], [210, 0], [400, 0]),
      ...line('b', [195, -90], [196, -9], [204, 12], [203, 90]),
    };
    const ways: Drawing['ways'] = { a: ['a0 a1 a2 a3 a4', named('A')], b: ['b0 b1 a2 b2 b3', named('B')] };
    expect(brief(alongOf(OUT, places, ways))).toEqual([['a', 0, 400]]);
  });

  it('is matched against the drawing of a way and against its oneway as well', () => {
    const places = line('a', [0, 0], [200, 0], [400, 0]);
    const ways: Drawing['ways'] = {
      a: ['a1 a0', named('A', { oneway: 'yes' })],
      b: ['a1 a2', named('A', { oneway: '-1' })],
    };
    expect(brief(alongOf(OUT, places, ways))).toEqual([
      ['a', 0, 200],
      ['b', 200, 400],
    ]);
  });

  it('keeps to one carriageway, also where it is drawn in the middle of two', () => {
    const places = { ...line('s', [0, -7], [400, -7]), ...line('n', [400, 7], [0, 7]) };
    const ways: Drawing['ways'] = {
      s: ['s0 s1', named('Boulevard', { oneway: 'yes' })],
      n: ['n0 n1', named('Boulevard', { oneway: 'yes' })],
    };
    const middle = Array.from({ length: 41 }, (_, k): Place => [k * 10, k % 2 === 0 ? 0.5 : -0.4]);
    const along = alongOf(middle, places, ways);
    expect(along.streets).toHaveLength(1);
    expect(along.streets[0]?.name).toBe('Boulevard');
  });

  it('goes round a roundabout either way, and straight across a small one without leaving the map', () => {
    const ring = Array.from({ length: 12 }, (_, k): Place => [
      200 + 14 * Math.cos((k * Math.PI) / 6),
      14 * Math.sin((k * Math.PI) / 6),
    ]);
    const places = { ...line('r', ...ring), w: [0, 0], e: [400, 0], n: [200, 120] } as const;
    const ways: Drawing['ways'] = {
      west: ['w r6', named('A')],
      ring: [
        `${ring.map((_, k) => `r${k}`).join(' ')} r0`,
        { highway: 'residential', junction: 'roundabout', oneway: 'yes' },
      ],
      east: ['r0 e', named('A')],
      north: ['r3 n', named('B')],
    };
    const over = alongOf([[0, 0], ...[6, 5, 4, 3, 2, 1, 0].map((k) => ring[k]!), [400, 0]], places, ways);
    const under = alongOf([[0, 0], ...[6, 7, 8, 9, 10, 11, 0].map((k) => ring[k]!), [400, 0]], places, ways);
    for (const { streets, offMap } of [over, under]) {
      expect(streets.map(({ way }) => way)).toEqual(['west', 'ring', 'east']);
      expect(offMap).toEqual([]);
    }
    expect(over.junctions.flatMap(({ names }) => names)).toEqual(['B']);
    expect(under.junctions.flatMap(({ names }) => names)).toEqual([]);
    const across = alongOf(OUT, places, ways);
    expect(across.offMap).toEqual([]);
    expect(
      across.streets.filter(({ name }) => name === 'A').reduce((sum, { from, to }) => sum + to - from, 0),
    ).toBeGreaterThan(360);
  });

  it('comes to the same street as often as it runs there', () => {
    const places = line('a', [0, 0], [100, 0], [100, 100], [0, 100]);
    const ways: Drawing['ways'] = {
      a: ['a0 a1', named('A')],
      b: ['a1 a2', named('B')],
      c: ['a2 a3', named('C')],
      d: ['a3 a0', named('D')],
    };
    const lap: Place[] = [
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ];
    const { streets } = alongOf([...lap, ...lap, [0, 0]], places, ways);
    expect(streets.map(({ name }) => name).join('')).toBe('ABCDABCD');
  });

  it('turns back on its street without leaving it', () => {
    const places = line('a', [0, 0], [400, 0]);
    expect(
      brief(
        alongOf(
          [
            [0, 0],
            [300, 0],
            [0, 0],
          ],
          places,
          { a: ['a0 a1', named('A')] },
        ),
      ),
    ).toEqual([['a', 0, 600]]);
  });

  it('runs on the street rather than on the pavement beside it', () => {
    const places = { ...line('a', [0, 0], [400, 0]), ...line('p', [0, 5], [400, 5]) };
    const ways: Drawing['ways'] = {
      a: ['a0 a1', named('A')],
      p: ['p0 p1', { highway: 'footway', footway: 'sidewalk' }],
    };
    const beside: Place[] = [
      [0, 2.5],
      [400, 2.5],
    ];
    expect(brief(alongOf(beside, places, ways))).toEqual([['a', 0, 400]]);
  });

  it('has the name of the street beside it on a pavement and on the crossings between, but not on a path of its own', () => {
    const places = { ...line('a', [0, 0], [400, 0]), ...line('p', [0, 9], [190, 9], [210, 9], [400, 9]) };
    const on = (tags: Tags): (string | null)[] => {
      const ways: Drawing['ways'] = {
        a: ['a0 a1', named('A')],
        p: ['p0 p1', { highway: 'footway', footway: 'sidewalk', ...tags }],
        c: ['p1 p2', { highway: 'footway', footway: 'crossing', ...tags }],
        q: ['p2 p3', { highway: 'footway', footway: 'sidewalk', ...tags }],
      };
      const beside: Place[] = [
        [0, 9],
        [400, 9],
      ];
      return alongOf(beside, places, ways).streets.map(({ name }) => name);
    };
    expect(on({})).toEqual(['A', 'A', 'A']);
    expect(on({ footway: 'access_aisle' })).toEqual([null, null, null]);
    expect(on({ name: 'Arcade' })).toEqual(['Arcade', 'Arcade', 'Arcade']);
  });

  it('is never on rails, water, or a street that is not built', () => {
    const places = line('a', [0, 0], [400, 0]);
    for (const tags of [
      { railway: 'rail' },
      { waterway: 'river' },
      { highway: 'construction' },
      { highway: 'proposed' },
    ])
      expect(alongOf(OUT, places, { a: ['a0 a1', tags] })).toMatchObject({ streets: [], offMap: [{ from: 0 }] });
  });

  it('is on paths, steps, tracks, squares and piers of streets alike', () => {
    const places = line('a', [0, 0], [400, 0]);
    for (const highway of ['footway', 'path', 'track', 'steps', 'pedestrian', 'cycleway', 'motorway', 'service'])
      expect(brief(alongOf(OUT, places, { a: ['a0 a1', { highway }] }))).toEqual([['a', 0, 400]]);
  });
});

describe('a stretch off the map', () => {
  const places = {
    ...line('a', [0, 0], [150, 0]),
    ...line('b', [250, 0], [400, 0]),
    ...line('c', [200, -60], [200, 60]),
  };
  const ways: Drawing['ways'] = { a: ['a0 a1', named('A')], b: ['b0 b1', named('B')] };

  it('is over 50 m that follow no street within 20 m', () => {
    const { offMap } = alongOf(OUT, places, ways);
    expect(offMap).toHaveLength(1);
    expect(Math.abs(offMap[0]!.from - 165)).toBeLessThan(10);
    expect(Math.abs(offMap[0]!.to - 235)).toBeLessThan(10);
  });

  it('is not ended by a street that the course crosses', () =>
    expect(alongOf(OUT, places, { ...ways, c: ['c0 c1', named('C')] }).offMap).toHaveLength(1));

  it('is the whole course on a map of another place, and without any map', () => {
    const far = line('a', [50_000, 0], [50_400, 0]);
    for (const along of [alongOf(OUT, far, { a: ['a0 a1', named('A')] }), alongOf(OUT, {}, {})]) {
      expect(along.offMap).toHaveLength(1);
      expect(along.offMap[0]!.from).toBe(0);
      expect(along.offMap[0]!.to).toBeCloseTo(400, 3);
      expect(along).toMatchObject({
        streets: [],
        junctions: [],
        features: [],
        keepClear: [],
        widths: [],
        surfaces: [],
      });
    }
  });

  it('is none on a square, which the course crosses where it likes and which names the stretch', () => {
    const corners = line('s', [150, -80], [250, -80], [250, 80], [150, 80]);
    const square = {
      square: ['s0 s1 s2 s3 s0', { highway: 'pedestrian', area: 'yes', name: 'Market Square' }],
    } as const;
    const along = alongOf(OUT, { ...places, ...corners }, ways, square);
    expect(along.offMap).toEqual([]);
    expect(along.streets.map(({ name }) => name)).toEqual(['A', 'Market Square', 'B']);
    expect(along.widths.every(({ rests }) => rests === 'class')).toBe(true);
  });
});

describe('measures', () => {
  const ways: Drawing['ways'] = {
    a: ['a0 a1', named('A', { surface: 'asphalt', width: '7' })],
    b: ['a1 a2', named('B', { surface: 'sett' })],
  };
  const ground = drawnGround({ places: line('a', [0, 0], [200, 0], [400, 0]), ways });

  it('are calibrated where the course is', () => {
    const indexed = valueOf(calibrate(courseAlong(OUT), { marks: [], length: 440 }));
    const { streets, widths, surfaces } = groundAlong(indexed, ground);
    expect(streets.map(({ to }) => Math.round(to))).toEqual([220, 440]);
    expect(widths.map(({ width, rests }) => [width, rests])).toEqual([
      [7, 'width'],
      [6, 'class'],
    ]);
    expect(surfaces.map(({ surface, from }) => [surface, Math.round(from)])).toEqual([
      ['asphalt', 0],
      ['sett', 220],
    ]);
  });

  it('pass a skipped gap, on both sides of which the course is matched for itself', () => {
    const at = (...places: Place[]): ReturnType<typeof placed>[] => places.map(placed);
    const course = courseOfSegments([at([0, 0], [100, 0], [180, 0]), at([260, 0], [330, 0], [400, 0])], 'skip');
    const along = groundAlong(indexCourse(course), ground);
    expect(brief(along)).toEqual([
      ['a', 0, 180],
      ['b', 180, 320],
    ]);
    expect(along.offMap).toEqual([]);
  });
});
