/**
 * How long the lists of a plan are, before its schema is asked: of a list that is too long it would say as much as there are
 * entries, and take its time.
 */
import { LIMITS, type PlanList } from '../limits.ts';
import type { Path } from './fault.ts';
import { parsePosition } from './fields.ts';

/** A list that is too long; the path is that of its first entry too many. */
export interface LongList {
  readonly what: PlanList | 'entries';
  readonly found: number;
  readonly path: Path;
}

/** Where each list stands; the star is for every entry of the list around it, whose lists count together. */
const LISTS: readonly (readonly [what: PlanList, ...path: readonly string[]])[] = [
  ['courses', 'courses'],
  ['races', 'races'],
  ['waves', 'races', '*', 'waves'],
  ['marks', 'courses', '*', 'marks'],
  ['stations', 'stations'],
  ['zones', 'zones'],
  ['vehicles', 'vehicles'],
  ['waivers', 'waivers'],
  ['variants', 'variants'],
  ['crew', 'people', 'crew'],
];

type Entries = Readonly<Record<string, unknown>>;

const isContainer = (value: unknown): value is Entries => typeof value === 'object' && value !== null;

const entryOf = (value: unknown, key: string): unknown =>
  isContainer(value) && Object.hasOwn(value, key) ? value[key] : undefined;

interface Place {
  readonly list: readonly unknown[];
  readonly path: Path;
}

function listsAt(value: unknown, keys: readonly string[], path: Path): readonly Place[] {
  const [key, ...rest] = keys;
  if (key === undefined) return Array.isArray(value) ? [{ list: value, path }] : [];
  if (key !== '*') return listsAt(entryOf(value, key), rest, [...path, key]);
  return Array.isArray(value) ? value.flatMap((one: unknown, k) => listsAt(one, rest, [...path, k])) : [];
}

function namedLists(plan: unknown): readonly LongList[] {
  return LISTS.flatMap(([what, ...keys]) => {
    const places = listsAt(plan, keys, []);
    const found = places.reduce((sum, { list }) => sum + list.length, 0);
    if (found <= LIMITS.plan[what]) return [];
    let left = LIMITS.plan[what];
    const past = places.find(({ list }) => (left -= list.length) < 0)!;
    return [{ what, found, path: [...past.path, left + past.list.length] }];
  });
}

/** Where there are lists of positions: of a course's line, which may have elevations, and of a zone. */
const isPositions = ([list, , key]: Path): boolean =>
  (list === 'courses' && key === 'line') || (list === 'zones' && key === 'polygon');

/** Positions have a limit of their own, which the text has kept; so has the crew. */
const isOfItsOwn = (value: Entries, path: Path): boolean =>
  (Array.isArray(value) && path.length === 3 && isPositions(path) && value.every(Array.isArray)) ||
  (path.length === 2 && path[1] === 'crew');

/** What can hold no list that is too long, such as a position: of these there may be hundreds of thousands. */
const isFlat = (value: Entries): boolean =>
  Array.isArray(value) && value.length <= LIMITS.plan.entries && !value.some(isContainer);

const NONE: readonly LongList[] = [];

function otherLists(value: Entries, path: Path): readonly LongList[] {
  const keys = Array.isArray(value) ? null : Object.keys(value);
  const entries = Object.values(value);
  const keyOf = (k: number): string | number => keys?.[k] ?? k;
  const inner = entries.flatMap((one, k) =>
    isContainer(one) && !isFlat(one) ? otherLists(one, [...path, keyOf(k)]) : NONE,
  );
  const most = LIMITS.plan.entries;
  if (entries.length <= most || isOfItsOwn(value, path)) return inner;
  return [{ what: 'entries', found: entries.length, path: [...path, keyOf(most)] }];
}

/** Every list of a plan's value, and every object, that has more entries than there may be. */
export function longLists(plan: unknown): readonly LongList[] {
  const named = namedLists(plan);
  return named.length > 0 || !isContainer(plan) ? named : otherLists(plan, []);
}

/** Positions that cannot be used, of which one list may have so many before the rest of it is left out. */
const MOST_WRONG = 100;

/**
 * A plan's value for the schema: a list of positions ends at its hundredth that cannot be used, since every one of them is
 * several problems. Such a plan is refused in any case.
 */
export function withoutManyWrong(plan: unknown): unknown {
  return ['courses', 'zones'].reduce((value: unknown, list) => {
    const entries = entryOf(value, list);
    if (!Array.isArray(entries)) return value;
    const key = list === 'courses' ? 'line' : 'polygon';
    const kept = entries.map((one: unknown) => withPositions(one, key));
    return kept.every((one, k) => one === entries[k]) ? value : { ...(value as Entries), [list]: kept };
  }, plan);
}

function withPositions(entry: unknown, key: 'line' | 'polygon'): unknown {
  const positions = entryOf(entry, key);
  if (!Array.isArray(positions) || positions.length <= MOST_WRONG) return entry;
  let wrong = 0;
  const most = key === 'line' ? 3 : 2;
  const end = positions.findIndex((one) => !parsePosition(one, most).ok && (wrong += 1) > MOST_WRONG);
  return end < 0 ? entry : { ...(entry as Entries), [key]: positions.slice(0, end) };
}
