/** Signs, tables or boxes on a bridge, by the map. */
import { TRAFFIC_CODE } from './byMap.ts';
import type { Check } from './check.ts';
import { onFeature } from './onFeature.ts';

export const itemOnBridge: Check = onFeature(
  { code: 'item-on-bridge', severity: 'warning', source: TRAFFIC_CODE },
  { kinds: ['bridge'], params: (shared) => shared },
);
