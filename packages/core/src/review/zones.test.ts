import { describe, expect, it } from 'vitest';
import type { Position } from 'geojson';
import type { LonLat } from '../finding.ts';
import { fromEastNorth } from '../geodesy/frame.ts';
import type { PlanZone } from '../plan/plan.ts';
import { ORIGIN, generator } from '../testing/courses.ts';
import { type LocalZone, boundsApart, deepestIn, depthIn, encloses, local, localZones, zoneAbout } from './zones.ts';

const ground = (places: readonly Position[]): LonLat[] => places.map(([x, y]) => fromEastNorth(ORIGIN, x!, y!));
const zone = (places: readonly Position[], rule: PlanZone['rule'] = 'allowed', name: string = 'z'): PlanZone => ({
  name,
  rule,
  polygon: ground(places),
});
/** 40 m wide, 20 m high. */
const OBLONG: Position[] = [
  [0, 0],
  [40, 0],
  [40, 20],
  [0, 20],
];
const [oblong] = localZones([zone(OBLONG)], 'allowed', ORIGIN) as [LocalZone];
const close = (value: number): number => expect.closeTo(value, 5) as number;

describe('a zone in metres from an origin', () => {
  it('has a closed ring, be it given open or closed, and its bounds', () => {
    const ring = [...OBLONG, OBLONG[0]!].map(([x, y]) => [close(x!), close(y!)]);
    for (const given of [OBLONG, [...OBLONG, OBLONG[0]!]]) {
      const [made] = localZones([zone(given)], 'allowed', ORIGIN);
      expect(made).toEqual({
        name: 'z',
        shape: { type: 'Polygon', coordinates: [ring] },
        box: [close(0), close(0), close(40), close(20)],
      });
    }
    // A last place that shares one number with the first is a corner of its own.
    const ringed = (...polygon: LonLat[]): number =>
      localZones([{ name: 'z', rule: 'allowed', polygon }], 'allowed', [1, 1])[0]!.shape.coordinates[0]!.length;
    for (const last of [
      [1, 1.001],
      [1.001, 1],
    ] as LonLat[])
      expect(ringed([1, 1], [1.002, 1.001], [1.002, 1.002], last)).toBe(5);
    expect(ringed([1, 1], [1.002, 1.001], [1.002, 1.002], [1, 1])).toBe(4);
  });

  it('is one of the rule asked for that encloses something', () => {
    const zones = [
      zone(OBLONG, 'keep-clear', 'a'),
      zone(OBLONG, 'allowed', 'b'),
      zone(
        [
          [0, 0],
          [9, 9],
          [0, 0],
        ],
        'allowed',
        'c',
      ),
      zone(
        [
          [0, 0],
          [9, 0],
          [0, 9],
        ],
        'allowed',
        'd',
      ),
    ];
    expect(localZones(zones, 'allowed', ORIGIN).map(({ name }) => name)).toEqual(['b', 'd']);
    expect(localZones(zones, 'keep-clear', ORIGIN).map(({ name }) => name)).toEqual(['a']);
    expect(
      [
        [
          [0, 0],
          [9, 0],
        ],
        [
          [0, 0],
          [9, 0],
          [9, 0],
          [0, 0],
        ],
        [
          [0, 0],
          [9, 0],
          [0, 9],
        ],
      ].map((places) => encloses(zone(places))),
    ).toEqual([false, false, true]);
  });
});

describe('how deep a place lies in a zone', () => {
  it('is the distance to its nearest edge or corner, negative outside', () => {
    const depth = (x: number, y: number): number => depthIn(oblong, [x, y]);
    expect([depth(20, 10), depth(1, 10), depth(20, 18), depth(37, 5)]).toEqual([
      close(10),
      close(1),
      close(2),
      close(3),
    ]);
    expect([depth(-3, 10), depth(20, -4), depth(45, 10), depth(20, 26)]).toEqual([
      close(-3),
      close(-4),
      close(-5),
      close(-6),
    ]);
    expect([depth(-3, -4), depth(43, 24), depth(-6, 28), depth(52, -5)]).toEqual([
      close(-5),
      close(-5),
      close(-10),
      close(-13),
    ]);
  });

  it('counts an edge without length as the place that it is', () => {
    const [doubled] = localZones(
      [
        zone([
          [0, 0],
          [40, 0],
          [40, 0],
          [40, 20],
          [0, 20],
        ]),
      ],
      'allowed',
      ORIGIN,
    ) as [LocalZone];
    expect(depthIn(doubled, [43, -4])).toBeCloseTo(-5, 5);
    expect(depthIn(doubled, [20, 10])).toBeCloseTo(10, 5);
  });
});

