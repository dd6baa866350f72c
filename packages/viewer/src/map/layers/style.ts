/**
 * The map's style: sources and layers from a scene and a palette; pure. Text is drawn with the
 * system's own fonts (no glyphs address), shapes by images.ts when first asked for.
 */
import type { ExpressionSpecification, FilterSpecification, LayerSpecification, StyleSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { KEPT_IDS, SOURCES, type Scene } from '../scene.ts';
import { hasLand } from './context.ts';
import { BOLD, byZoom, get, is, pair, REGULAR } from './expressions.ts';
import { ground, groundNames } from './ground.ts';
import { beside, runs, said } from './besideStyle.ts';
import { placedLayers } from './placed.ts';
import { TABLE_DEPTH } from './items.ts';
import type { Underlay } from '../underlay.ts';

/** Zoom from which items are drawn one by one. */
export const ITEMS_ZOOM = 15.2;
/** Zoom from which the words of the items have room, so that rings stand farther out. */
export const WORDS_ZOOM = 16.1;

/** Zoom from which the names of stations have room, as on the whole island on a wide screen; numbers are drawn from any. */
export const NAMES_ZOOM = 10.8;

/** Lanes of a retraced stretch stand this far to the right of the line, pixels; MapLibre counts right as positive. */
const LANE = 3;

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

/** Deepest zoom to which stations and items are cut into tiles, 4 cm fine: deeper, a window would need many, each made anew at every move. */
const CUT_ZOOM = 17;

const zones = (palette: Palette): LayerSpecification[] => [
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

/** Thinner when zoomed far in, where tables and kerbs are what is looked at. */
const COURSE_WIDTH = byZoom(8, 2.2, 12, 4, 16, 4.4, 18, 3);

const courseLine = (
  id: string,
  filter: ExpressionSpecification,
  width: ExpressionSpecification,
  colour: string,
  offset: number,
  dash?: number[],
): LayerSpecification => ({
  id,
  type: 'line',
  source: 'courses',
  filter,
  layout: { 'line-join': 'round', 'line-cap': dash === undefined ? 'round' : 'butt' },
  paint: {
    'line-color': colour,
    'line-width': width,
    'line-offset': offset,
    ...(dash === undefined ? {} : { 'line-dasharray': dash }),
  },
});

/** Lines of one kind: retraced or not, of the course shown or of another. */
const both = (retraced: boolean, current: boolean): ExpressionSpecification => [
  'all',
  is('retraced', retraced),
  is('current', current),
];

const courses = (palette: Palette): LayerSpecification[] => {
  const halo = byZoom(8, 4.2, 12, 6.6, 16, 7.4, 18, 5.5);
  const thin = byZoom(8, 1.4, 12, 2, 18, 1.8);
  const lane = byZoom(8, 1.8, 12, 3, 16, 3.4, 18, 2.6);
  const arrows = (id: string, retraced: boolean, offset: [number, number]): LayerSpecification => ({
    id,
    type: 'symbol',
    source: 'courses',
    minzoom: 10,
    filter: both(retraced, true),
    layout: {
      'symbol-placement': 'line',
      'symbol-spacing': 84,
      'icon-image': 'arrow',
      'icon-offset': offset,
      'icon-allow-overlap': true,
      'icon-ignore-placement': true,
      'icon-padding': 0,
      'icon-size': byZoom(10, 0.92, 13, 1.05, 17, 1.1),
    },
  });
  return [
    courseLine('courses-halo', is('retraced', false), halo, palette.sheet, 0),
    courseLine('courses-halo-lanes', is('retraced', true), halo, palette.sheet, LANE),
    courseLine('courses-other', both(false, false), thin, palette.ink, 0, [3, 2]),
    courseLine('courses-other-lanes', both(true, false), thin, palette.ink, LANE, [3, 2]),
    courseLine('courses-line', both(false, true), COURSE_WIDTH, palette.ink, 0),
    courseLine('courses-lanes', both(true, true), lane, palette.ink, LANE),
    arrows('courses-arrows', false, [0, 0]),
    arrows('courses-arrows-lanes', true, [0, LANE]),
  ];
};

const marks = (palette: Palette): LayerSpecification[] => {
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

const items = (palette: Palette, latitude: number): LayerSpecification[] => {
  const depth = trueWidth(TABLE_DEPTH, latitude, 7);
  const inner = trueWidth(TABLE_DEPTH * 0.7, latitude, 4.6);
  const halo = { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 };
  const tables: ExpressionSpecification = is('draw', 'table');
  const pattern = (kind: string, image: string): LayerSpecification => ({
    id: `tables-${kind}`,
    type: 'line',
    source: 'items',
    minzoom: ITEMS_ZOOM,
    filter: ['all', tables, is('kind', kind)],
    paint: { 'line-width': inner, 'line-pattern': image },
  });
  const word = (id: string, filter: ExpressionSpecification, gap: number): LayerSpecification => ({
    id,
    type: 'symbol',
    source: 'items',
    minzoom: WORDS_ZOOM,
    filter,
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
    paint: halo,
  });
  // Words come first in the list: the map gives room from the last layer to the first, so words make way for shapes.
  return [
    {
      id: 'points-word',
      type: 'symbol',
      source: 'items',
      minzoom: WORDS_ZOOM,
      filter: is('draw', 'point'),
      layout: {
        'text-field': get('word'),
        'text-font': REGULAR,
        'text-size': 12,
        'text-variable-anchor': ['bottom', 'left', 'right', 'top'],
        'text-radial-offset': 1.1,
        'text-justify': 'auto',
        'text-max-width': 7,
      },
      paint: halo,
    },
    word('sign-word', is('draw', 'sign'), 1.9),
    word('items-word', is('draw', 'word'), 0.8),
    {
      id: 'trash-line',
      type: 'line',
      source: 'items',
      minzoom: ITEMS_ZOOM,
      filter: is('draw', 'trashLine'),
      paint: { 'line-color': palette.ink, 'line-width': 1.4, 'line-dasharray': [2, 3] },
    },
    {
      id: 'trash-boxes',
      type: 'symbol',
      source: 'items',
      minzoom: ITEMS_ZOOM,
      filter: is('draw', 'box'),
      layout: {
        'icon-image': 'box',
        'icon-rotate': get('bearing'),
        'icon-rotation-alignment': 'map',
        'icon-allow-overlap': true,
        'icon-padding': 0,
        'icon-size': byZoom(15, 0.55, 17.5, 1, 20, 1.2),
      },
    },
    {
      id: 'tables-case',
      type: 'line',
      source: 'items',
      minzoom: ITEMS_ZOOM,
      filter: tables,
      paint: { 'line-color': palette.ink, 'line-width': depth },
    },
    pattern('gel', 'dots'),
    pattern('sportsDrink', 'hatch'),
    {
      id: 'sign',
      type: 'symbol',
      source: 'items',
      minzoom: ITEMS_ZOOM,
      filter: is('draw', 'sign'),
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
      id: 'points',
      type: 'symbol',
      source: 'items',
      minzoom: ITEMS_ZOOM,
      filter: is('draw', 'point'),
      layout: { 'icon-image': ['concat', 'point-', get('kind')], 'icon-allow-overlap': true, 'icon-padding': 1 },
    },
  ];
};

/** The same layer for what belongs to the station on trial. */
const onTrial = (layer: LayerSpecification): LayerSpecification =>
  ({ ...layer, id: `trial-${layer.id}`, source: 'trial' }) as LayerSpecification;

const ends = (palette: Palette): LayerSpecification[] => [
  {
    id: 'ends',
    type: 'symbol',
    source: 'ends',
    layout: {
      'icon-image': ['concat', 'end-', get('end')],
      'icon-allow-overlap': true,
      'text-field': get('label'),
      'text-font': BOLD,
      'text-size': 12,
      'text-variable-anchor': [
        'bottom',
        'top',
        'left',
        'right',
        'top-left',
        'bottom-left',
        'top-right',
        'bottom-right',
      ],
      'text-radial-offset': 1,
      'text-justify': 'auto',
      'text-padding': 0,
      'text-optional': true,
    },
    paint: { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 },
  },
];

/** Layers of the stations, drawn once for all, once by filter for the one that is selected, once for the one on trial. Names make way for rings. */
function stationLayers(palette: Palette, which: 'all' | 'picked' | 'trial'): LayerSpecification[] {
  const picked = which !== 'all';
  const suffix = picked ? '-picked' : '';
  const only: ExpressionSpecification[] =
    which === 'all' ? [] : which === 'picked' ? [['==', get('id'), '']] : [['!', ['has', 'draw']]];
  const source = which === 'trial' ? 'trial' : 'stations';
  const common = { type: 'symbol' as const, source };
  const level = (far: boolean): LayerSpecification[] => {
    const id = `${source}${far ? '-far' : ''}`;
    const range = far ? { minzoom: WORDS_ZOOM } : { maxzoom: WORDS_ZOOM };
    return [
      {
        ...common,
        ...range,
        id: `${id}-stem${suffix}`,
        filter: ['all', is('shape', 'tick'), ...only],
        layout: {
          'icon-image': `stem${far ? '-far' : ''}${suffix}`,
          'icon-anchor': 'bottom',
          'icon-rotate': get('bearing'),
          'icon-rotation-alignment': 'map',
          'icon-allow-overlap': true,
          'icon-ignore-placement': true,
        },
      },
      {
        ...common,
        ...range,
        ...(far || picked ? {} : { minzoom: NAMES_ZOOM }),
        id: `${id}-name${suffix}`,
        filter: ['all', ...only],
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
      },
      {
        ...common,
        ...range,
        id: `${id}-ring${suffix}`,
        filter: ['all', ...only],
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
        paint: { 'text-color': picked ? palette['on-pick'] : palette.ink },
      },
    ];
  };
  return [...level(false), ...level(true)];
}

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
];

const spot = (id: 'cursor' | 'asked', palette: Palette): LayerSpecification => ({
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

const graticuleLayers = (palette: Palette): LayerSpecification[] => [
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

export function styleOf(scene: Scene, palette: Palette, latitude: number, under: Underlay): StyleSpecification {
  const nothing = { type: 'FeatureCollection' as const, features: [] };
  const sources = Object.fromEntries(
    SOURCES.map((name) => [
      name,
      {
        type: 'geojson' as const,
        data: scene[name],
        tolerance: 0.1,
        buffer: 128,
        ...(KEPT_IDS.has(name) ? { maxzoom: CUT_ZOOM } : {}),
      },
    ]),
  );
  return {
    version: 8,
    sources: {
      ...under.sources,
      ...sources,
      cursor: { type: 'geojson', data: nothing },
      asked: { type: 'geojson', data: nothing },
      graticule: { type: 'geojson', data: nothing },
    },
    ...(under.sprite === undefined ? {} : { sprite: under.sprite }),
    layers: [
      {
        id: 'paper',
        type: 'background',
        paint: { 'background-color': under.plan && hasLand(scene.context) ? palette.water : palette.land },
      },
      ...under.layers,
      ...(under.plan ? [...ground(palette), ...groundNames(palette)] : []),
      ...(under.graticule ? graticuleLayers(palette) : []),
      ...zones(palette),
      ...courses(palette),
      ...marks(palette),
      ...runs(palette),
      ...items(palette, latitude),
      ...beside('against', palette, WORDS_ZOOM),
      ...items(palette, latitude).map(onTrial),
      ...beside('trial', palette, WORDS_ZOOM),
      ...stationLayers(palette, 'all'),
      ...ends(palette),
      ...stationLayers(palette, 'picked'),
      ...stationLayers(palette, 'trial'),
      ...placedLayers(palette),
      ...said(palette),
      spot('asked', palette),
      spot('cursor', palette),
    ],
  };
}
