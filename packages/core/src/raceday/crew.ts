/**
 * How many volunteers a station takes. Arrivals within a minute scatter about like a Poisson count, whose standard
 * deviation is the root of its mean, so the busiest minute is taken two of them above what is reckoned. Rates are
 * assumptions, chosen so that crews come out as those of races that are told of (see `crewSizes.test.ts`).
 */
import type { Crew } from '../plan/plan.ts';
import { whole } from './cups.ts';
import type { DayCrew } from './day.ts';

/** Persons who hand out a peak of so many pieces a minute, each `rate` a minute: (peak + 2√peak) ÷ rate, rounded up. */
export const handsFor = (peak: number, rate: number): number => whole((peak + 2 * Math.sqrt(peak)) / rate);

/** Persons by what they do. */
export type CrewParts = Pick<DayCrew, 'handOut' | 'pour' | 'gel' | 'clean'>;

/** Whom a station takes at a time for `duration` seconds; `total` is at least the plan's minimum, so it may be more than the sum of the parts. */
export function dayCrew(rules: Crew, parts: CrewParts, duration: number): DayCrew {
  const captain = 1;
  const sum = parts.handOut + parts.pour + parts.gel + parts.clean + captain;
  return {
    ...parts,
    captain,
    total: Math.max(rules.minimum, sum),
    hours: duration / 3600,
    shifts: Math.max(1, whole(duration / rules.longest)),
  };
}

/** Nobody: a station that no one passes. */
export const NO_CREW: DayCrew = { handOut: 0, pour: 0, gel: 0, clean: 0, captain: 0, total: 0, hours: 0, shifts: 0 };
