/**
 * Trash boxes by need: as many as hold the cups of a direction (`cupsPerBox`: an assumption), between two and as many as
 * stand 3 m apart along the trash stretch, emptied more often where they are too few. The plan's own number rules.
 */
import { boxCount } from '../station/wording.ts';
import type { Site } from './site.ts';

/** Boxes do not stand closer than this, metres: an assumption. */
export const CLOSEST_BOXES = 3;
export const FEWEST_BOXES = 2;

/** Boxes of each of so many served directions. */
export function boxesFor({ station, practice, supplies, needs }: Site, directions: number): number {
  if (station.boxes !== undefined) return station.boxes;
  const cups = (needs.cups.water + needs.cups.sportsDrink) / Math.max(1, directions);
  const room = boxCount(Math.max(0, practice.trashTo - practice.trashFrom), CLOSEST_BOXES);
  return Math.min(room, Math.max(FEWEST_BOXES, Math.ceil(cups / supplies.cupsPerBox - 1e-9)));
}
