/** Whether two coordinates were given in the wrong order, seen from the course that they are meant to be near. */
import type { LonLat } from '../finding.ts';
import type { Metres } from '../units.ts';
import { nearestOn } from './passes.ts';
import type { IndexedCourse } from './segmentIndex.ts';
import { position, want } from '../wants.ts';
import { wantIndexed } from './indexedShape.ts';

/** Farther than this from the course a point is hardly meant so, metres. */
const ASTRAY: Metres = 100_000;

/**
 * The position that a far point becomes when its two numbers change places, where that one is within 100 km of the course and
 * the point itself is not; `null` otherwise. Degrees, longitude first.
 * @example
 * ```ts
 * import { buildCourse, indexCourse, swappedPosition } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const indexed = indexCourse(built.value);
 * swappedPosition(indexed, [12.2, -30.095]); // → [-30.095, 12.2]
 * swappedPosition(indexed, [-30.095, 12.2]); // → null
 * ```
 */
export function swappedPosition(indexed: IndexedCourse, at: LonLat): LonLat | null {
  wantIndexed('swappedPosition', indexed);
  want('swappedPosition', 'at', position, at);
  if (Math.abs(at[0]) > 90 || nearestOn(indexed, at).distance <= ASTRAY) return null;
  // The types keep the two apart; here they are to change places.
  const turned = at.toReversed() as readonly number[] as LonLat;
  return nearestOn(indexed, turned).distance <= ASTRAY ? turned : null;
}
