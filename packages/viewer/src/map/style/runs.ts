/** Layers of the runs of vehicles. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Palette } from '../palette.ts';
import { BOLD, get, is } from './expressions.ts';

/** A thin line along the course, and a number at each stop; collecting is dashed. */
export const runs = (palette: Palette): LayerSpecification[] => {
  const line = (kind: 'drop' | 'collect', offset: number, dash?: number[]): LayerSpecification => ({
    id: `runs-${kind}`,
    type: 'line',
    source: 'runs',
    filter: ['all', is('draw', 'line'), is('kind', kind)],
    layout: { 'line-join': 'round' },
    paint: {
      'line-color': palette.pick,
      'line-width': 1.6,
      'line-offset': offset,
      ...(dash === undefined ? {} : { 'line-dasharray': dash }),
    },
  });
  return [
    line('drop', 7),
    line('collect', 10, [4, 2]),
    {
      id: 'runs-stops',
      type: 'symbol',
      source: 'runs',
      filter: is('draw', 'stop'),
      layout: {
        'text-field': get('label'),
        'text-font': BOLD,
        'text-size': 11,
        'text-variable-anchor': ['top-left', 'bottom-left', 'top-right', 'bottom-right'],
        'text-radial-offset': 0.9,
        'text-padding': 1,
      },
      paint: { 'text-color': palette.pick, 'text-halo-color': palette.sheet, 'text-halo-width': 1.8 },
    },
  ];
};
