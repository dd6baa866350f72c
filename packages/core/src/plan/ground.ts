/** The ground that a plan names, along its courses. */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { Ground } from '../ground/ground.ts';
import { isGround } from '../ground/groundText.ts';
import { type PlanGround, planGround } from '../ground/planGround.ts';
import { type Shape, mapOf, maybe, recordOf } from '../wants.ts';
import type { Plan } from './plan.ts';

/** Maps of the ground that a plan may name, read, by the name that it uses. */
export interface GroundSources {
  readonly ground?: ReadonlyMap<string, Ground>;
}

export const isGroundSources: Shape = recordOf<GroundSources>('files', { ground: maybe(mapOf(isGround)) });

/** `undefined` where the plan names none, or what it names was not read. */
export function groundOf(
  { ground: file }: Pick<Plan, 'ground'>,
  courses: readonly IndexedCourse[],
  { ground: read }: GroundSources,
): PlanGround | undefined {
  const ground = file === undefined ? undefined : read?.get(file);
  return ground === undefined ? undefined : planGround(file!, ground, courses);
}
