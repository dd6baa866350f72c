/** Layers of what somebody draws on the map. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, get } from './expressions.ts';

export const sketchLayers = (palette: Palette): LayerSpecification[] => [
  {
    id: 'sketch-line',
    type: 'line',
    source: 'sketch',
    filter: ['!=', ['geometry-type'], 'Point'],
    paint: { 'line-color': palette.pick, 'line-width': 2.4, 'line-dasharray': [2, 1] },
  },
  {
    id: 'sketch-point',
    type: 'circle',
    source: 'sketch',
    filter: ['==', ['geometry-type'], 'Point'],
    paint: {
      'circle-radius': 4,
      'circle-color': palette.sheet,
      'circle-stroke-color': palette.pick,
      'circle-stroke-width': 2,
    },
  },
  {
    id: 'sketch-said',
    type: 'symbol',
    source: 'sketch',
    filter: ['has', 'text'],
    layout: {
      'text-field': get('text'),
      'text-font': BOLD,
      'text-size': 14,
      'text-anchor': 'bottom-left',
      'text-offset': [0.7, -0.5],
      'text-allow-overlap': true,
      'text-ignore-placement': true,
    },
    paint: { 'text-color': palette.pick, 'text-halo-color': palette.sheet, 'text-halo-width': 2.4 },
  },
];
