/** Signs, tables or boxes on a pedestrian crossing, by the map. */
import { TRAFFIC_CODE } from './byMap.ts';
import type { Check } from './check.ts';
import { onFeature } from './onFeature.ts';

/** Half of a crossing along the road, metres (common practice, no source): the map has it as a place. */
const HALF = 2;

export const itemOnCrossing: Check = onFeature(
  { code: 'item-on-crossing', severity: 'note', source: TRAFFIC_CODE },
  { kinds: ['crossing'], room: HALF, params: (shared) => shared },
);
