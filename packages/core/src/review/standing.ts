/**
 * Where the items of a station stand on the ground, as lines that checks can hold against zones,
 * other stations and other runners; and what the position error lets a check say.
 */
import type { Course } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { sigmaOf } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { normalCdf } from '../geodesy/normal.ts';
import { type Item, type LaidDirection, type StationLayout, isTable } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';
import type { Practice } from '../plan/plan.ts';
import type { Ground } from './check.ts';

/** Directions that differ by more than this, in degrees, run against each other. */
const AGAINST = 120;

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

/** Whether two azimuths in degrees are those of runners who come against each other. */
export const runsAgainst = (a: number, b: number): boolean => azimuthDifference(a, b) > AGAINST;

/** Whether a distance in metres from a limit tells, at the practice's confidence, on which side of it a place lies. */
export function isSure(distance: number, practice: Practice): boolean {
  const sigma = sigmaOf(practice);
  return sigma === 0 || normalCdf(Math.abs(distance) / sigma) >= practice.sideConfidence;
}

/** The same for the distance between the lines of two courses: recorded ones err by `courseR95` each, those drawn on purpose are taken as they are. */
export function linesTell(distance: number, one: Course, other: Course, practice: Practice): boolean {
  const r95 = (course: Course): number => (course.drawn === 'recorded' ? practice.courseR95 : 0);
  return isSure(distance, { ...practice, pinR95: r95(one), courseR95: r95(other) });
}
