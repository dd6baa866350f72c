/** Signs, tables or boxes on a level crossing or within 50 ft of it, by the map. */
import { TRAFFIC_CODE } from './byMap.ts';
import type { Check } from './check.ts';
import { onFeature } from './onFeature.ts';
import { metres } from '../units.ts';

/** From the nearest rail, metres (50 ft). The map has the crossing as a place: its rails lie within a few metres of it. */
const RAILS: number = metres(50, 'ft');

export const itemOnLevelCrossing: Check = onFeature(
  { code: 'item-on-level-crossing', severity: 'error', source: TRAFFIC_CODE },
  { kinds: ['levelCrossing'], room: RAILS, params: (shared) => ({ ...shared, room: RAILS }) },
);
