import { describe, expect, it } from 'vitest';
import { ORIGIN } from '../testing/courses.ts';
import { type Drawing, type Place, drawnGround, placed } from '../testing/towns.ts';
import { type Buildings, indexBuildings } from './buildings.ts';
import type { Ground, Tags } from './ground.ts';
import { type SightBlock, sightBlocked } from './sightBlocked.ts';

/** A house of 10 m by 10 m from (20, 0), with its corner `a` nearest to the origin. */
const places = { a: [20, 0], b: [30, 0], c: [30, 10], d: [20, 10] } as const;
const HOUSE = 'a b c d a';
const houses = (areas: Drawing['areas']): Buildings => indexBuildings(drawnGround({ places, ways: {}, areas: areas! }));
const house = houses({ house: [HOUSE, { building: 'yes' }] });
const look = (from: Place, to: Place, at: Buildings = house): SightBlock | null =>
  sightBlocked(placed(from), placed(to), at);

describe('sight', () => {
  it('is blocked by a house on the line, where the line goes into it', () => {
    const block = look([0, 5], [50, 5]);
    expect(block?.building.id).toBe('house');
    expect(block?.distance).toBeCloseTo(20, 4);
    const [lon, lat] = placed([20, 5]);
    expect(block?.at[0]).toBeCloseTo(lon, 9);
    expect(block?.at[1]).toBeCloseTo(lat, 9);
  });

  it('is free past a house, before it and behind it', () => {
    for (const [from, to] of [
      [
        [0, -1],
        [50, -1],
      ],
      [
        [0, 5],
        [19, 5],
      ],
      [
        [31, 5],
        [60, 5],
      ],
    ] as const)
      expect(look(from, to)).toBeNull();
  });

  it('is free along a wall, and where it only touches a corner', () => {
    expect(look([0, 0], [50, 0])).toBeNull();
    expect(look([22, 0], [28, 0])).toBeNull();
    expect(look([10, 10], [30, -10])).toBeNull();
    expect(look([0, 5], [20, 5])).toBeNull();
  });

  it('is blocked from corner to corner through the house', () =>
    expect(look([10, -10], [40, 20])?.distance).toBeCloseTo(Math.hypot(10, 10), 4));

  it('is blocked at an end inside: from the first point on, or where the line goes in', () => {
    expect(look([25, 5], [60, 5])).toMatchObject({ distance: 0, at: placed([25, 5]) });
    expect(look([0, 5], [25, 5])?.distance).toBeCloseTo(20, 4);
    expect(look([22, 5], [28, 5])?.distance).toBe(0);
  });

  it('takes 1 cm inside as the wall', () => {
    expect(look([0, 5], [20.009, 5])).toBeNull();
    expect(look([0, 5], [20.011, 5])).not.toBeNull();
  });

  it('has no line between a point and itself', () => expect(look([25, 5], [25, 5])).toBeNull());

  it('sees across a courtyard from wall to wall', () => {
    const ring = (line: string): Ground['areas'][number]['rings'][number] =>
      drawnGround({
        places: { ...places, e: [22, 2], f: [28, 2], g: [28, 8], h: [22, 8] },
        ways: {},
        areas: { x: [line, {}] },
      }).areas[0]!.rings[0]!;
    const rings = [ring(HOUSE), ring('e f g h e')];
    const court = indexBuildings({
      ...drawnGround({ places, ways: {} }),
      areas: [{ id: 'court', tags: { building: 'yes' }, rings }],
    });
    expect(look([23, 5], [27, 5], court)).toBeNull();
    expect(look([23, 5], [29, 5], court)?.distance).toBeCloseTo(5, 4);
  });

  it('names the first of several houses', () => {
    const two = indexBuildings(
      drawnGround({
        places: { ...places, p: [40, 0], q: [45, 0], r: [45, 10], s: [40, 10] },
        ways: {},
        areas: { far: ['p q r s p', { building: 'yes' }], near: [HOUSE, { building: 'house' }] },
      }),
    );
    expect(look([0, 5], [60, 5], two)?.building.id).toBe('near');
    expect(look([60, 5], [0, 5], two)?.building.id).toBe('far');
  });

  it('passes what hides nothing: a park, a roof on posts, what is under ground, lower than the eyes or above them', () => {
    const free: Tags[] = [
      { leisure: 'park' },
      { building: 'no' },
      { building: 'roof' },
      { building: 'yes', layer: '-1' },
      { building: 'yes', location: 'underground' },
      { building: 'yes', height: '1' },
      { building: 'yes', min_height: '3' },
    ];
    for (const tags of free) expect(look([0, 5], [50, 5], houses({ it: [HOUSE, tags] }))).toBeNull();
    expect(
      look([0, 5], [50, 5], houses({ it: [HOUSE, { building: 'yes', height: '12', min_height: '0' }] })),
    ).not.toBeNull();
  });

  it('refuses what is no point', () =>
    expect(() => sightBlocked([Number.NaN, 0], ORIGIN, house)).toThrow('sightBlocked wants from'));
});
