/** Signs, tables or boxes on the road in front of a hospital or an ambulance station, by the map. */
import { type Check, COMMON_PRACTICE } from './check.ts';
import { nearKept } from './nearKept.ts';

/** Metres on either side: the map has the house, not its way in. */
const FREE = 30;
/** One farther from the line, metres, has its way in from another road. */
const BESIDE = 60;

export const hospitalBlocked: Check = nearKept(
  { code: 'hospital-blocked', severity: 'warning', source: COMMON_PRACTICE },
  {
    kinds: ['hospital', 'ambulanceStation'],
    free: FREE,
    beside: BESIDE,
    ownSide: false,
    params: (shared, { kind }) => ({ ...shared, of: kind === 'hospital' ? 'hospital' : 'ambulance' }),
  },
);
