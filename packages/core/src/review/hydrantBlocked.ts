/** Signs, tables or boxes within 15 ft of a hydrant on its side of the road, by the map. */
import { metres } from '../units.ts';
import { FIRE_CODE } from './byMap.ts';
import type { Check } from './check.ts';
import { nearKept } from './nearKept.ts';

/** Metres (15 ft). */
const FREE: number = metres(15, 'ft');
/** A hydrant farther from the line, metres, is of another road. */
const BESIDE = 20;

export const hydrantBlocked: Check = nearKept(
  { code: 'hydrant-blocked', severity: 'warning', source: FIRE_CODE },
  { kinds: ['hydrant'], free: FREE, beside: BESIDE, ownSide: true, params: (shared) => shared },
);
