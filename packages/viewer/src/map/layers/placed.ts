/** Where things stood when somebody recorded them, each with its verdict: small crosses. Pure. */
import type { PlacedVerdict } from '@halfcup/core';
import type { LayerSpecification } from 'maplibre-gl';
import { point } from '@turf/turf';
import type { Feature, Point } from 'geojson';
import { placedItem } from '../../placedWords.ts';
import type { Palette } from '../palette.ts';
import { BOLD, get, is } from './expressions.ts';

export interface PlacedProps {
  readonly verdict: PlacedVerdict['verdict'];
  /** "Ahead as placed: fails". */
  readonly said: string;
}

export const placedPoints = (verdicts: readonly PlacedVerdict[]): Feature<Point, PlacedProps>[] =>
  verdicts.map((one) =>
    point<PlacedProps>([one.at[0], one.at[1]], {
      verdict: one.verdict,
      said: `${placedItem(one)} as placed: ${one.verdict}`,
    }),
  );

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
