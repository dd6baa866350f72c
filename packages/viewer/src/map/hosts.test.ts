import { describe, expect, test } from 'vitest';
import { hostOf, hostsOf, tileListOf, withTileList } from './hosts.ts';

const ADDRESS = 'https://tiles.example.invalid/{z}/{x}/{y}.png';

describe('the hosts that a style asks', () => {
  test('are those of its tiles, lists of tiles, drawings, pictures, films and icons, each once', () => {
    expect(
      hostsOf({
        version: 8,
        sprite: [{ id: 'a', url: 'https://icons.example.invalid/sprite' }],
        sources: {
          one: { type: 'raster', tiles: [ADDRESS, ADDRESS.replace('tiles', 'more')] },
          two: { type: 'vector', url: 'https://lists.example.invalid/tiles.json' },
          three: { type: 'geojson', data: 'https://drawings.example.invalid/roads.geojson' },
          four: {
            type: 'video',
            urls: ['//films.example.invalid/a.mp4'],
            coordinates: [
              [0, 1],
              [1, 1],
              [1, 0],
              [0, 0],
            ],
          },
          five: { type: 'geojson', data: { type: 'FeatureCollection', features: [] } },
        },
        layers: [],
      }),
    ).toEqual([
      'tiles.example.invalid',
      'more.example.invalid',
      'lists.example.invalid',
      'drawings.example.invalid',
      'films.example.invalid',
      'icons.example.invalid',
    ]);
    expect(hostsOf({ version: 8, sprite: 'https://icons.example.invalid/s', sources: {}, layers: [] })).toEqual([
      'icons.example.invalid',
    ]);
  });

  test('are none for what is in the page or the archive', () => {
    for (const address of ['pmtiles://island', 'data:image/png;base64,', 'blob:https://page.invalid/1', 'a.json', 7])
      expect(hostOf(address)).toBeNull();
  });

  test('that only a list of tiles names are known once the list is in the style', () => {
    const source = { type: 'vector', url: 'https://lists.example.invalid/tiles.json', maxzoom: 9 } as const;
    expect(tileListOf(source)).toBe(source.url);
    const known = withTileList(source, { tiles: [ADDRESS], minzoom: 2, maxzoom: 14, name: 'Island' });
    expect(known).toEqual({ type: 'vector', tiles: [ADDRESS], minzoom: 2, maxzoom: 9 });
    expect(hostsOf({ sources: { known } })).toEqual(['tiles.example.invalid']);
    expect(tileListOf(known)).toBeNull();
  });
});