describe('how deep a line comes into a zone', () => {
  it('is that of its deepest place, and 0 where it only crosses between two places', () => {
    expect(
      deepestIn(oblong, [
        [-10, 10],
        [5, 10],
        [12, 10],
      ]),
    ).toBeCloseTo(10, 5);
    expect(
      deepestIn(oblong, [
        [-10, 10],
        [3, 10],
      ]),
    ).toBeCloseTo(3, 5);
    expect(
      deepestIn(oblong, [
        [-5, 10],
        [60, 10],
      ]),
    ).toBe(0);
    expect(
      deepestIn(oblong, [
        [-5, 30],
        [60, 30],
      ]),
    ).toBeCloseTo(-Math.hypot(5, 10), 5);
    expect(
      deepestIn(oblong, [
        [-5, 30],
        [20, 26],
        [60, 30],
      ]),
    ).toBeCloseTo(-6, 5);
    expect(deepestIn(oblong, [[-5, 10]])).toBeCloseTo(-5, 5);
    // Past a corner, and over it: neither end lies inside.
    expect(
      deepestIn(oblong, [
        [-5, 3],
        [3, -5],
      ]),
    ).toBeCloseTo(-5, 5);
    expect(
      deepestIn(oblong, [
        [-2, 3],
        [3, -2],
      ]),
    ).toBe(0);
  });
});

describe('a zone as the places of a line meet it', () => {
  const random = generator(11);
  const place = (size: number): Position => [(random() - 0.5) * size, (random() - 0.5) * size];
  const drawn = (ring: Position[]): LocalZone => ({
    name: 'z',
    shape: { type: 'Polygon', coordinates: [[...ring, ring[0]!]] },
    box: [-500, -500, 500, 500],
  });
  const corners = ({ shape }: LocalZone): number => shape.coordinates[0]!.length;

  it('tells the depth of each of them as the whole zone does, though its outline crosses itself', () => {
    let left = 0;
    for (let tries = 0; tries < 60; tries++) {
      const zone = drawn(Array.from({ length: 120 }, () => place(tries % 2 === 0 ? 1000 : 100)));
      const middle = place(900);
      const line = Array.from({ length: 5 }, () => place(20)).map(([x, y]) => [x! + middle[0]!, y! + middle[1]!]);
      const about = zoneAbout(zone, line);
      left += corners(zone) - corners(about);
      expect(line.map((at) => depthIn(about, at))).toEqual(line.map((at) => depthIn(zone, at)));
      expect(deepestIn(about, line)).toBe(deepestIn(zone, line));
    }
    expect(left).toBeGreaterThan(1000);
  });

  it('has few corners of 200,000, and all of few', () => {
    const ring = Array.from({ length: 200_000 }, (_, k): Position => {
      const angle = k * Math.PI * 1e-5;
      return [500 * Math.cos(angle), 500 * Math.sin(angle)];
    });
    const line = [
      [490, 0],
      [495, 3],
    ];
    expect(corners(zoneAbout(drawn(ring), line))).toBeLessThan(3000);
    expect(deepestIn(drawn(ring), line)).toBeCloseTo(10, 3);
    expect(zoneAbout(oblong, line)).toBe(oblong);
  });
});

describe('how far a line keeps from the bounds of a zone', () => {
  it('is the gap along one axis or across both, and 0 where they meet', () => {
    const apart = (...line: Position[]): number => boundsApart(oblong, line);
    expect([
      apart([-9, 5], [-3, 8]),
      apart([44, 5], [50, 5]),
      apart([5, -7], [9, -2]),
      apart([5, 29], [9, 25]),
    ]).toEqual([close(3), close(4), close(2), close(5)]);
    expect([apart([-9, -9], [-3, -4]), apart([43, 24], [60, 60])]).toEqual([close(5), close(5)]);
    expect([apart([10, 10], [11, 11]), apart([-5, 10], [60, 10]), apart([-5, -5], [60, 60])]).toEqual([0, 0, 0]);
  });
});

it('a place is told in metres east and north', () => {
  expect(local(ORIGIN, fromEastNorth(ORIGIN, 12, -34))).toEqual([close(12), close(-34)]);
});
