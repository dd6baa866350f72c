/**
 * Where the items of a station stand on the ground, as lines that checks can hold against zones,
 * other stations and other runners; and what the position error lets a check say.
 */
import { pointAt } from '../course/locate.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import { type Item, type LaidDirection, type StationLayout, isTable } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';
import type { Ground } from './check.ts';

/** The course of that id. */
export const courseOf = ({ courses }: Ground, id: string): IndexedCourse => courseById(courses, id);

/** An item with the direction whose runners meet it. */
export interface Standing {
  readonly item: Item;
  readonly direction: LaidDirection;
}

/** Each item that stands at a station, once: the lead's all, of other directions the sign and the trash (their tables are the lead's). */
export const itemsStanding = ({ directions }: StationLayout): Standing[] =>
  directions.flatMap((direction) =>
    direction.items.filter((item) => direction.lead || !isTable(item)).map((item) => ({ item, direction })),
  );

/** Course distances of the upstream end of the first table and the downstream end of the last; `null` where there are none. */
export function tableEnds({ items }: LaidDirection): readonly [from: number, to: number] | null {
  const tables = items.filter(isTable);
  return tables.length === 0
    ? null
    : [Math.min(...tables.map(({ from }) => from)), Math.max(...tables.map(({ to }) => to))];
}

/** Most pieces that a stretch is cut into: one that long is an error of the plan, which another check tells. */
const MOST_PIECES = 1000;

/** Points of an item's stretch at its offset, at most `step` metres of course apart (up to 1,000 pieces), upstream first; what has no place is left out. */
export function linePoints({ item, direction }: Standing, ground: Ground, step: number): LonLat[] {
  const { course } = courseOf(ground, direction.course);
  const pieces = Math.min(Math.max(Math.ceil((item.to - item.from) / step), 1), MOST_PIECES);
  const [upstream, downstream] = item.at;
  const between = Array.from(
    { length: pieces - 1 },
    (_, k) => pointAt(course, item.from + ((item.to - item.from) * (k + 1)) / pieces, item.offset)?.at ?? null,
  );
  const points = item.from === item.to ? [upstream] : [upstream, ...between, downstream];
  return points.filter((point) => point !== null);
}

/** Half of a box or a sign along the road, metres. */
const HALF_BOX = 0.5;

/** What stands at an item, by course distance: the hand-out line is people, a trash drop is its boxes. */
export function standsAlong({ kind, from, to, boxes }: Item): (readonly [from: number, to: number])[] {
  if (kind === 'handOut') return [];
  if (kind === 'sign') return [[from - HALF_BOX, from + HALF_BOX]];
  if (kind === 'trash') return (boxes ?? []).map(({ measure }) => [measure - HALF_BOX, measure + HALF_BOX]);
  return [[from, to]];
}
