/**
 * Look-ups by id, for every room from here on: stations, races, vehicles and days by their own id, courses by that of
 * the course inside. The `…ById` ones throw where there is no such entry, which only a programmer's error can cause
 * (ids of a plan that has been read exist); the `find…` ones answer `undefined`.
 */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { ItemKind } from '../kinds.ts';

interface Identified {
  readonly id: string;
}

const missing = (id: string, ids: readonly string[]): RangeError =>
  new RangeError(`no "${id}" among ${ids.length === 0 ? 'none' : ids.map((one) => `"${one}"`).join(', ')}`);

/** The entry with an id, if there is one. */
export const findById = <T extends Identified>(list: readonly T[], id: string): T | undefined =>
  list.find((one) => one.id === id);

/** The entry with an id; throws where there is none. */
export function byId<T extends Identified>(list: readonly T[], id: string): T {
  const found = findById(list, id);
  if (found === undefined)
    throw missing(
      id,
      list.map((one) => one.id),
    );
  return found;
}

/** The name of the entry with an id; the id itself where there is none, as for `start` and `finish` of a leg. */
export const nameById = (list: readonly (Identified & { readonly name: string })[], id: string): string =>
  findById(list, id)?.name ?? id;

/** The course with an id, if there is one. */
export const findCourse = (courses: readonly IndexedCourse[], id: string): IndexedCourse | undefined =>
  courses.find(({ course }) => course.id === id);

/** The course with an id; throws where there is none. */
export function courseById(courses: readonly IndexedCourse[], id: string): IndexedCourse {
  const found = findCourse(courses, id);
  if (found === undefined)
    throw missing(
      id,
      courses.map(({ course }) => course.id),
    );
  return found;
}

/** The lead direction of a station; `undefined` where nobody passes it. */
export const leadOf = <D extends { readonly lead: boolean }>({
  directions,
}: {
  readonly directions: readonly D[];
}): D | undefined => directions.find(({ lead }) => lead);

/** The item of a kind that a direction has, if any. */
export const itemOf = <I extends { readonly kind: ItemKind }>(
  { items }: { readonly items: readonly I[] },
  kind: ItemKind,
): I | undefined => items.find((item) => item.kind === kind);

/** What is kept for a race, such as its spacing or its quantiles, if there is anything. */
export const findByRace = <T extends { readonly race: string }>(list: readonly T[], race: string): T | undefined =>
  list.find((one) => one.race === race);
