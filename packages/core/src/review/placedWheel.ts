/**
 * Distances wheeled on the ground, from a waypoint's comment or description: "wheel 98 yd". A sign's is
 * wheeled to the first table, a trash drop's from the end of the last. Held as course distance by the
 * plan's own difference between the two. Error: 0.1 % of the reading and 0.5 m (assumption), with the
 * plan's margin for the offset that the wheel ran at; all taken as limits.
 */
import type { Item } from '../layout/layout.ts';
import { parseLength } from '../units.ts';
import type { PlacedPoint } from './placedPoint.ts';

/** Share of the reading, and metres: assumption. */
export const WHEEL_SHARE = 0.001;
export const WHEEL_FIXED = 0.5;

/** A reading in metres, or what there is instead that could not be read; `null` where nobody wheeled. */
export type Wheeled = { readonly metres: number } | { readonly unread: string } | null;

/** Other ways to write the units of `parseLength`. */
const UNITS: Readonly<Record<string, string>> = {
  yds: 'yd',
  yard: 'yd',
  yards: 'yd',
  feet: 'ft',
  foot: 'ft',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
};

/** What comment, description and name say of a wheel; two different readings are not read. */
export function wheeledOf({ waypoint }: PlacedPoint): Wheeled {
  const texts = [waypoint.comment, waypoint.description, waypoint.name].filter((text) => text !== null);
  const said = texts.flatMap((text) =>
    [...text.matchAll(/\bwheel(?:ed)?\b[\s:=]*(.*?)(?=\bwheel|[;\n]|$)/giu)].map((match) => match[1]!.trim()),
  );
  if (said.length === 0) return null;
  const read = said.map(readingOf);
  const first = read[0]!;
  const agreed = first !== null && read.every((one) => one === first);
  return agreed ? { metres: first } : { unread: said.join('; ') };
}

function readingOf(text: string): number | null {
  const match = /^(\d[\d.,]*)\s*(\p{L}+)/u.exec(text);
  if (match === null) return null;
  const [, digits = '', unit = ''] = match;
  const small = unit.toLowerCase();
  const length = parseLength(`${digits} ${UNITS[small] ?? small}`);
  return length.ok && length.value > 0 ? length.value : null;
}

/** A reading as course distance with its margin, metres, between an item's end `k` and a table's; `null` where the plan has no wheel distance. */
export function asAlong(
  reading: number,
  item: Item,
  k: 0 | 1,
  table: Item,
  tableEnd: 0 | 1,
): { measured: number; margin: number } | null {
  if (item.wheel === null || table.wheel === null) return null;
  const along = Math.abs(item.along[k] - table.along[tableEnd]);
  const wheel = Math.abs(item.wheel[k] - table.wheel[tableEnd]);
  return { measured: reading + along - wheel, margin: reading * WHEEL_SHARE + WHEEL_FIXED + item.wheelMargin };
}
