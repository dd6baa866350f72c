/** Layers of the clock: runners along the road, and what stations are doing. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import { LEVELS } from '../../state/view/clock.ts';
import type { Palette } from '../palette.ts';
import { get } from './expressions.ts';

const LEVEL: ExpressionSpecification = ['coalesce', ['feature-state', 'level'], 0];
/** Pixels of each level, near. */
const WIDTHS = LEVELS.map((_, k) => 1.4 + 1.35 * k);
/** From afar lanes are thinner and closer, so that none lies beside another road. */
const FAR = 0.38;

const byDistance = (near: (share: number) => unknown): ExpressionSpecification =>
  ['interpolate', ['linear'], ['zoom'], 10, near(FAR), 15, near(1)] as unknown as ExpressionSpecification;

/** Nothing where nobody is: not even a hairline. */
const width = (more: number): ExpressionSpecification =>
  byDistance((share) => [
    'match',
    LEVEL,
    ...WIDTHS.flatMap((pixels, k) => [k + 1, Math.max(1.6, pixels * Math.sqrt(share)) + more]),
    0,
  ]);

/** Of each lane a line whose thickness follows its runners, and an edge that sets it off from the map. */
export const crowd = (palette: Palette): LayerSpecification[] => {
  const line = (id: string, colour: string | ExpressionSpecification, more: number): LayerSpecification => ({
    id,
    type: 'line',
    source: 'crowd',
    layout: { 'line-join': 'round', 'line-cap': 'round' },
    paint: {
      'line-color': colour,
      'line-width': width(more),
      'line-offset': byDistance((share) => ['*', share, get('offset')]),
      'line-opacity': ['case', ['>', LEVEL, 0], 1, 0],
    },
  });
  const colours: ExpressionSpecification = [
    'match',
    get('colour'),
    0,
    palette.crowd0,
    1,
    palette.crowd1,
    2,
    palette.crowd2,
    palette.crowd3,
  ];
  return [line('crowd-edge', palette.sheet, 2), line('crowd-line', colours, 0)];
};

/** At the pin of each station, in the shape of what it is doing. */
export const phases: LayerSpecification = {
  id: 'phases',
  type: 'symbol',
  source: 'phases',
  layout: {
    'icon-image': ['concat', 'phase-', get('phase')],
    'icon-allow-overlap': true,
    'icon-ignore-placement': false,
  },
};
