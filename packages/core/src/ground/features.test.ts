import { describe, expect, it } from 'vitest';
import { type Drawing, type Place, courseAlong, drawnGround } from '../testing/towns.ts';
import type { Feature } from './along.ts';
import { groundAlong } from './groundAlong.ts';
import type { Tags } from './ground.ts';

const MAIN: Tags = { highway: 'secondary', name: 'Harbour Road' };
const places = {
  w: [0, 0],
  a: [100, 0],
  m: [200, 0],
  b: [300, 0],
  e: [400, 0],
  n: [200, 100],
  s: [200, -100],
} as const;
const OUT: readonly Place[] = [
  [0, 0],
  [400, 0],
];
const featuresOn = (more: Partial<Drawing>, course: readonly Place[] = OUT): readonly Feature[] =>
  groundAlong(
    courseAlong(course),
    drawnGround({ ways: { main: ['w a m b e', MAIN] }, ...more, places: { ...places, ...more.places } }),
  ).features;
const brief = (features: readonly Feature[]): unknown[] =>
  features.map(({ kind, id, from, to }) => [kind, id, Math.round(from), Math.round(to)]);

describe('features of a course', () => {
  it('are bridges, tunnels and steps of its ways, as stretches', () => {
    const ways: Drawing['ways'] = {
      main: ['w a', MAIN],
      over: ['a m', { ...MAIN, bridge: 'yes', layer: '1' }],
      under: ['m b', { ...MAIN, tunnel: 'yes', layer: '-1' }],
      up: ['b e', { highway: 'steps' }],
    };
    expect(brief(featuresOn({ ways }))).toEqual([
      ['bridge', 'over', 100, 200],
      ['tunnel', 'under', 200, 300],
      ['steps', 'up', 300, 400],
    ]);
  });

  it('are no bridge where the tag says no', () =>
    expect(featuresOn({ ways: { main: ['w e', { ...MAIN, bridge: 'no', tunnel: 'no' }] } })).toEqual([]));

  it('are gates, crossings, signals and level crossings at nodes of its ways, as points', () => {
    const points: Drawing['points'] = {
      a: { barrier: 'bollard' },
      m: { highway: 'crossing', crossing: 'zebra' },
      b: { highway: 'traffic_signals' },
      n: { barrier: 'gate' },
    };
    expect(brief(featuresOn({ points }))).toEqual([
      ['gate', 'a', 100, 100],
      ['crossing', 'm', 200, 200],
      ['signals', 'b', 300, 300],
    ]);
  });

  it('are no gates where one can run through: an entrance, a kerb', () =>
    expect(featuresOn({ points: { a: { barrier: 'entrance' }, m: { barrier: 'kerb' } } })).toEqual([]));

  it('are level crossings by the node’s tag or by rails that share a node, not where rails run over a bridge', () => {
    const rails = (tags: Tags): Drawing['ways'] => ({ main: ['w a m b e', MAIN], rails: ['n m s', tags] });
    expect(brief(featuresOn({ ways: rails({ railway: 'rail' }) }))).toEqual([['levelCrossing', 'm', 200, 200]]);
    expect(
      brief(featuresOn({ ways: rails({ railway: 'rail' }), points: { m: { railway: 'level_crossing' } } })),
    ).toEqual([['levelCrossing', 'm', 200, 200]]);
    const over: Drawing['ways'] = { main: ['w a b e', MAIN], rails: ['n s', { railway: 'rail', bridge: 'yes' }] };
    expect(featuresOn({ ways: over })).toEqual([]);
  });

  it('are crossings where a footway crosses, though its node is not tagged', () =>
    expect(
      brief(
        featuresOn({ ways: { main: ['w m e', MAIN], foot: ['n m s', { highway: 'footway', footway: 'crossing' }] } }),
      ),
    ).toEqual([['crossing', 'm', 200, 200]]));

  it('are stops within 15 m, once for a post and the place in the road where its buses halt', () => {
    const stops = { post: [150, 6], halt: [160, 0], far: [250, 40], tram: [350, -4] } as const;
    const points: Drawing['points'] = {
      post: { highway: 'bus_stop', name: 'Mill' },
      halt: { public_transport: 'stop_position', bus: 'yes', name: 'Mill' },
      far: { highway: 'bus_stop', name: 'Hill' },
      tram: { railway: 'tram_stop', name: 'Quay' },
    };
    const found = featuresOn({ places: stops, points });
    expect(brief(found)).toEqual([
      ['busStop', 'post', 150, 150],
      ['tramStop', 'tram', 350, 350],
    ]);
    expect(found.map(({ name }) => name)).toEqual(['Mill', 'Quay']);
  });

  it('come each time that the course passes', () => {
    const there = featuresOn({ points: { m: { highway: 'traffic_signals' } } }, [
      [0, 0],
      [400, 0],
      [0, 0],
    ]);
    expect(brief(there)).toEqual([
      ['signals', 'm', 200, 200],
      ['signals', 'm', 600, 600],
    ]);
  });
});
