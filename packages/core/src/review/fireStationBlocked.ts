/** Signs, tables or boxes on the road in front of a fire station, by the map: within 75 ft on either side, across the road too. */
import { metres } from '../units.ts';
import { FIRE_CODE } from './byMap.ts';
import type { Check } from './check.ts';
import { nearKept } from './nearKept.ts';

/** Metres (75 ft, what is asked for across the road): the map has the house, not where its engines come out. */
const FREE: number = metres(75, 'ft');
/** A fire station farther from the line, metres, turns out into another road. */
const BESIDE = 40;

export const fireStationBlocked: Check = nearKept(
  { code: 'fire-station-blocked', severity: 'warning', source: FIRE_CODE },
  { kinds: ['fireStation'], free: FREE, beside: BESIDE, ownSide: false, params: (shared) => shared },
);
