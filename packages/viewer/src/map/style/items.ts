/** Layers of what stands at a station: tables to scale, signs, trash boxes, other points, and their words. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import { TABLE_DEPTH } from '../layers/items.ts';
import type { Palette } from '../palette.ts';
import { byZoom, get, is, pair, REGULAR } from './expressions.ts';
import { BANDS, WORD_SIZE } from '../layers/words.ts';
import { ITEMS_ZOOM } from './zooms.ts';

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

/** Words beside signs, tables and points, upright, where they were placed for each band of zooms: none is left out by the map. */
const wordLayers = (palette: Palette): LayerSpecification[] =>
  BANDS.map((from, band) => ({
    ...drawnAs(`items-word-${band}`, 'word'),
    type: 'symbol',
    minzoom: from,
    ...(band === BANDS.length - 1 ? {} : { maxzoom: BANDS[band + 1]! }),
    filter: ['all', is('draw', 'word'), is('band', band)],
    layout: {
      'text-field': get('says'),
      'text-font': REGULAR,
      'text-size': WORD_SIZE,
      'text-offset': pair('offset'),
      'text-allow-overlap': true,
      'text-padding': 1,
      'text-max-width': 40,
    },
    paint: { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 },
  }));

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

/** Words come first in the list, so that shapes are drawn over them. */
export const items = (palette: Palette, latitude: number): LayerSpecification[] => [
  ...wordLayers(palette),
  ...trashLayers(palette),
  ...tableLayers(palette, latitude),
  ...boardLayers,
];
