/**
 * A place as a grid reference of the military grid (MGRS, the same letters as the United States National
 * Grid on WGS 84): what is said to an emergency dispatcher. By the library `mgrs`, which cuts digits off and
 * never rounds up, as the standard asks. Accuracy: the square named holds the place.
 */
import * as library from 'mgrs';
import type { LonLat } from '../finding.ts';
import { describeValue, aNumber, oneOf, tuple, want } from '../wants.ts';

/** Digits of easting and of northing: 5 name a square of 1 m, 4 of 10 m, 3 of 100 m. */
export type GridDigits = 1 | 2 | 3 | 4 | 5;

/** A grid reference in groups, as it is read aloud, or why there is none. */
export type GridReference =
  | { readonly text: string; readonly reason: null }
  | { readonly text: null; readonly reason: string };

// Node sees the library's CommonJS build, whose names hang on `default`; bundlers see its modules.
const whole: typeof library & { readonly default?: typeof library } = library;
const { forward } = whole.default ?? whole;

const none = (reason: string): GridReference => ({ text: null, reason });

/**
 * The grid reference (MGRS) of a place, degrees: "28H BJ 7628 2397". None beyond 84° north or 80° south, where the grid is another, and none
 * for what is no place. At a square's very edge the square to the north or east is named.
 * @example
 * ```ts
 * import { gridReference } from '@halfcup/core/units';
 * gridReference([-17.4, -33.2]).text; // → '28H BJ 7628 2397'
 * gridReference([0, 89]).text; // → null
 * ```
 */
export function gridReference(at: LonLat, digits: GridDigits = 4): GridReference {
  want('gridReference', 'at', tuple(aNumber, aNumber), at);
  want('gridReference', 'digits', oneOf(1, 2, 3, 4, 5), digits);
  const [lon, lat] = at;
  if (!Number.isFinite(lon) || !Number.isFinite(lat) || Math.abs(lon) > 180 || Math.abs(lat) > 90) {
    return none(
      `found longitude ${describeValue(lon)}, latitude ${describeValue(lat)}; expected degrees, -180 to 180 and -90 to 90`,
    );
  }
  if (lat > 84 || lat < -80)
    return none(
      `latitude ${lat} lies beyond the grid, which ends at 84° north and 80° south: give longitude and latitude instead`,
    );
  const [, zone, square, numbers] = /^(\d{1,2}[A-Z])([A-Z]{2})(\d+)$/u.exec(forward([lon, lat], digits))!;
  return { text: `${zone} ${square} ${numbers!.slice(0, digits)} ${numbers!.slice(digits)}`, reason: null };
}
