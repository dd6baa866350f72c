/**
 * How many volunteers a station takes. Arrivals within a minute scatter about like a Poisson count, whose standard
 * deviation is the root of its mean, so the busiest minute is taken two of them above what is reckoned. Rates are
 * common practice, no source.
 */
import type { Crew } from '../plan/plan.ts';
import { whole } from './cups.ts';
import type { DayCrew } from './day.ts';

/** What the crew depends on: pieces in the busiest sliding minute and hour. */
export interface CrewCase {
  readonly cupsPeak: number;
  readonly gelsPeak: number;
  /** Cups in the busiest sliding hour: all of them reach the ground. */
  readonly cupsHour: number;
  /** From crew on the ground to release, seconds. */
  readonly duration: number;
}

/** Persons who hand out a peak of so many pieces a minute, each `rate` a minute: (peak + 2√peak) ÷ rate, rounded up. */
export const handsFor = (peak: number, rate: number): number => whole((peak + 2 * Math.sqrt(peak)) / rate);

/** Whom a station takes at a time; `total` is at least the plan's minimum, so it may be more than the sum of the parts. */
export function dayCrew(rules: Crew, { cupsPeak, gelsPeak, cupsHour, duration }: CrewCase): DayCrew {
  const parts = {
    handOut: handsFor(cupsPeak, rules.handRate),
    pour: cupsPeak > 0 ? rules.pourers : 0,
    gel: handsFor(gelsPeak, rules.gelRate),
    clean: whole(cupsHour / rules.cleanPer),
    captain: 1,
  };
  const sum = parts.handOut + parts.pour + parts.gel + parts.clean + parts.captain;
  return {
    ...parts,
    total: Math.max(rules.minimum, sum),
    hours: duration / 3600,
    shifts: Math.max(1, whole(duration / rules.longest)),
  };
}

/** Nobody: a station that no one passes. */
export const NO_CREW: DayCrew = { handOut: 0, pour: 0, gel: 0, clean: 0, captain: 0, total: 0, hours: 0, shifts: 0 };
