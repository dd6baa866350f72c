/** From legs to what lies along a course: streets, widths, surfaces. */
import type { Course } from '../course/course.ts';
import { toMeasure } from '../course/scale.ts';
import type { GroundStretch, StreetStretch, SurfaceStretch, WidthStretch } from './along.ts';
import { type Leg, goesOn } from './legs.ts';
import type { Network } from './network.ts';
import { streetWidth } from './width.ts';

/** Streets in running order; a way that is passed twice comes twice. */
export function streetsOf(
  course: Course,
  network: Network,
  legs: readonly Leg[],
  names: readonly (string | null)[],
): StreetStretch[] {
  const streets: StreetStretch[] = [];
  for (const [k, leg] of legs.entries()) {
    const { id, tags } = network.ways[network.way[leg.segment]!]!;
    const [from, to] = [toMeasure(course, leg.from), toMeasure(course, leg.to)];
    if (!(to > from)) continue;
    const last = streets.at(-1);
    const name = names[k]!;
    const same =
      last?.way === id && last.name === name && last.tags === tags && (last.to === from || goesOn(legs[k - 1], leg));
    if (same) streets[streets.length - 1] = { ...last, to };
    else streets.push({ from, to, way: id, name, tags });
  }
  return streets;
}

/** Widths along the streets, neighbours of one width as one. */
export const widthsOf = (streets: readonly StreetStretch[]): WidthStretch[] =>
  merged(
    streets.map(({ from, to, tags }): WidthStretch => ({ from, to, ...streetWidth(tags) })),
    (a, b) => a.width === b.width && a.rests === b.rests,
  );

/** Surfaces where the map tells them, neighbours of one surface as one. */
export const surfacesOf = (streets: readonly StreetStretch[]): SurfaceStretch[] =>
  merged(
    streets.flatMap(({ from, to, tags }): SurfaceStretch[] =>
      tags['surface'] === undefined ? [] : [{ from, to, surface: tags['surface'] }],
    ),
    (a, b) => a.surface === b.surface,
  );

/** Joins neighbours that touch and are alike. */
function merged<T extends GroundStretch>(stretches: readonly T[], alike: (a: T, b: T) => boolean): T[] {
  const joined: T[] = [];
  for (const stretch of stretches) {
    const last = joined.at(-1);
    if (last !== undefined && last.to === stretch.from && alike(last, stretch))
      joined[joined.length - 1] = { ...last, to: stretch.to };
    else joined.push(stretch);
  }
  return joined;
}
