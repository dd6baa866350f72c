/** Layers of what stands at a station: tables to scale, signs, trash boxes, other points, and their words. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import { TABLE_DEPTH } from '../layers/items.ts';
import type { Palette } from '../palette.ts';
import { byZoom, get, is, REGULAR } from './expressions.ts';
import { ITEMS_ZOOM, WORDS_ZOOM } from './zooms.ts';

/** A word's distance from what it names, and the step aside of the one beside which the station's stem stands; ems. */
function shifted(gap: number): ExpressionSpecification {
  const cases = ([1, 0, -1] as const).flatMap((aside) => [
    ['all', is('anchor', 'left'), is('aside', aside)],
    ['literal', [gap, aside * 0.75]],
    ['all', is('anchor', 'right'), is('aside', aside)],
    ['literal', [-gap, aside * 0.75]],
  ]);
  return ['case', ...cases, ['literal', [gap, 0]]] as unknown as ExpressionSpecification;
}

/** Pixels of a ground length at each zoom, at least `least`: true to scale from the zoom where the two meet. */
export function trueWidth(metres: number, latitude: number, least: number): ExpressionSpecification {
  const atZero = (metres * 512) / (40_075_016.7 * Math.cos((latitude * Math.PI) / 180));
  const meet = Math.log2(least / atZero);
  if (meet >= 22) return ['interpolate', ['exponential', 2], ['zoom'], 0, least, 22, least];
  return ['interpolate', ['exponential', 2], ['zoom'], meet, least, 23, atZero * 2 ** 23];
}

/** What the layers of items have in common: one is for what is drawn in one way. */
const drawnAs = (
  id: string,
  draw: string,
): {
  readonly id: string;
  readonly source: 'items';
  readonly minzoom: number;
  readonly filter: ExpressionSpecification;
} => ({
  id,
  source: 'items',
  minzoom: ITEMS_ZOOM,
  filter: is('draw', draw),
});

/** Words beside signs, tables and points. They make way for shapes. */
function wordLayers(palette: Palette): LayerSpecification[] {
  const paint = { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 };
  const word = (id: string, draw: string, gap: number): LayerSpecification => ({
    ...drawnAs(id, draw),
    type: 'symbol',
    minzoom: WORDS_ZOOM,
    layout: {
      'text-field': get('word'),
      'text-font': REGULAR,
      'text-size': 12,
      'text-rotate': get('turn'),
      'text-rotation-alignment': 'viewport',
      'text-anchor': get('anchor'),
      'text-offset': shifted(gap),
      'text-padding': 1,
      'text-max-width': 30,
    },
    paint,
  });
  return [
    {
      ...drawnAs('points-word', 'point'),
      type: 'symbol',
      minzoom: WORDS_ZOOM,
      layout: {
        'text-field': get('word'),
        'text-font': REGULAR,
        'text-size': 12,
        'text-variable-anchor': ['bottom', 'left', 'right', 'top'],
        'text-radial-offset': 1.1,
        'text-justify': 'auto',
        'text-max-width': 7,
      },
      paint,
    },
    word('sign-word', 'sign', 1.9),
    word('items-word', 'word', 0.8),
  ];
}

/** Where cups are thrown away: the stretch, and the boxes along it. */
const trashLayers = (palette: Palette): LayerSpecification[] => [
  {
    ...drawnAs('trash-line', 'trashLine'),
    type: 'line',
    paint: { 'line-color': palette.ink, 'line-width': 1.4, 'line-dasharray': [2, 3] },
  },
  {
    ...drawnAs('trash-boxes', 'box'),
    type: 'symbol',
    layout: {
      'icon-image': 'box',
      'icon-rotate': get('bearing'),
      'icon-rotation-alignment': 'map',
      'icon-allow-overlap': true,
      'icon-padding': 0,
      'icon-size': byZoom(15, 0.55, 17.5, 1, 20, 1.2),
    },
  },
];

/** Tables, as deep as they are on the ground, each kind with its pattern. */
function tableLayers(palette: Palette, latitude: number): LayerSpecification[] {
  const depth = trueWidth(TABLE_DEPTH, latitude, 7);
  const inner = trueWidth(TABLE_DEPTH * 0.7, latitude, 4.6);
  const pattern = (kind: string, image: string): LayerSpecification => ({
    ...drawnAs(`tables-${kind}`, 'table'),
    type: 'line',
    filter: ['all', is('draw', 'table'), is('kind', kind)],
    paint: { 'line-width': inner, 'line-pattern': image },
  });
  return [
    {
      ...drawnAs('tables-case', 'table'),
      type: 'line',
      paint: { 'line-color': palette.ink, 'line-width': depth },
    },
    pattern('gel', 'dots'),
    pattern('sportsDrink', 'hatch'),
  ];
}

const boardLayers: readonly LayerSpecification[] = [
  {
    ...drawnAs('sign', 'sign'),
    type: 'symbol',
    layout: {
      'icon-image': 'sign',
      'icon-anchor': 'bottom',
      'icon-rotate': get('bearing'),
      'icon-rotation-alignment': 'map',
      'icon-allow-overlap': true,
      'icon-padding': 0,
      'icon-size': byZoom(15, 0.7, 17.5, 1),
    },
  },
  {
    ...drawnAs('points', 'point'),
    type: 'symbol',
    layout: { 'icon-image': ['concat', 'point-', get('kind')], 'icon-allow-overlap': true, 'icon-padding': 1 },
  },
];

/** Words come first in the list: the map gives room from the last layer to the first, so words make way for shapes. */
export const items = (palette: Palette, latitude: number): LayerSpecification[] => [
  ...wordLayers(palette),
  ...trashLayers(palette),
  ...tableLayers(palette, latitude),
  ...boardLayers,
];
