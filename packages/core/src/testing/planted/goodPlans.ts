/** The good plans by name: nothing is wrong with any of them. Not part of the package. */
import type { GoodPlan, Lines } from './build.ts';
import { laps } from './laps.ts';
import { loop } from './loop.ts';
import { outBack } from './outBack.ts';
import { point } from './point.ts';
import { shared } from './shared.ts';
import { trail } from './trail.ts';

const MAKERS = { loop, point, outBack, shared, laps, trail } as const;

export type PlanName = keyof typeof MAKERS;
export const PLAN_NAMES = Object.keys(MAKERS) as readonly PlanName[];

const made = new Map<string, GoodPlan>();

/** A good plan, the same each time: take a copy before changing it. */
export function goodPlan(name: PlanName, lines: Lines = 'drawn'): GoodPlan {
  const key = `${name} ${lines}`;
  if (!made.has(key)) made.set(key, MAKERS[name](lines));
  return made.get(key)!;
}
