/** Layers of the marks of kilometres or miles: fewer from afar. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { get, is, REGULAR } from './expressions.ts';

export const marks = (palette: Palette): LayerSpecification[] => {
  const level = (every: number, minzoom: number): LayerSpecification[] => [
    {
      id: `marks-${every}`,
      type: 'symbol',
      source: 'marks',
      minzoom,
      filter: is('every', every),
      layout: {
        'icon-image': 'mark',
        'icon-rotate': ['+', get('azimuth'), 0],
        'icon-rotation-alignment': 'map',
        'icon-allow-overlap': true,
        'icon-ignore-placement': true,
      },
    },
    {
      id: `marks-${every}-label`,
      type: 'symbol',
      source: 'marks',
      minzoom,
      filter: is('every', every),
      layout: {
        'text-field': get('label'),
        'text-font': REGULAR,
        'text-size': 11,
        'text-anchor': get('anchor'),
        'text-radial-offset': 1.05,
        'text-padding': 0,
      },
      paint: { 'text-color': palette.soft, 'text-halo-color': palette.sheet, 'text-halo-width': 1.6 },
    },
  ];
  return [...level(1, 12.6), ...level(5, 10.4), ...level(10, 0)];
};
