/** Layers of the plan's own drawing of the ground, in the colours of survey paper. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, byZoom, get, is, ITALIC, REGULAR } from './expressions.ts';

const fill = (id: string, colour: string, extra: object = {}): LayerSpecification => ({
  id: `ground-${id}`,
  type: 'fill',
  source: 'context',
  filter: is('ground', id),
  paint: { 'fill-color': colour, ...extra },
});
const line = (
  id: string,
  of: string,
  colour: string,
  width: ExpressionSpecification | number,
  dash?: number[],
): LayerSpecification => ({
  id: `ground-${id}`,
  type: 'line',
  source: 'context',
  filter: is('ground', of),
  layout: { 'line-cap': dash === undefined ? 'round' : 'butt', 'line-join': 'round' },
  paint: { 'line-color': colour, 'line-width': width, ...(dash === undefined ? {} : { 'line-dasharray': dash }) },
});

export const ground = (palette: Palette): LayerSpecification[] => {
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

export const groundNames = (palette: Palette): LayerSpecification[] => {
  const paint = { 'text-color': palette.place, 'text-halo-color': palette.land, 'text-halo-width': 1.4 };
  return [
    {
      id: 'name-roads',
      type: 'symbol',
      source: 'context',
      minzoom: 12.4,
      filter: ['match', get('ground'), ['road', 'street', 'path'], true, false],
      layout: {
        'symbol-placement': 'line',
        'symbol-spacing': 420,
        'text-offset': ['step', ['zoom'], ['literal', [0, 0]], 14, ['literal', [0, 1.5]]],
        'text-field': get('name'),
        'text-font': REGULAR,
        'text-size': 11,
        'text-letter-spacing': 0.04,
      },
      paint,
    },
    {
      id: 'name-areas',
      type: 'symbol',
      source: 'context',
      minzoom: 9.8,
      filter: ['match', get('ground'), ['park', 'water', 'name'], true, false],
      layout: { 'text-field': get('name'), 'text-font': ITALIC, 'text-size': 11, 'text-max-width': 8 },
      paint: { ...paint, 'text-halo-width': 1 },
    },
    {
      id: 'name-places',
      type: 'symbol',
      source: 'context',
      filter: is('ground', 'place'),
      layout: { 'text-field': get('name'), 'text-font': BOLD, 'text-size': 12, 'text-max-width': 8 },
      paint,
    },
  ];
};
