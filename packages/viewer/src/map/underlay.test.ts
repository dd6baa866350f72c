import { describe, expect, test } from 'vitest';
import { graticule, stepFor } from './graticule.ts';
import { rasterUnderlay, styleUnderlay, tilesUnderlay } from './underlay.ts';
import type { Palette } from './palette.ts';

const palette = { building: '#111', shore: '#222', place: '#333' } as unknown as Palette;

describe('what lies under the course', () => {
  test('names of a foreign style cannot meet ours, and its fonts are not asked for', () => {
    const under = styleUnderlay(
      {
        version: 8,
        glyphs: 'https://example.invalid/{fontstack}/{range}.pbf',
        sprite: 'https://example.invalid/sprite',
        sources: { courses: { type: 'vector', url: 'https://example.invalid/t.json' } },
        layers: [
          { id: 'paper', type: 'background' },
          { id: 'road', type: 'line', source: 'courses', 'source-layer': 'road' },
        ],
      },
      [],
    );
    expect(Object.keys(under.sources)).toEqual(['under-courses']);
    expect(under.layers.map(({ id }) => id)).toEqual(['under-paper', 'under-road']);
    expect(under.layers[1]).toMatchObject({ source: 'under-courses', 'source-layer': 'road' });
    expect(JSON.stringify(under)).not.toContain('fontstack');
    expect(under.sprite).toBe('https://example.invalid/sprite');
  });

  test('pictures by address are one source and one layer', () => {
    const under = rasterUnderlay('https://example.invalid/{z}/{x}/{y}.png');
    expect(under.sources['under-raster']).toMatchObject({ tiles: ['https://example.invalid/{z}/{x}/{y}.png'] });
    expect(under.plan).toBe(false);
  });

  test('an archive of vector tiles draws each of its layers as areas, lines and points', () => {
    const under = tilesUnderlay({ address: 'pmtiles://a', kind: 'vector', layers: ['roads', 'water'] }, palette);
    expect(under.layers).toHaveLength(6);
    expect(tilesUnderlay({ address: 'pmtiles://a', kind: 'raster', layers: [] }, palette).layers).toHaveLength(1);
  });
});

describe('graticule', () => {
  test('has a round step with at least three lines across', () => {
    expect(stepFor(0.1)).toBe(0.02);
    expect(stepFor(3)).toBe(1);
    for (const span of [50, 7, 0.9, 0.03, 0.0011]) expect(span / stepFor(span)).toBeGreaterThanOrEqual(3);
  });

  test('labels longitude east and west, latitude north and south, also past the date line', () => {
    const labels = graticule([179.95, -0.04, 180.05, 0.04]).features.map((feature) => feature.properties.label);
    expect(labels).toEqual(expect.arrayContaining(['179.96° E', '179.98° W', '0.00°', '0.02° N', '0.04° S']));
  });

  test('has nothing to draw where nothing is in view', () => {
    expect(graticule([1, 1, 1, 1]).features).toEqual([]);
  });
});
