/** Layers of points recorded on the ground: small crosses with their verdicts. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, get, is } from './expressions.ts';

/** From where there is room for words. */
const WORDS_ZOOM = 15;

export const placedLayers = (palette: Palette): LayerSpecification[] => {
  const paint = { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 };
  const words = (id: string, always: boolean): LayerSpecification => ({
    // What fails is said first, and the rest where there is room.
    id,
    type: 'symbol',
    source: 'placed',
    minzoom: WORDS_ZOOM,
    filter: always ? is('verdict', 'fails') : ['!', is('verdict', 'fails')],
    layout: {
      'text-field': get('said'),
      'text-font': BOLD,
      'text-size': 11,
      'text-variable-anchor': ['left', 'right', 'top', 'bottom'],
      'text-radial-offset': 0.9,
      'text-padding': 1,
    },
    paint,
  });
  return [
    {
      id: 'placed-cross',
      type: 'symbol',
      source: 'placed',
      layout: {
        'text-field': '×',
        'text-font': BOLD,
        'text-size': 19,
        'text-allow-overlap': true,
        'text-ignore-placement': true,
      },
      paint,
    },
    words('placed-words', false),
    words('placed-fails', true),
  ];
};
