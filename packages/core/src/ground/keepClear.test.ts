import { describe, expect, it } from 'vitest';
import { type Drawing, courseAlong, drawnGround } from '../testing/towns.ts';
import type { KeepClear } from './along.ts';
import { groundAlong } from './groundAlong.ts';
import { keepClearOf } from './keepClear.ts';

const course = courseAlong([
  [0, 0],
  [400, 0],
]);
const near = (drawing: Omit<Drawing, 'ways'>): readonly KeepClear[] =>
  keepClearOf(course, drawnGround({ ...drawing, ways: {} }));

describe('what must stay reachable', () => {
  it('is told with its nearest place on the course, offset to the left positive', () => {
    const [hydrant, ambulance] = near({
      places: { h: [120, 7], r: [300, -20] },
      points: { r: { emergency: 'ambulance_station', name: 'Post 2' }, h: { emergency: 'fire_hydrant' } },
    });
    expect(hydrant).toMatchObject({ kind: 'hydrant', id: 'h', name: null });
    expect(hydrant!.measure).toBeCloseTo(120, 2);
    expect(hydrant!.offset).toBeCloseTo(7, 2);
    expect(ambulance).toMatchObject({ kind: 'ambulanceStation', name: 'Post 2' });
    expect(ambulance!.offset).toBeCloseTo(-20, 2);
  });

  it('is listed up to 60 m from the course', () =>
    expect(
      near({
        places: { a: [100, 59.9], b: [200, 60.1] },
        points: { a: { amenity: 'hospital' }, b: { amenity: 'hospital' } },
      }).map(({ id }) => id),
    ).toEqual(['a']));

  it('is an area’s nearest point, be it in the middle of a long wall, or on the course where that runs through', () => {
    const places = {
      a: [50, 30],
      b: [350, 20],
      c: [350, 80],
      d: [50, 80],
      e: [100, -50],
      f: [140, -50],
      g: [140, 50],
      h: [100, 50],
    } as const;
    const areas: Drawing['areas'] = {
      wide: ['a b c d a', { amenity: 'fire_station', building: 'yes' }],
      through: ['e f g h e', { amenity: 'hospital' }],
    };
    const [through, wide] = near({ places, areas });
    expect(through).toMatchObject({ kind: 'hospital', id: 'through' });
    expect(through!.offset).toBeCloseTo(0, 3);
    expect(wide!.kind).toBe('fireStation');
    expect(wide!.measure).toBeCloseTo(350, 2);
    expect(wide!.offset).toBeCloseTo(20, 2);
  });

  it('is nearest to the middle of a wall where the course passes that alone', () => {
    const bent = courseAlong([
      [0, -200],
      [0, -10],
      [-200, -10],
    ]);
    const [found] = keepClearOf(
      bent,
      drawnGround({
        places: { a: [-100, 5], b: [100, 5], c: [0, 90] },
        ways: {},
        areas: { it: ['a b c a', { amenity: 'hospital' }] },
      }),
    );
    expect(Math.abs(found!.offset)).toBeCloseTo(15, 2);
  });

  it('is there without any street', () =>
    expect(
      groundAlong(
        course,
        drawnGround({ places: { h: [9, 3] }, ways: {}, points: { h: { emergency: 'fire_hydrant' } } }),
      ).keepClear,
    ).toHaveLength(1));
});
