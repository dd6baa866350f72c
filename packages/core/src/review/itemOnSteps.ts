/** Signs, tables or boxes on steps, by the map. */
import { type Check, COMMON_PRACTICE } from './check.ts';
import { onFeature } from './onFeature.ts';

export const itemOnSteps: Check = onFeature(
  { code: 'item-on-steps', severity: 'warning', source: COMMON_PRACTICE },
  { kinds: ['steps'], params: (shared) => shared },
);
