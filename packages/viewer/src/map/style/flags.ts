/** Layers of what the checks have found: marks at the rings, and at places that are no station's. */
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import { get, pair } from './expressions.ts';
import { WORDS_ZOOM } from './zooms.ts';

const MARK = {
  'icon-image': ['concat', 'flag-', get('flag')] as ExpressionSpecification,
  'icon-allow-overlap': true,
  'icon-ignore-placement': true,
} as const;

/** Also of the station on trial, whose source holds other features too. */
export const stationFlags: readonly LayerSpecification[] = ['stations', 'trial'].flatMap((source) =>
  [false, true].map((far): LayerSpecification => ({
    id: `${source}${far ? '-far' : ''}-flag`,
    type: 'symbol',
    source,
    ...(far ? { minzoom: WORDS_ZOOM } : { maxzoom: WORDS_ZOOM }),
    filter: ['all', ['has', 'flag'], ['!=', get('flag'), ''], ['!', ['has', 'draw']]],
    layout: { ...MARK, 'icon-offset': pair(far ? 'farFlagAt' : 'flagAt'), 'icon-anchor': get('flagAnchor') },
  })),
);

export const placeFlags: LayerSpecification = {
  id: 'flags',
  type: 'symbol',
  source: 'flags',
  layout: { ...MARK, 'symbol-z-order': 'source' },
};

/** Layers by which a press finds a finding. */
export const FLAG_LAYERS: readonly string[] = ['flags'];
