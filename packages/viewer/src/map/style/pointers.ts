/** Layers of the places that somebody points at or asks about, and of the graticule. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { get, REGULAR } from './expressions.ts';

export const spot = (id: 'cursor' | 'asked', palette: Palette): LayerSpecification => ({
  id,
  type: 'circle',
  source: id,
  paint: {
    'circle-radius': id === 'asked' ? 5 : 6,
    'circle-color': id === 'asked' ? palette.pick : palette.sheet,
    'circle-opacity': id === 'asked' ? 1 : 0.6,
    'circle-stroke-color': id === 'asked' ? palette.sheet : palette.pick,
    'circle-stroke-width': id === 'asked' ? 2 : 3,
  },
});

export const graticuleLayers = (palette: Palette): LayerSpecification[] => [
  { id: 'graticule', type: 'line', source: 'graticule', paint: { 'line-color': palette.shore, 'line-width': 0.8 } },
  {
    id: 'graticule-names',
    type: 'symbol',
    source: 'graticule',
    layout: {
      'symbol-placement': 'line',
      'text-field': get('label'),
      'text-font': REGULAR,
      'text-size': 10.5,
      'symbol-spacing': 600,
    },
    paint: { 'text-color': palette.soft, 'text-halo-color': palette.land, 'text-halo-width': 2 },
  },
];
