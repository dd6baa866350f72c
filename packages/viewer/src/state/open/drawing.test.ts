import { LIMITS } from '@halfcup/core/schemas';
import { expect, test } from 'vitest';
import { background } from '../../map/layers/context.ts';
import { readDrawing } from './drawing.ts';

const line = {
  type: 'LineString',
  coordinates: [
    [-17.4, -33.2],
    [-17.3, -33.1],
  ],
};
const ring = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 0],
];
const feature = (geometry: unknown, properties: unknown = { kind: 'road' }): unknown => ({
  type: 'Feature',
  properties,
  geometry,
});
const read = (features: readonly unknown[]): ReturnType<typeof readDrawing> =>
  readDrawing(JSON.stringify({ type: 'FeatureCollection', features }), 'ground.geojson');

test('every kind of geometry that can be drawn is taken as it is, without a note', () => {
  const sound = [
    line,
    { type: 'Point', coordinates: [1, 2] },
    { type: 'MultiPoint', coordinates: [[1, 2, 30]] },
    { type: 'MultiLineString', coordinates: [line.coordinates] },
    { type: 'Polygon', coordinates: [ring] },
    { type: 'MultiPolygon', coordinates: [[ring]] },
  ];
  const { context, findings } = read(sound.map((one) => feature(one)));
  expect(context?.features.map(({ geometry }) => geometry)).toEqual(sound);
  expect(findings).toEqual([]);
});

test.each([
  [null, 'not a GeoJSON feature'],
  ['a road', 'not a GeoJSON feature'],
  [{ type: 'Feature', properties: {} }, 'no geometry'],
  [feature(null), 'no geometry'],
  [feature([]), 'no geometry'],
  [feature({ coordinates: line.coordinates }), 'has no type'],
  [feature({ type: 'Circle', coordinates: [0, 0] }), '“Circle”'],
  [feature({ type: 'GeometryCollection', geometries: [] }), '“GeometryCollection”'],
  [feature({ type: 'LineString' }), 'no coordinates'],
  [feature({ type: 'LineString', coordinates: null }), 'no coordinates'],
  [feature({ type: 'LineString', coordinates: [] }), 'too few points'],
  [feature({ type: 'LineString', coordinates: [[0, 0]] }), 'too few points'],
  [feature({ type: 'LineString', coordinates: [0, 0] }), 'no coordinates'],
  [
    feature({
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [1, 1],
          [0, 0],
        ],
      ],
    }),
    'too few points',
  ],
  [feature({ type: 'Point', coordinates: [] }), 'not a number'],
  [feature({ type: 'Point', coordinates: ['west', 0] }), 'not a number'],
  [feature({ type: 'Point', coordinates: [0, null] }), 'not a number'],
  [feature({ type: 'Point', coordinates: [448000, 5410000] }), 'not longitude and latitude'],
])('%j is left out, and a note says why', (broken, why) => {
  const { context, findings } = read([feature(line), broken, feature(line)]);
  expect(context?.features).toHaveLength(2);
  expect(findings).toHaveLength(1);
  expect(findings[0]).toMatchObject({ severity: 'note', where: { file: 'ground.geojson' } });
  expect(findings[0]?.message).toMatch(/^Feature 2 of the background drawing is left out: /u);
  expect(findings[0]?.message).toContain(why);
  // What is left can be sorted into what the map draws.
  expect(background(context).features).toHaveLength(2);
});

test('several are counted in one note, with the first as an example', () => {
  const { findings } = read([feature(null), feature(line), feature({ type: 'Point' })]);
  expect(findings).toHaveLength(1);
  expect(findings[0]?.message).toContain('2 features of the background drawing are left out. The first is feature 1');
});

test('properties of no kind are taken as none', () => {
  const { context, findings } = read([feature(line, 'road'), { type: 'Feature', geometry: line }]);
  expect(context?.features.map(({ properties }) => properties)).toEqual([{}, {}]);
  expect(findings).toEqual([]);
});

test.each(['{', 'null', '[]', '{"type":"Feature"}', '{"type":"FeatureCollection"}'])(
  '%s is no drawing: noted, and the plan opens without it',
  (text) => {
    const { context, findings } = readDrawing(text, 'ground.geojson');
    expect(context).toBeNull();
    expect(findings.map(({ code }) => code)).toEqual(['context-unreadable']);
  },
);

test('one that holds more than a drawing may is left out, with the limit', () => {
  const point = { type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: [1, 2] } };
  const { features: most } = LIMITS.drawing;
  const whole = (count: number): string =>
    JSON.stringify({ type: 'FeatureCollection', features: Array.from({ length: count }, () => point) });
  const { context, findings } = readDrawing(whole(most + 1), 'ground.geojson');
  expect(context).toBeNull();
  expect(findings).toMatchObject([{ severity: 'note', where: { file: 'ground.geojson' } }]);
  expect(findings[0]!.message).toContain('at most 50,000');
  expect(readDrawing(whole(most), 'ground.geojson').context?.features).toHaveLength(most);
  expect(readDrawing('['.repeat(100), 'ground.geojson').findings[0]!.message).toContain('64 levels of nesting');
});
