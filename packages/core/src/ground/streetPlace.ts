/**
 * A place in the words that people use: the street, the cross-street that was passed last and the one that comes next.
 */
import { finite, want } from '../wants.ts';
import { isGroundAlong } from './shapes.ts';
import type { GroundAlong, Junction, StreetPlace, StreetStretch } from './along.ts';

/** Metres: an unnamed link or roundabout no longer than this, with the same street before and behind it, is that street. */
const LINK = 60;
/** Metres between two stretches, from rounding. */
const TOUCH = 0.01;

/** The course on one street, however many ways the map cut it into. */
interface Run {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** The street that the course came from, or goes on into, without leaving the streets between; `null` where there is none with a name. */
  readonly came: string | null;
  readonly goes: string | null;
}

const NOWHERE: StreetPlace = { street: null, after: null, before: null };

/**
 * The street at a measure of a course, metres, with the last named cross-street before it and the next after it on that street, in
 * running order; where the course turns out of the street, the street that it turns into. All `null` off the streets, on one without a name, and beyond the ends
 * of the course. At a junction itself, that is the one passed last.
 * @example
 * ```ts
 * import { type GroundAlong, streetPlace } from '@halfcup/core/ground';
 *
 * const tags = { highway: 'residential' };
 * const mill = { node: 'node/2', ways: ['way/8'], sides: ['left'], vehicles: true, access: false } as const;
 * const along: GroundAlong = {
 *   streets: [{ from: 0, to: 900, way: 'way/7', name: 'Pier Road', tags }],
 *   junctions: [{ ...mill, measure: 400, names: ['Mill Lane'], mouth: { from: 392, to: 408 } }],
 *   features: [],
 *   keepClear: [],
 *   widths: [],
 *   surfaces: [],
 *   offMap: [],
 * };
 * streetPlace(along, 250); // → { street: 'Pier Road', after: null, before: 'Mill Lane' }
 * ```
 */
export function streetPlace(along: GroundAlong, measure: number): StreetPlace {
  want('streetPlace', 'what groundAlong returns', isGroundAlong, along);
  want('streetPlace', 'the measure in metres', finite, measure);
  const run = runAt(along.streets, measure);
  if (run === null) return NOWHERE;
  const crossing = along.junctions.filter(
    ({ measure: at, names }) => at >= run.from - TOUCH && at <= run.to + TOUCH && crossName(names, run.name) !== null,
  );
  const last = crossing.findLast((junction) => junction.measure <= measure);
  const next = crossing.find((junction) => junction.measure > measure);
  return {
    street: run.name,
    after: nameOf(last, run, run.from, run.came),
    before: nameOf(next, run, run.to, run.goes),
  };
}

/** A junction's name, or at the end of the run, or without a junction, that of the street there. */
function nameOf(junction: Junction | undefined, run: Run, end: number, street: string | null): string | null {
  if (junction === undefined) return street;
  const atEnd = Math.abs(junction.measure - end) <= TOUCH;
  return atEnd && street !== null ? street : crossName(junction.names, run.name);
}

const crossName = (names: readonly string[], street: string): string | null =>
  names.find((name) => name !== street) ?? null;

function runAt(streets: readonly StreetStretch[], measure: number): Run | null {
  const k = indexAt(streets, measure);
  if (k < 0) return null;
  const name = nameAt(streets, k);
  if (name === null) return null;
  let [first, last] = [k, k];
  while (first > 0 && touches(streets, first) && nameAt(streets, first - 1) === name) first--;
  while (last + 1 < streets.length && touches(streets, last + 1) && nameAt(streets, last + 1) === name) last++;
  return {
    name,
    from: streets[first]!.from,
    to: streets[last]!.to,
    came: touches(streets, first) ? nameAt(streets, first - 1) : null,
    goes: touches(streets, last + 1) ? nameAt(streets, last + 1) : null,
  };
}

/** Index of the stretch at a measure; at the border of two, of the second; −1 off the streets. */
function indexAt(streets: readonly StreetStretch[], measure: number): number {
  let [low, high] = [0, streets.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (streets[middle]!.from <= measure) low = middle + 1;
    else high = middle;
  }
  return low > 0 && streets[low - 1]!.to >= measure ? low - 1 : -1;
}

/** Whether a stretch goes on from the one before. */
function touches(streets: readonly StreetStretch[], k: number): boolean {
  const [before, after] = [streets[k - 1], streets[k]];
  return before !== undefined && after !== undefined && after.from - before.to <= TOUCH;
}

/** A stretch's name; of one without in a short link, however many pieces that is in, the name of the street before and behind the link. */
function nameAt(streets: readonly StreetStretch[], k: number): string | null {
  const { name } = streets[k]!;
  if (name !== null) return name;
  const [first, last] = [endOfLink(streets, k, -1), endOfLink(streets, k, 1)];
  if (streets[last]!.to - streets[first]!.from > LINK) return null;
  const before = touches(streets, first) ? streets[first - 1]!.name : null;
  return touches(streets, last + 1) && streets[last + 1]!.name === before ? before : null;
}

/** The last stretch without a name from `k` on, on one side. */
function endOfLink(streets: readonly StreetStretch[], k: number, step: 1 | -1): number {
  let end = k;
  while (touches(streets, step > 0 ? end + 1 : end) && streets[end + step]!.name === null) end += step;
  return end;
}
