/** Layers of the courses: their lines, lanes where they are retraced, arrows, and start and finish. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, byZoom, get, is } from './expressions.ts';

/** Lanes of a retraced stretch stand this far to the right of the line, pixels; MapLibre counts right as positive. */
const LANE = 3;

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

export const courses = (palette: Palette): LayerSpecification[] => {
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

export const ends = (palette: Palette): LayerSpecification[] => [
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
