/** The plan's background on paper: what lies on what, and what is left out. */
import type { Feature, FeatureCollection, Geometry } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import { backdrop, thinned } from './backdrop.ts';

const feature = (kind: unknown, geometry: Geometry): Feature => ({
  type: 'Feature',
  properties: kind === null ? null : { kind },
  geometry,
});
const drawn = (...features: readonly Feature[]): string[] =>
  backdrop({ type: 'FeatureCollection', features: [...features] } satisfies FeatureCollection, ([lon, lat]: LonLat) => [
    lon,
    -lat,
  ]).map(({ html }) => html);

const RING = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 0],
];
const area = (kind: unknown): Feature => feature(kind, { type: 'Polygon', coordinates: [RING] });
const line = (kind: unknown): Feature =>
  feature(kind, {
    type: 'LineString',
    coordinates: [
      [0, 0],
      [10, 5],
    ],
  });
const lookOf = (one: Feature): string => drawn(one)[0]!;

describe('the backdrop', () => {
  it('draws areas by their kind: land, green, water, and others in a grey of their own', () => {
    expect(lookOf(area('land'))).toContain('fill="#f5f5f5" stroke="#a0a0a0"');
    expect(lookOf(area('park'))).toContain('fill="#ececec"');
    expect(lookOf(area('Sea'))).toContain('fill="#fff" stroke="#a0a0a0"');
    expect(lookOf(area('shallow'))).toContain('fill="none"');
    expect(lookOf(area('car park'))).toContain('fill="#e2e2e2"');
  });

  it('draws lines by their kind: paths dashed, streams thin, roads thicker', () => {
    expect(lookOf(line('path'))).toContain('stroke-width="0.25" stroke-dasharray="0.8 0.6"');
    expect(lookOf(line('stream'))).toContain('stroke-width="0.2"/>');
    expect(lookOf(line('road'))).toContain('stroke-width="0.4"/>');
    expect(lookOf(line(null))).toContain('stroke-width="0.4"/>');
    expect(lookOf(line(7))).toContain('stroke-width="0.4"/>');
  });

  it('closes areas and lets holes show, but not lines', () => {
    expect(lookOf(area('land'))).toMatch(/^<path d="M0 0L10 0L10 -10L0 0Z" .* fill-rule="evenodd"\/>$/u);
    expect(lookOf(line('road'))).toMatch(/^<path d="M0 0L10 -5" /u);
    expect(lookOf(line('road'))).not.toContain('fill-rule');
  });

  it('draws every part of what has several', () => {
    const parts = [
      [
        [0, 0],
        [10, 0],
      ],
      [
        [0, 5],
        [10, 5],
      ],
    ];
    expect(lookOf(feature('road', { type: 'MultiLineString', coordinates: parts }))).toContain(
      'd="M0 0L10 0M0 -5L10 -5"',
    );
    expect(lookOf(feature('land', { type: 'MultiPolygon', coordinates: [[RING], [RING]] })).match(/Z/gu)).toHaveLength(
      2,
    );
  });

  it('puts land under green under water under roads, whatever their order in the file', () => {
    expect(
      drawn(line('road'), area('lake'), area('wood'), area('yard'), area('island')).map(
        (one) => /(?:fill|stroke)="(#\w+)"/u.exec(one)![1],
      ),
    ).toEqual(['#f5f5f5', '#ececec', '#fff', '#e2e2e2', '#bdbdbd']);
  });

  it('leaves out contour lines, points, and what is too small to see on paper', () => {
    expect(
      drawn(
        line('contour'),
        line('CONTOUR'),
        feature('tree', { type: 'Point', coordinates: [1, 1] }),
        feature('road', {
          type: 'LineString',
          coordinates: [
            [0, 0],
            [1, 1],
          ],
        }),
      ),
    ).toEqual([]);
    expect(
      drawn(
        feature('road', {
          type: 'LineString',
          coordinates: [
            [0, 0],
            [0.5, 1.3],
          ],
        }),
      ),
    ).toHaveLength(1);
  });
});

it('lines are thinned to a step that paper shows, and both their ends stay', () => {
  const places = Array.from({ length: 101 }, (_, k) => [k / 100, 0] as const);
  const kept = thinned(places);
  expect([kept[0], kept.at(-1)]).toEqual([
    [0, 0],
    [1, 0],
  ]);
  expect(kept).toHaveLength(8);
  expect(thinned([])).toEqual([]);
});
