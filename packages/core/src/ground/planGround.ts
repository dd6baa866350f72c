/** The ground of a plan: its map, and what that is along each of its courses, made once and kept through all edits of stations. */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { type Shape, aText, anything, listOf, mapOf, recordOf, remembered } from '../wants.ts';
import type { GroundAlong } from './along.ts';
import { type Buildings, indexBuildings, isBuildings } from './buildings.ts';
import type { Ground } from './ground.ts';
import { groundAlong } from './groundAlong.ts';
import { isGround } from './groundText.ts';

/** The map that a plan names, held against its courses. */
export interface PlanGround {
  /** As the plan names it. */
  readonly file: string;
  readonly ground: Ground;
  /** By id of the course. */
  readonly along: ReadonlyMap<string, GroundAlong>;
  readonly buildings: Buildings;
}

export const planGround = (file: string, ground: Ground, courses: readonly IndexedCourse[]): PlanGround => ({
  file,
  ground,
  along: new Map(courses.map((indexed) => [indexed.course.id, groundAlong(indexed, ground)])),
  buildings: indexBuildings(ground),
});

const isAlong: Shape = recordOf<GroundAlong>('what the ground is along a course', {
  streets: listOf(anything),
  junctions: listOf(anything),
  features: listOf(anything),
  keepClear: listOf(anything),
  widths: listOf(anything),
  surfaces: listOf(anything),
  offMap: listOf(anything),
});

export const isPlanGround: Shape = remembered(
  recordOf<PlanGround>('the ground that groundStage gives', {
    file: aText,
    ground: isGround,
    along: mapOf(isAlong),
    buildings: isBuildings,
  }),
);
