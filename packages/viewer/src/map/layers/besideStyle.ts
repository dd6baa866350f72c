/** Layers of what stands beside the stations shown: the old place of the one in the hand, the variant compared, and the runs of vehicles. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, get, is, pair, REGULAR } from './expressions.ts';

/** Old or other places: dashed, hollow, with the way to the place shown. `wordsZoom`: from where rings stand farther out. */
export function beside(source: 'held' | 'against', palette: Palette, wordsZoom: number): LayerSpecification[] {
  const level = (far: boolean): LayerSpecification[] => {
    const id = `beside-${source}${far ? '-far' : ''}`;
    const common = { type: 'symbol' as const, source, ...(far ? { minzoom: wordsZoom } : { maxzoom: wordsZoom }) };
    return [
      {
        ...common,
        id: `${id}-stem`,
        filter: ['all', is('draw', 'old'), is('shape', 'tick')],
        layout: {
          'icon-image': far ? 'stem-far-hollow' : 'stem-hollow',
          'icon-anchor': 'bottom',
          'icon-rotate': get('bearing'),
          'icon-rotation-alignment': 'map',
          'icon-allow-overlap': true,
          'icon-ignore-placement': true,
        },
      },
      {
        ...common,
        id: `${id}-ring`,
        filter: is('draw', 'old'),
        layout: {
          'icon-image': 'ring-hollow',
          'icon-offset': pair(far ? 'farRingAt' : 'ringAt'),
          'icon-allow-overlap': true,
          'icon-ignore-placement': true,
          'text-field': get('number'),
          'text-font': REGULAR,
          'text-size': 11,
          'text-offset': pair(far ? 'farRing' : 'ring'),
          'text-allow-overlap': true,
          'text-ignore-placement': true,
        },
        paint: { 'text-color': palette.soft, 'text-halo-color': palette.sheet, 'text-halo-width': 1.2 },
      },
      {
        ...common,
        id: `${id}-name`,
        filter: is('draw', 'old'),
        layout: {
          'text-field': get('name'),
          'text-font': REGULAR,
          'text-size': 11,
          'text-anchor': get('anchor'),
          'text-offset': pair(far ? 'farLabel' : 'label'),
          'text-max-width': 12,
          'text-padding': 0,
        },
        paint: { 'text-color': palette.soft, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 },
      },
    ];
  };
  const way: LayerSpecification = {
    id: `beside-${source}-way`,
    type: 'line',
    source,
    filter: is('draw', 'way'),
    paint: { 'line-color': palette.soft, 'line-width': 1.6, 'line-dasharray': [2, 2] },
  };
  return [way, ...level(false), ...level(true)];
}

/** The difference, written at the pin of the station in the hand, over all else. */
export const said = (palette: Palette): LayerSpecification[] => [
  {
    id: 'held-said',
    type: 'symbol',
    source: 'held',
    filter: is('draw', 'said'),
    layout: {
      'text-field': get('text'),
      'text-font': BOLD,
      'text-size': 13,
      'text-anchor': get('anchor'),
      'text-radial-offset': 1.3,
      'text-max-width': 8,
      'text-allow-overlap': true,
      'text-ignore-placement': true,
    },
    paint: { 'text-color': palette.pick, 'text-halo-color': palette.sheet, 'text-halo-width': 2.4 },
  },
];

/** A thin line along the course, and a number at each stop; collecting is dashed. */
export const runs = (palette: Palette): LayerSpecification[] => {
  const line = (kind: 'drop' | 'collect', offset: number, dash?: number[]): LayerSpecification => ({
    id: `runs-${kind}`,
    type: 'line',
    source: 'runs',
    filter: ['all', is('draw', 'line'), is('kind', kind)],
    layout: { 'line-join': 'round' },
    paint: {
      'line-color': palette.pick,
      'line-width': 1.6,
      'line-offset': offset,
      ...(dash === undefined ? {} : { 'line-dasharray': dash }),
    },
  });
  return [
    line('drop', 7),
    line('collect', 10, [4, 2]),
    {
      id: 'runs-stops',
      type: 'symbol',
      source: 'runs',
      filter: is('draw', 'stop'),
      layout: {
        'text-field': get('label'),
        'text-font': BOLD,
        'text-size': 11,
        'text-variable-anchor': ['top-left', 'bottom-left', 'top-right', 'bottom-right'],
        'text-radial-offset': 0.9,
        'text-padding': 1,
      },
      paint: { 'text-color': palette.pick, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 },
    },
  ];
};
