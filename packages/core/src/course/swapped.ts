/** Whether two coordinates were given in the wrong order, seen from the course that they are meant to be near. */
import type { LonLat } from '../finding.ts';
import type { Metres } from '../units.ts';
import { nearestOn } from './passes.ts';
import type { IndexedCourse } from './segmentIndex.ts';

/** Farther than this from the course a point is hardly meant so, metres. */
const ASTRAY: Metres = 100_000;

/**
 * The position that a far point becomes when its two numbers change places, where that one is within 100 km of the course and
 * the point itself is not; `null` otherwise. Degrees, longitude first.
 */
export function swappedPosition(indexed: IndexedCourse, at: LonLat): LonLat | null {
  if (Math.abs(at[0]) > 90 || nearestOn(indexed, at).distance <= ASTRAY) return null;
  // The types keep the two apart; here they are to change places.
  const turned = at.toReversed() as readonly number[] as LonLat;
  return nearestOn(indexed, turned).distance <= ASTRAY ? turned : null;
}
