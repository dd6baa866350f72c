/** Signs, tables or boxes in a tunnel, by the map. */
import { TRAFFIC_CODE } from './byMap.ts';
import type { Check } from './check.ts';
import { onFeature } from './onFeature.ts';

export const itemInTunnel: Check = onFeature(
  { code: 'item-in-tunnel', severity: 'warning', source: TRAFFIC_CODE },
  { kinds: ['tunnel'], params: (shared) => shared },
);
