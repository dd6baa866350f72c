/** The ground of a plan: its map, and what that is along each of its courses, made once and kept through all edits of stations. */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { type Shape, aText, anything, listOf, mapOf, orNull, recordOf, remembered } from '../wants.ts';
import type { GroundAlong } from './along.ts';
import type { Ground } from './ground.ts';
import { groundAlong } from './match.ts';

/** The map that a plan names, held against its courses. */
export interface PlanGround {
  /** As the plan names it. */
  readonly file: string;
  readonly ground: Ground;
  /** By id of the course. */
  readonly along: ReadonlyMap<string, GroundAlong>;
}

export const planGround = (file: string, ground: Ground, courses: readonly IndexedCourse[]): PlanGround => ({
  file,
  ground,
  along: new Map(courses.map((indexed) => [indexed.course.id, groundAlong(ground, indexed)])),
});

/** A ground as its readers give it; what its lists hold is not gone through. */
export const isGround: Shape = remembered(
  recordOf<Ground>('the ground that readGround gives', {
    source: recordOf('what the map is', { date: orNull(aText), credit: aText, licence: orNull(aText) }),
    ways: listOf(anything),
    areas: listOf(anything),
    points: listOf(anything),
  }),
);

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
  recordOf<PlanGround>('the ground that groundStage gives', { file: aText, ground: isGround, along: mapOf(isAlong) }),
);
