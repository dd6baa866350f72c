import type { Ground, GroundAlong } from '@halfcup/core/ground';
import { expect, test } from 'vitest';
import { background } from './context.ts';
import { groundShapes } from './streets.ts';

const line = { lon: Float64Array.of(0, 0.001), lat: Float64Array.of(0, 0) };
const ring = { lon: Float64Array.of(0, 1, 1, 0), lat: Float64Array.of(0, 0, 1, 0) };
const way = (id: string, tags: Record<string, string>): Ground['ways'][number] => ({
  id,
  tags,
  nodes: ['node/1', 'node/2'],
  ...line,
});
const ground: Ground = {
  source: { date: null, credit: 'own survey', licence: null },
  ways: [
    way('way/1', { highway: 'primary', name: 'Harbour Road', tunnel: 'yes' }),
    way('way/2', { highway: 'steps' }),
    way('way/3', { barrier: 'fence', name: 'Long Fence' }),
  ],
  areas: [
    { id: 'way/4', tags: { building: 'yes', name: 'Weigh House' }, rings: [ring, ring] },
    { id: 'way/5', tags: { landuse: 'quarry' }, rings: [ring] },
  ],
  points: [],
};

/** A course that runs along the primary road. */
const on = { way: 'way/1', name: 'Harbour Road', tags: {}, from: 0, to: 100 } as const;
const NONE = { junctions: [], features: [], keepClear: [], widths: [], surfaces: [], offMap: [] } as const;
const along: ReadonlyMap<string, GroundAlong> = new Map([['c', { ...NONE, streets: [on] }]]);

test('areas come before lines, what is not drawn is left out, houses go without names', () => {
  expect(groundShapes({ ground, along }).features.map(({ properties }) => properties)).toEqual([
    { draw: 'building', name: '', below: false, rank: 0, run: false },
    { draw: 'main', name: 'Harbour Road', below: true, rank: 5, run: true },
    { draw: 'steps', name: '', below: false, rank: 2, run: false },
  ]);
  expect(groundShapes({ ground, along }).features[0]!.geometry).toMatchObject({
    type: 'Polygon',
    coordinates: [{}, {}],
  });
  expect(groundShapes(null).features).toEqual([]);
});

test('a street that the map names is not named again by the plan’s drawing; a village is', () => {
  const named = (kind: string, type: 'LineString' | 'Point', name: string): GeoJSON.Feature => ({
    type: 'Feature',
    properties: { kind, name },
    geometry:
      type === 'Point'
        ? { type, coordinates: [0, 0] }
        : {
            type,
            coordinates: [
              [0, 0],
              [1, 0],
            ],
          },
  });
  const drawing: GeoJSON.FeatureCollection = {
    type: 'FeatureCollection',
    features: [
      named('road', 'LineString', 'Harbour Road'),
      named('road', 'LineString', 'Mill Lane'),
      named('village', 'Point', 'Harbour Road'),
    ],
  };
  const names = (map: Ground | null): string[] =>
    background(drawing, map).features.map(({ properties }) => properties.name);
  expect(names(ground)).toEqual(['', 'Mill Lane', 'Harbour Road']);
  expect(names(null)).toEqual(['Harbour Road', 'Mill Lane', 'Harbour Road']);
});
