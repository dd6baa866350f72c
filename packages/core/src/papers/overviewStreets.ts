/** Names of streets on the map of all courses. */
import type { Place } from './backdrop.ts';
import type { NamedStreet } from './groundDrawing.ts';
import type { Html } from './html.ts';
import { STREET, streetNames } from './stationMapWords.ts';
import { type Box, textWidth } from './textBox.ts';

/** Names of the streets that are long enough on paper to carry them, clear of the courses and of all other words. */
export function streetsByName(
  streets: readonly NamedStreet[],
  size: { readonly width: number; readonly height: number },
  onCourses: readonly Box[],
  taken: readonly Box[],
): Html[] {
  const long = new Map<string, number>();
  for (const { name, places } of streets) long.set(name, (long.get(name) ?? 0) + lengthOf(places));
  const shown = streets.filter(({ name, line }) => line !== 'lane' && long.get(name)! > 0.8 * textWidth(name, STREET));
  return streetNames(shown, size, [...taken, ...onCourses]);
}

const lengthOf = (places: readonly Place[]): number =>
  places.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - places[k]![0], y - places[k]![1]), 0);
