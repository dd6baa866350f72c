/** Layers of the stations, and by which of them a press finds a station. */
import type { ExpressionSpecification, FilterSpecification, LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, get, is, pair, REGULAR } from './expressions.ts';
import { NAMES_ZOOM, WORDS_ZOOM } from './zooms.ts';

/** One drawing of the stations: all of them, by filter the one that is selected, or the one on trial. */
interface Drawing {
  readonly palette: Palette;
  readonly which: 'all' | 'picked' | 'trial';
  /** Rings stand farther out, where the words of the items have room. */
  readonly far: boolean;
}

const sourceOf = ({ which }: Drawing): 'trial' | 'stations' => (which === 'trial' ? 'trial' : 'stations');
/** The selected station and the one on trial look the same. */
const isPicked = ({ which }: Drawing): boolean => which !== 'all';
const suffixOf = (drawing: Drawing): string => (isPicked(drawing) ? '-picked' : '');

/** Filters beside those of the part. */
const only = ({ which }: Drawing): ExpressionSpecification[] =>
  which === 'all' ? [] : which === 'picked' ? [['==', get('id'), '']] : [['!', ['has', 'draw']]];

/** What the layers of a drawing have in common. */
const partOf = (
  drawing: Drawing,
  part: (typeof PARTS)[number],
): { readonly id: string; readonly type: 'symbol'; readonly source: string; minzoom?: number; maxzoom?: number } => ({
  type: 'symbol',
  source: sourceOf(drawing),
  ...(drawing.far ? { minzoom: WORDS_ZOOM } : { maxzoom: WORDS_ZOOM }),
  id: `${sourceOf(drawing)}${drawing.far ? '-far' : ''}-${part}${suffixOf(drawing)}`,
});

const stem = (drawing: Drawing): LayerSpecification => ({
  ...partOf(drawing, 'stem'),
  filter: ['all', is('shape', 'tick'), ...only(drawing)],
  layout: {
    'icon-image': `stem${drawing.far ? '-far' : ''}${suffixOf(drawing)}`,
    'icon-anchor': 'bottom',
    'icon-rotate': get('bearing'),
    'icon-rotation-alignment': 'map',
    'icon-allow-overlap': true,
    'icon-ignore-placement': true,
  },
});

function nameLayer(drawing: Drawing): LayerSpecification {
  const { palette, far } = drawing;
  const picked = isPicked(drawing);
  return {
    ...partOf(drawing, 'name'),
    ...(far || picked ? {} : { minzoom: NAMES_ZOOM }),
    filter: ['all', ...only(drawing)],
    layout: {
      'text-field': get('name'),
      'text-font': picked ? BOLD : REGULAR,
      'text-size': 12,
      'text-anchor': get('anchor'),
      'text-offset': pair(far ? 'farLabel' : 'label'),
      'text-allow-overlap': picked,
      'text-max-width': 9,
      'text-padding': 0,
    },
    paint: {
      'text-color': picked ? palette.pick : palette.ink,
      'text-halo-color': palette.sheet,
      'text-halo-width': 1.8,
    },
  };
}

function ring(drawing: Drawing): LayerSpecification {
  const { palette, far } = drawing;
  const suffix = suffixOf(drawing);
  return {
    ...partOf(drawing, 'ring'),
    filter: ['all', ...only(drawing)],
    layout: {
      'icon-image': ['case', is('shape', 'tick'), `ring${suffix}`, `ring-unclear${suffix}`],
      'icon-offset': pair(far ? 'farRingAt' : 'ringAt'),
      'icon-allow-overlap': true,
      'icon-padding': 0,
      'text-field': get('number'),
      'text-font': BOLD,
      'text-size': 11,
      'text-offset': pair(far ? 'farRing' : 'ring'),
      'text-allow-overlap': true,
      'text-padding': 0,
      'symbol-z-order': 'source',
    },
    paint: { 'text-color': isPicked(drawing) ? palette['on-pick'] : palette.ink },
  };
}

/** Layers of one drawing, near and far. Names make way for rings. */
export const stationLayers = (palette: Palette, which: Drawing['which']): LayerSpecification[] =>
  [false, true].flatMap((far) => [stem, nameLayer, ring].map((part) => part({ palette, which, far })));

const PARTS = ['stem', 'name', 'ring'] as const;
/** Layers that show only the selected station, and whether they show only ticks. */
export const PICKED_LAYERS: readonly (readonly [id: string, ticks: boolean])[] = ['stations', 'stations-far'].flatMap(
  (id) => PARTS.map((part) => [`${id}-${part}-picked`, part === 'stem'] as const),
);

/** What a picked layer shows for a station, `null` for none. */
export const pickedFilter = (station: string | null, ticks: boolean): FilterSpecification => [
  'all',
  ['==', ['get', 'id'], station ?? ''],
  ...(ticks ? [is('shape', 'tick')] : []),
];

/** Layers that a press can choose a station by. */
export const STATION_LAYERS: readonly string[] = [
  'stations-ring',
  'stations-name',
  'stations-far-ring',
  'stations-far-name',
  'stations-flag',
  'stations-far-flag',
  'tables-case',
  'sign',
  'trash-boxes',
];

/** Layers by which a press can drag a station. */
export const DRAG_LAYERS: readonly string[] = [
  'stations-ring',
  'stations-stem',
  'stations-far-ring',
  'stations-far-stem',
  'tables-case',
];
