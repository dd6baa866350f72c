import { describe, expect, it } from 'vitest';
import { courseAlong, drawnGround } from '../testing/towns.ts';
import type { Ground, GroundWay } from './ground.ts';
import { indexBuildings } from './buildings.ts';
import { groundAlong } from './groundAlong.ts';
import { sightBlocked } from './sightBlocked.ts';
import { streetPlace } from './streetPlace.ts';

const course = courseAlong([
  [0, 0],
  [100, 0],
]);
const ground = drawnGround({ places: { a: [0, 0], b: [100, 0] }, ways: { a: ['a b', { highway: 'path' }] } });
const [way] = ground.ways;
const withWay = (changes: Partial<GroundWay>): Ground => ({ ...ground, ways: [{ ...way!, ...changes }] });

describe('what the ground is asked with', () => {
  it('has to be a ground whose positions can be measured', () => {
    expect(() => groundAlong(course, {} as Ground)).toThrow('groundAlong wants ground');
    expect(() => groundAlong(course, withWay({ nodes: ['a'] }))).toThrow('columns of equal length');
    expect(() => groundAlong(course, withWay({ lat: Float64Array.of(1) }))).toThrow('ways[0]');
    expect(() => groundAlong(course, withWay({ lat: Float64Array.of(1, NaN) }))).toThrow('ways[0].lon[1]');
    expect(() => indexBuildings(withWay({ lon: Float64Array.of(1, 1e9) }))).toThrow('a position in degrees');
  });

  it('has to be what was made for it', () => {
    expect(() => streetPlace({} as never, 3)).toThrow('streetPlace wants what groundAlong returns');
    expect(() => streetPlace(groundAlong(course, ground), NaN)).toThrow('the measure in metres');
    expect(() => sightBlocked([0, 0], [0, 1], { areas: [] })).toThrow('what indexBuildings returns');
  });
});
