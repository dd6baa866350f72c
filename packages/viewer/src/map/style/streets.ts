/** Layers of the plan's map of the ground: areas, streets with their edges, paths, steps and rails, and the streets' names. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { byZoom, get, is, ITALIC, REGULAR } from './expressions.ts';

const source = 'streets';

const area = (draw: string, colour: string, edge?: string): LayerSpecification => ({
  id: `streets-${draw}`,
  type: 'fill',
  source,
  filter: is('draw', draw),
  ...(draw === 'building' ? { minzoom: 13 } : {}),
  paint: { 'fill-color': colour, ...(edge === undefined ? {} : { 'fill-outline-color': edge }) },
});

const open = (draw: string): ExpressionSpecification => ['all', is('draw', draw), is('below', false)];

interface Look {
  readonly colour: string;
  readonly width: ExpressionSpecification | number;
  readonly dash?: number[];
  readonly minzoom?: number;
}

const line = (
  id: string,
  filter: ExpressionSpecification,
  { colour, width, dash, minzoom }: Look,
): LayerSpecification => ({
  id: `streets-${id}`,
  type: 'line',
  source,
  filter,
  ...(minzoom === undefined ? {} : { minzoom }),
  layout: { 'line-cap': dash === undefined ? 'round' : 'butt', 'line-join': 'round' },
  paint: { 'line-color': colour, 'line-width': width, ...(dash === undefined ? {} : { 'line-dasharray': dash }) },
});

/** Widths by zoom: from a hairline to about what streets are. */
const WIDTHS = {
  main: { inner: byZoom(10, 1, 13, 3.4, 17, 14, 20, 84), outer: byZoom(10, 1.8, 13, 5, 17, 16, 20, 88) },
  street: { inner: byZoom(12, 0.8, 14, 2.6, 17, 10, 20, 66), outer: byZoom(12, 1.4, 14, 4, 17, 12, 20, 70) },
  lane: { inner: byZoom(13, 0.6, 15, 2, 17, 6, 20, 42), outer: byZoom(13, 1, 15, 3.2, 17, 8, 20, 46) },
} as const;
/** From which zooms streets are drawn, so that a town from afar is no grey spot. */
const FROM = { main: 8, street: 11, lane: 13 } as const;
const ORDER = ['lane', 'street', 'main'] as const;

export const streets = (palette: Palette): LayerSpecification[] => [
  area('park', palette.park),
  area('water', palette.water, palette.shore),
  area('paved', palette.road, palette['road-case']),
  line('shore', open('shore'), { colour: palette.shore, width: 1.4 }),
  line('stream', open('stream'), { colour: palette.water, width: byZoom(12, 1, 17, 5), minzoom: 12 }),
  area('building', palette.building, palette['road-case']),
  line('below', ['all', ['in', get('draw'), ['literal', [...ORDER]]], is('below', true)], {
    colour: palette['road-case'],
    width: byZoom(12, 1, 17, 5, 20, 20),
    dash: [2.4, 1.4],
    minzoom: 12,
  }),
  ...ORDER.map((draw) =>
    line(`${draw}-case`, open(draw), {
      colour: palette['road-case'],
      width: WIDTHS[draw].outer,
      minzoom: FROM[draw],
    }),
  ),
  ...ORDER.map((draw) =>
    line(draw, open(draw), { colour: palette.road, width: WIDTHS[draw].inner, minzoom: FROM[draw] }),
  ),
  line('path', open('path'), { colour: palette.shore, width: byZoom(13, 0.8, 17, 2.2), dash: [2, 1.6], minzoom: 13 }),
  line('steps', open('steps'), {
    colour: palette.place,
    width: byZoom(14, 1.6, 17, 5, 20, 20),
    dash: [0.3, 0.3],
    minzoom: 14,
  }),
  line('rail', open('rail'), { colour: palette.place, width: byZoom(10, 0.6, 17, 1.6), minzoom: 10 }),
  line('rail-ties', open('rail'), {
    colour: palette.place,
    width: byZoom(13, 3, 17, 7),
    dash: [0.22, 2.2],
    minzoom: 13,
  }),
];

/** From where a street's name is written: those that matter most from afar. */
const NAMED: readonly (readonly [rank: number, minzoom: number])[] = [
  [5, 12.6],
  [4, 14.2],
  [1, 15.4],
];

export const streetNames = (palette: Palette): LayerSpecification[] => {
  const paint = { 'text-color': palette.place, 'text-halo-color': palette.land, 'text-halo-width': 1.5 };
  return [
    // Later layers are placed first: the streets that matter most have their names at the end.
    ...NAMED.toReversed().map(([rank, minzoom], k, all): LayerSpecification => {
      const next = all[k + 1]?.[0];
      return {
        id: `name-streets-${rank}`,
        type: 'symbol',
        source,
        minzoom,
        filter: [
          'all',
          ['!=', get('name'), ''],
          ['>=', get('rank'), rank],
          ...(next === undefined ? [] : [['<', get('rank'), next] as ExpressionSpecification]),
        ] as ExpressionSpecification,
        layout: {
          'symbol-placement': 'line',
          'symbol-spacing': 320,
          'text-field': get('name'),
          'text-font': REGULAR,
          'text-size': byZoom(13, 10.5, 17, 12.5),
          'text-letter-spacing': 0.03,
          // Beside the course's line, which would strike it through.
          'text-offset': ['case', get('run'), ['literal', [0, 1.15]], ['literal', [0, 0]]],
          'text-max-angle': 32,
          'text-padding': 4,
        },
        paint: { ...paint, 'text-halo-color': palette.road },
      };
    }),
    {
      id: 'name-streets-areas',
      type: 'symbol',
      source,
      minzoom: 14,
      filter: ['all', ['in', get('draw'), ['literal', ['park', 'water']]], ['!=', get('name'), '']],
      layout: { 'text-field': get('name'), 'text-font': ITALIC, 'text-size': 11, 'text-max-width': 8 },
      paint: { ...paint, 'text-halo-width': 1 },
    },
  ];
};
