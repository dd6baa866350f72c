import { describe, expect, it } from 'vitest';
import { type Drawing, courseAlong, drawnGround } from '../testing/towns.ts';
import type { Junction } from './along.ts';
import { groundAlong } from './groundAlong.ts';
import type { Tags } from './ground.ts';

const MAIN: Tags = { highway: 'secondary', name: 'Harbour Road', width: '8' };
const SIDE: Tags = { highway: 'residential', name: 'Mill Lane', width: '6' };

/** Harbour Road runs 400 m eastward through m at 200 m; `n` is 100 m north of that, `s` as far south. */
const places = {
  w: [0, 0],
  a: [100, 0],
  m: [200, 0],
  b: [300, 0],
  e: [400, 0],
  n: [200, 100],
  s: [200, -100],
} as const;
const junctionsOn = (ways: Drawing['ways'], more: Drawing['places'] = {}): readonly Junction[] =>
  groundAlong(
    courseAlong([
      [0, 0],
      [400, 0],
    ]),
    drawnGround({ places: { ...places, ...more }, ways }),
  ).junctions;

describe('a junction', () => {
  it('is where another street leaves, on the side on which it leaves, with half its width and 5 m as its mouth', () => {
    const [only, ...others] = junctionsOn({ main: ['w m e', MAIN], side: ['m n', SIDE] });
    expect(others).toEqual([]);
    expect(only).toMatchObject({
      node: 'm',
      names: ['Mill Lane'],
      ways: ['side'],
      sides: ['left'],
      vehicles: true,
      access: false,
    });
    expect(only!.measure).toBeCloseTo(200, 2);
    expect(only!.mouth.from).toBeCloseTo(192, 2);
    expect(only!.mouth.to).toBeCloseTo(208, 2);
  });

  it('has both sides where the street crosses', () => {
    expect(junctionsOn({ main: ['w m e', MAIN], side: ['n m s', SIDE] })[0]?.sides).toEqual(['left', 'right']);
    expect(junctionsOn({ main: ['w m e', MAIN], side: ['s m', SIDE] })[0]?.sides).toEqual(['right']);
  });

  it('is none where a way only goes on as another', () =>
    expect(junctionsOn({ main: ['w m', MAIN], more: ['e m', { ...MAIN, lanes: '2' }] })).toEqual([]));

  it('is none where a bridge or a tunnel runs through the same node at another layer', () => {
    for (const tags of [
      { bridge: 'yes', layer: '1' },
      { tunnel: 'yes', layer: '-1' },
      { bridge: 'viaduct' },
      { tunnel: 'yes' },
    ])
      expect(junctionsOn({ main: ['w m e', MAIN], side: ['n m s', { ...SIDE, ...tags }] })).toEqual([]);
  });

  it('is where a bridge ends at the street', () =>
    expect(junctionsOn({ main: ['w m e', MAIN], side: ['m n', { ...SIDE, bridge: 'yes', layer: '1' }] })).toHaveLength(
      1,
    ));

  it('carries no vehicles where footways and steps meet, and is none at pavements and crossings of the street', () => {
    expect(junctionsOn({ main: ['w m e', MAIN], side: ['m n', { highway: 'steps' }] })[0]?.vehicles).toBe(false);
    for (const footway of ['sidewalk', 'crossing'])
      expect(junctionsOn({ main: ['w m e', MAIN], side: ['s m n', { highway: 'footway', footway }] })).toEqual([]);
  });

  it('gives access to premises at a driveway, whose mouth is its own width', () => {
    const [drive] = junctionsOn({ main: ['w m e', MAIN], side: ['m n', { highway: 'service', service: 'driveway' }] });
    expect(drive).toMatchObject({ names: [], access: true, vehicles: true });
    expect(drive!.mouth.to - drive!.mouth.from).toBeCloseTo(3, 6);
  });

  it('is none where the two carriageways of the street part', () => {
    const one: Tags = { ...MAIN, oneway: 'yes' };
    const ways: Drawing['ways'] = { main: ['w m', MAIN], out: ['m b e', one], home: ['h m', one] };
    expect(junctionsOn(ways, { h: [300, 12] })).toEqual([]);
  });

  it('comes once a pass where the course passes it many times', () => {
    const ground = drawnGround({ places, ways: { main: ['w m e', MAIN], side: ['m n', SIDE] } });
    const { junctions } = groundAlong(
      courseAlong([
        [0, 0],
        [400, 0],
        [0, 0],
      ]),
      ground,
    );
    expect(junctions.map(({ sides }) => sides)).toEqual([['left'], ['right']]);
    expect(junctions.map(({ measure }) => Math.round(measure))).toEqual([200, 600]);
  });

  it('names, where the course turns, neither the street it leaves nor the one it takes', () => {
    const ground = drawnGround({
      places,
      ways: {
        main: ['w m e', MAIN],
        side: ['m n', SIDE],
        other: ['s m', { highway: 'residential', name: 'Quay Street' }],
      },
    });
    const [turn] = groundAlong(
      courseAlong([
        [0, 0],
        [200, 0],
        [200, 100],
      ]),
      ground,
    ).junctions;
    expect(turn).toMatchObject({ names: ['Quay Street'], sides: ['right'] });
    expect(turn!.ways).toEqual(['main', 'other']);
  });

  it('is at the start and at the finish too, where the course begins or ends within 10 m of a corner', () => {
    const ground = drawnGround({ places, ways: { main: ['w m e', MAIN], side: ['n m', SIDE] } });
    const on = (from: number, to: number): unknown[] =>
      groundAlong(
        courseAlong([
          [from, 0],
          [to, 0],
        ]),
        ground,
      ).junctions.map(({ names, sides, measure }) => [names, sides, Math.round(measure)]);
    expect(on(204, 380)).toEqual([[['Mill Lane'], ['left'], 0]]);
    expect(on(20, 196)).toEqual([[['Mill Lane'], ['left'], 176]]);
    expect(on(200, 380)).toEqual([[['Mill Lane'], ['left'], 0]]);
    expect(on(211, 380)).toEqual([]);
    expect(on(20, 189)).toEqual([]);
    expect(on(380, 204)).toEqual([[['Mill Lane'], ['right'], 176]]);
  });

  it('is at a start from which the street goes no farther', () => {
    const ground = drawnGround({ places, ways: { main: ['m e', MAIN], side: ['n m s', SIDE] } });
    const [corner] = groundAlong(
      courseAlong([
        [203, 0],
        [380, 0],
      ]),
      ground,
    ).junctions;
    expect(corner).toMatchObject({ names: ['Mill Lane'], sides: ['left', 'right'], measure: 0 });
  });
});
