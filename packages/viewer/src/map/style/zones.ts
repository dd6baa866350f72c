/** Layers of the zones: where something may or may not be. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { get, REGULAR } from './expressions.ts';

export const zones = (palette: Palette): LayerSpecification[] => [
  {
    id: 'zones-edge',
    type: 'line',
    source: 'zones',
    paint: { 'line-color': palette.ink, 'line-width': 1.2, 'line-dasharray': [3, 2] },
  },
  {
    id: 'zones-name',
    type: 'symbol',
    source: 'zones',
    minzoom: 15,
    layout: {
      'text-field': get('label'),
      'text-font': REGULAR,
      'text-size': 11,
      'text-max-width': 9,
      'text-variable-anchor': ['left', 'right', 'top', 'bottom'],
      'text-radial-offset': 1.6,
      'text-justify': 'auto',
    },
    paint: { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 2 },
  },
];
