/** Which role cards a station has: one a role, filled up to whole pages of two. */
import type { Plan } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import type { StationLayout } from '../layout/layout.ts';
import { servedOn } from '../layout/stretches.ts';

/** What one person at a station does, in the order of the day. */
export type CardRole = 'setUp' | 'cups' | 'gel' | 'refill' | 'taps' | 'clean';

/** The roles of a station: hands for cups only where cups are handed out, for gel only where gel is, taps instead of pouring where runners fill their bottles. */
export function rolesOf(plan: Plan, { station }: Pick<StationLayout, 'station'>): readonly CardRole[] {
  const served = servedOn(station);
  const drinks = served.some((kind) => kind !== 'gel');
  const bottles = suppliesOf(plan, station).handOut === 'bottles';
  const gel: readonly CardRole[] = served.includes('gel') ? ['gel'] : [];
  if (!drinks) return ['setUp', ...gel, 'clean'];
  return bottles ? ['setUp', ...gel, 'taps', 'clean'] : ['setUp', 'cups', ...gel, 'refill', 'clean'];
}

/** The roles in the order of the cards, an even number: the last half page has another card of whoever hands out, of whom a station needs most. */
export function cardsOf(plan: Plan, station: Pick<StationLayout, 'station'>): readonly CardRole[] {
  const roles = rolesOf(plan, station);
  if (roles.length % 2 === 0) return roles;
  const most = (['cups', 'taps', 'gel'] as const).find((role) => roles.includes(role)) ?? 'setUp';
  const at = roles.indexOf(most);
  return [...roles.slice(0, at + 1), most, ...roles.slice(at + 1)];
}
