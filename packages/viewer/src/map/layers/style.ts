/**
 * The map's style: sources and layers from a scene and a palette; pure. Text is drawn with the
 * system's own fonts (no glyphs address), shapes by images.ts when first asked for.
 */
import type { ExpressionSpecification, LayerSpecification, StyleSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { SOURCES, type Scene } from '../scene.ts';
import { hasLand } from './context.ts';
import { TABLE_DEPTH } from './items.ts';

const REGULAR = ['system-ui', 'sans-serif'];
/** A first name that no font has: the map reads the weight or slant from it, the next name is used. */
const BOLD = ['Bold', 'system-ui', 'sans-serif'];
const ITALIC = ['Italic', 'system-ui', 'sans-serif'];

/** Zoom from which items are drawn one by one. */
export const ITEMS_ZOOM = 15.2;
/** Zoom from which the words of the items have room, so that rings stand farther out. */
export const WORDS_ZOOM = 16.8;

/** Lanes of a retraced stretch stand this far to the right of the line, pixels; MapLibre counts right as positive. */
const LANE = 3;

const get = (name: string): ExpressionSpecification => ['get', name];
const is = (name: string, value: string | boolean | number): ExpressionSpecification => ['==', ['get', name], value];
const pair = (name: string): ExpressionSpecification => ['array', 'number', 2, ['get', name]];
const byZoom = (...stops: number[]): ExpressionSpecification => ['interpolate', ['exponential', 1.6], ['zoom'], ...stops] as unknown as ExpressionSpecification;

/** A word's distance from what it names, and the step aside of the one beside which the station's stem stands; ems. */
function shifted(gap: number): ExpressionSpecification {
  const cases = ([1, 0, -1] as const).flatMap((aside) => [
    ['all', is('anchor', 'left'), is('aside', aside)], ['literal', [gap, aside * 0.75]],
    ['all', is('anchor', 'right'), is('aside', aside)], ['literal', [-gap, aside * 0.75]],
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

const ground = (palette: Palette): LayerSpecification[] => {
  const fill = (id: string, colour: string, extra: object = {}): LayerSpecification => ({ id: `ground-${id}`, type: 'fill', source: 'context', filter: is('ground', id), paint: { 'fill-color': colour, ...extra } });
  const line = (id: string, of: string, colour: string, width: ExpressionSpecification | number, dash?: number[]): LayerSpecification => ({
    id: `ground-${id}`,
    type: 'line',
    source: 'context',
    filter: is('ground', of),
    layout: { 'line-cap': dash === undefined ? 'round' : 'butt', 'line-join': 'round' },
    paint: { 'line-color': colour, 'line-width': width, ...(dash === undefined ? {} : { 'line-dasharray': dash }) },
  });
  return [
    fill('shallow', palette.shallow),
    fill('land', palette.land),
    line('shore', 'land', palette.shore, 1.2),
    fill('beach', palette.beach),
    fill('area', palette.land, { 'fill-outline-color': palette.shore }),
    fill('park', palette.park),
    fill('water', palette.water, { 'fill-outline-color': palette.shore }),
    fill('paved', palette.road, { 'fill-outline-color': palette.shore }),
    line('contour', 'contour', palette.contour, 0.8),
    fill('building', palette.building),
    line('street-case', 'street', palette['road-case'], byZoom(9, 1.6, 13, 4.4, 17, 14, 20, 60)),
    line('road-case', 'road', palette['road-case'], byZoom(9, 2.4, 13, 7, 17, 20, 20, 86)),
    line('street', 'street', palette.road, byZoom(9, 1, 13, 3, 17, 12, 20, 56)),
    line('road', 'road', palette.road, byZoom(9, 1.4, 13, 5, 17, 18, 20, 82)),
    line('path', 'path', palette.shore, byZoom(9, 1, 17, 2.4), [2, 1.6]),
    line('line', 'line', palette.shore, 1),
  ];
};

const groundNames = (palette: Palette): LayerSpecification[] => {
  const paint = { 'text-color': palette.place, 'text-halo-color': palette.land, 'text-halo-width': 1.4 };
  return [
    { id: 'name-roads', type: 'symbol', source: 'context', minzoom: 12.4, filter: ['match', get('ground'), ['road', 'street', 'path'], true, false], layout: { 'symbol-placement': 'line', 'symbol-spacing': 420, 'text-field': get('name'), 'text-font': REGULAR, 'text-size': 11, 'text-letter-spacing': 0.04 }, paint },
    { id: 'name-areas', type: 'symbol', source: 'context', minzoom: 11, filter: ['match', get('ground'), ['park', 'water', 'name'], true, false], layout: { 'text-field': get('name'), 'text-font': ITALIC, 'text-size': 11, 'text-max-width': 8 }, paint: { ...paint, 'text-halo-width': 1 } },
    { id: 'name-places', type: 'symbol', source: 'context', filter: is('ground', 'place'), layout: { 'text-field': get('name'), 'text-font': BOLD, 'text-size': 12, 'text-max-width': 8 }, paint },
  ];
};

const zones = (palette: Palette): LayerSpecification[] => [
  { id: 'zones-edge', type: 'line', source: 'zones', paint: { 'line-color': palette.ink, 'line-width': 1.2, 'line-dasharray': [3, 2] } },
  { id: 'zones-name', type: 'symbol', source: 'zones', minzoom: 15, layout: { 'text-field': get('label'), 'text-font': REGULAR, 'text-size': 11, 'text-max-width': 9 }, paint: { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.5 } },
];

/** Thinner when zoomed far in, where tables and kerbs are what is looked at. */
const COURSE_WIDTH = byZoom(8, 2.2, 12, 4, 16, 4.4, 18, 3);

const courses = (palette: Palette): LayerSpecification[] => {
  const line = (id: string, filter: ExpressionSpecification, width: ExpressionSpecification, colour: string, offset: number, dash?: number[]): LayerSpecification => ({
    id,
    type: 'line',
    source: 'courses',
    filter,
    layout: { 'line-join': 'round', 'line-cap': dash === undefined ? 'round' : 'butt' },
    paint: { 'line-color': colour, 'line-width': width, 'line-offset': offset, ...(dash === undefined ? {} : { 'line-dasharray': dash }) },
  });
  const both = (retraced: boolean, current: boolean): ExpressionSpecification => ['all', is('retraced', retraced), is('current', current)];
  const halo = byZoom(8, 4.2, 12, 6.6, 16, 7.4, 18, 5.5);
  const thin = byZoom(8, 1.4, 12, 2, 18, 1.8);
  const lane = byZoom(8, 1.8, 12, 3, 16, 3.4, 18, 2.6);
  const arrows = (id: string, retraced: boolean, offset: [number, number]): LayerSpecification => ({
    id,
    type: 'symbol',
    source: 'courses',
    minzoom: 10,
    filter: both(retraced, true),
    layout: { 'symbol-placement': 'line', 'symbol-spacing': 84, 'icon-image': 'arrow', 'icon-offset': offset, 'icon-allow-overlap': true, 'icon-ignore-placement': true, 'icon-padding': 0, 'icon-size': byZoom(10, 0.8, 13, 1, 17, 1.1) },
  });
  return [
    line('courses-halo', is('retraced', false), halo, palette.sheet, 0),
    line('courses-halo-lanes', is('retraced', true), halo, palette.sheet, LANE),
    line('courses-other', both(false, false), thin, palette.ink, 0, [3, 2]),
    line('courses-other-lanes', both(true, false), thin, palette.ink, LANE, [3, 2]),
    line('courses-line', both(false, true), COURSE_WIDTH, palette.ink, 0),
    line('courses-lanes', both(true, true), lane, palette.ink, LANE),
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
      layout: { 'icon-image': 'mark', 'icon-rotate': ['+', get('azimuth'), 0], 'icon-rotation-alignment': 'map', 'icon-allow-overlap': true, 'icon-ignore-placement': true },
    },
    {
      id: `marks-${every}-label`,
      type: 'symbol',
      source: 'marks',
      minzoom,
      filter: is('every', every),
      layout: { 'text-field': get('label'), 'text-font': REGULAR, 'text-size': 11, 'text-variable-anchor': ['right', 'left', 'top', 'bottom', 'top-right', 'bottom-left'], 'text-radial-offset': 1, 'text-justify': 'auto', 'text-padding': 1 },
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
  const pattern = (kind: string, image: string): LayerSpecification => ({ id: `tables-${kind}`, type: 'line', source: 'items', minzoom: ITEMS_ZOOM, filter: ['all', tables, is('kind', kind)], paint: { 'line-width': inner, 'line-pattern': image } });
  const word = (id: string, filter: ExpressionSpecification, gap: number): LayerSpecification => ({
    id,
    type: 'symbol',
    source: 'items',
    minzoom: WORDS_ZOOM,
    filter,
    layout: { 'text-field': get('word'), 'text-font': REGULAR, 'text-size': 12, 'text-rotate': get('turn'), 'text-rotation-alignment': 'viewport', 'text-anchor': get('anchor'), 'text-offset': shifted(gap), 'text-padding': 1, 'text-max-width': 30 },
    paint: halo,
  });
  // Words come first in the list: the map gives room from the last layer to the first, so words make way for shapes.
  return [
    { id: 'points-word', type: 'symbol', source: 'items', minzoom: WORDS_ZOOM, filter: is('draw', 'point'), layout: { 'text-field': get('word'), 'text-font': REGULAR, 'text-size': 12, 'text-variable-anchor': ['bottom', 'left', 'right', 'top'], 'text-radial-offset': 1.1, 'text-justify': 'auto', 'text-max-width': 7 }, paint: halo },
    word('sign-word', is('draw', 'sign'), 1.9),
    word('items-word', is('draw', 'word'), 0.8),
    { id: 'trash-line', type: 'line', source: 'items', minzoom: ITEMS_ZOOM, filter: is('draw', 'trashLine'), paint: { 'line-color': palette.ink, 'line-width': 1.4, 'line-dasharray': [2, 3] } },
    { id: 'trash-boxes', type: 'symbol', source: 'items', minzoom: ITEMS_ZOOM, filter: is('draw', 'box'), layout: { 'icon-image': 'box', 'icon-rotate': get('bearing'), 'icon-rotation-alignment': 'map', 'icon-allow-overlap': true, 'icon-padding': 0, 'icon-size': byZoom(15, 0.55, 17.5, 1, 20, 1.2) } },
    { id: 'tables-case', type: 'line', source: 'items', minzoom: ITEMS_ZOOM, filter: tables, paint: { 'line-color': palette.ink, 'line-width': depth } },
    pattern('gel', 'dots'),
    pattern('sportsDrink', 'hatch'),
    { id: 'sign', type: 'symbol', source: 'items', minzoom: ITEMS_ZOOM, filter: is('draw', 'sign'), layout: { 'icon-image': 'sign', 'icon-anchor': 'bottom', 'icon-rotate': get('bearing'), 'icon-rotation-alignment': 'map', 'icon-allow-overlap': true, 'icon-padding': 0, 'icon-size': byZoom(15, 0.7, 17.5, 1) } },
    { id: 'points', type: 'symbol', source: 'items', minzoom: ITEMS_ZOOM, filter: is('draw', 'point'), layout: { 'icon-image': ['concat', 'point-', get('kind')], 'icon-allow-overlap': true, 'icon-padding': 1 } },
  ];
};

const ends = (palette: Palette): LayerSpecification[] => [
  {
    id: 'ends',
    type: 'symbol',
    source: 'ends',
    layout: { 'icon-image': ['concat', 'end-', get('end')], 'icon-allow-overlap': true, 'text-field': get('label'), 'text-font': BOLD, 'text-size': 12, 'text-variable-anchor': ['bottom', 'top', 'left', 'right', 'top-left', 'bottom-left', 'top-right', 'bottom-right'], 'text-radial-offset': 1, 'text-justify': 'auto', 'text-padding': 0, 'text-optional': true },
    paint: { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 },
  },
];

/** Layers of the stations, drawn once for all and once, by filter, for the one that is selected. */
function stationLayers(palette: Palette, picked: boolean): LayerSpecification[] {
  const name = picked ? '-picked' : '';
  const images = (far: boolean): ExpressionSpecification => ['case', is('shape', 'tick'), `tick${far ? '-far' : ''}${name}`, `ring${name}`];
  const filter: ExpressionSpecification = picked ? ['==', get('id'), ''] : ['literal', true] as unknown as ExpressionSpecification;
  const level = (far: boolean): LayerSpecification[] => {
    const range = far ? { minzoom: WORDS_ZOOM } : { maxzoom: WORDS_ZOOM };
    return [
      {
        id: `stations${far ? '-far' : ''}${name}`,
        type: 'symbol',
        source: 'stations',
        ...range,
        filter,
        layout: {
          'icon-image': images(far), 'icon-anchor': ['case', is('shape', 'tick'), 'bottom', 'center'], 'icon-rotate': get('bearing'), 'icon-rotation-alignment': 'map', 'icon-allow-overlap': true, 'icon-ignore-placement': far,
          'text-field': get('number'), 'text-font': BOLD, 'text-size': 11, 'text-offset': pair(far ? 'farRing' : 'ring'), 'text-allow-overlap': true, 'text-rotation-alignment': 'viewport', 'symbol-z-order': 'source',
        },
        paint: { 'text-color': picked ? palette['on-pick'] : palette.ink },
      },
      {
        id: `stations${far ? '-far' : ''}-name${name}`,
        type: 'symbol',
        source: 'stations',
        ...range,
        filter,
        layout: { 'text-field': get('name'), 'text-font': picked ? BOLD : REGULAR, 'text-size': 12, 'text-anchor': get('anchor'), 'text-offset': pair(far ? 'farLabel' : 'label'), 'text-allow-overlap': picked, 'text-max-width': 9, 'text-padding': 0 },
        paint: { 'text-color': picked ? palette.pick : palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 },
      },
    ];
  };
  return [...level(false), ...level(true)];
}

export const PICKED_LAYERS: readonly string[] = ['stations-picked', 'stations-name-picked', 'stations-far-picked', 'stations-far-name-picked'];
/** Layers that a press can choose a station by. */
export const STATION_LAYERS: readonly string[] = ['stations', 'stations-name', 'stations-far', 'stations-far-name', 'tables-case', 'sign', 'trash-boxes'];

const cursor = (palette: Palette): LayerSpecification => ({
  id: 'cursor',
  type: 'circle',
  source: 'cursor',
  paint: { 'circle-radius': 6, 'circle-color': palette.sheet, 'circle-opacity': 0.6, 'circle-stroke-color': palette.pick, 'circle-stroke-width': 3 },
});

export function styleOf(scene: Scene, palette: Palette, latitude: number): StyleSpecification {
  const nothing = { type: 'FeatureCollection' as const, features: [] };
  const sources = Object.fromEntries(SOURCES.map((name) => [name, { type: 'geojson' as const, data: scene[name], tolerance: 0.1, buffer: 128 }]));
  return {
    version: 8,
    sources: { ...sources, cursor: { type: 'geojson', data: nothing } },
    layers: [
      { id: 'paper', type: 'background', paint: { 'background-color': hasLand(scene.context) ? palette.water : palette.land } },
      ...ground(palette),
      ...groundNames(palette),
      ...zones(palette),
      ...courses(palette),
      ...marks(palette),
      ...items(palette, latitude),
      ...stationLayers(palette, false),
      ...ends(palette),
      ...stationLayers(palette, true),
      cursor(palette),
    ],
  };
}
