/** Layers of what stands beside the stations shown: the old place of the one on trial, and other positions. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, get, is, pair, REGULAR } from './expressions.ts';
import { WORDS_ZOOM } from './zooms.ts';

interface Level {
  readonly source: 'trial' | 'against';
  readonly palette: Palette;
  /** Rings stand farther out. */
  readonly far: boolean;
}

/** What the layers of a level have in common. */
const partOf = (
  { source, far }: Level,
  part: string,
): { readonly id: string; readonly type: 'symbol'; readonly source: string; minzoom?: number; maxzoom?: number } => ({
  id: `beside-${source}${far ? '-far' : ''}-${part}`,
  type: 'symbol',
  source,
  ...(far ? { minzoom: WORDS_ZOOM } : { maxzoom: WORDS_ZOOM }),
});

const stem = (level: Level): LayerSpecification => ({
  ...partOf(level, 'stem'),
  filter: ['all', is('draw', 'old'), is('shape', 'tick')],
  layout: {
    'icon-image': level.far ? 'stem-far-hollow' : 'stem-hollow',
    'icon-anchor': 'bottom',
    'icon-rotate': get('bearing'),
    'icon-rotation-alignment': 'map',
    'icon-allow-overlap': true,
    'icon-ignore-placement': true,
  },
});

const ring = (level: Level): LayerSpecification => ({
  ...partOf(level, 'ring'),
  filter: is('draw', 'old'),
  layout: {
    'icon-image': 'ring-hollow',
    'icon-offset': pair(level.far ? 'farRingAt' : 'ringAt'),
    'icon-allow-overlap': true,
    'icon-ignore-placement': true,
    'text-field': get('number'),
    'text-font': REGULAR,
    'text-size': 11,
    'text-offset': pair(level.far ? 'farRing' : 'ring'),
    'text-allow-overlap': true,
    'text-ignore-placement': true,
  },
  paint: { 'text-color': level.palette.soft, 'text-halo-color': level.palette.sheet, 'text-halo-width': 1.2 },
});

const nameLayer = (level: Level): LayerSpecification => ({
  ...partOf(level, 'name'),
  filter: is('draw', 'old'),
  layout: {
    'text-field': get('name'),
    'text-font': REGULAR,
    'text-size': 11,
    'text-anchor': get('anchor'),
    'text-offset': pair(level.far ? 'farLabel' : 'label'),
    'text-max-width': 12,
    'text-padding': 0,
  },
  paint: { 'text-color': level.palette.soft, 'text-halo-color': level.palette.sheet, 'text-halo-width': 1.8 },
});

const way = (source: Level['source'], palette: Palette): LayerSpecification => ({
  id: `beside-${source}-way`,
  type: 'line',
  source,
  filter: is('draw', 'way'),
  paint: { 'line-color': palette.soft, 'line-width': 1.6, 'line-dasharray': [2, 2] },
});

/** Old or other places: dashed, hollow, with the way to the place shown. */
export const beside = (source: Level['source'], palette: Palette): LayerSpecification[] => [
  way(source, palette),
  ...[false, true].flatMap((far) => [stem, ring, nameLayer].map((part) => part({ source, palette, far }))),
];

/** The difference, written at the pin of the station on trial, over all else. */
export const said = (palette: Palette): LayerSpecification[] => [
  {
    id: 'trial-said',
    type: 'symbol',
    source: 'trial',
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
