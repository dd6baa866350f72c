/** All planted mistakes by theme. Not part of the package. */
import { ABSENCE } from './absence.ts';
import { BEFORE } from './before.ts';
import { BOXES } from './boxes.ts';
import { CLOSURES } from './closures.ts';
import { FLOWS } from './flows.ts';
import { ITEMS } from './items.ts';
import { NAMES } from './names.ts';
import { SLIPS } from './slips.ts';
import { PACES } from './paces.ts';
import type { Planted } from './planted.ts';

export const PLANTED: Readonly<Record<string, readonly Planted[]>> = {
  'the road’s clock': CLOSURES,
  'fields and speeds': PACES,
  flows: FLOWS,
  'tables, signs and points': ITEMS,
  boxes: BOXES,
  'what is left out': ABSENCE,
  'names, places and rules': NAMES,
  'what was found before': BEFORE,
  'slips of the pen': SLIPS,
};
