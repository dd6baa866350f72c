/** A station with the rules that hold at it, who comes, and what they take: all that its day is worked out from. */
import type { Crew, Plan, PlanStation, Practice, Supplies } from '../plan/plan.ts';
import { crewOf, practiceOf, suppliesOf } from '../plan/practice.ts';
import { gelsOrdered, headsOf, needsOf, type Needs, whole } from './cups.ts';
import { handsFor } from './crew.ts';
import type { RaceArrivals } from './day.ts';
import { DRINKS, type Drink, type Flow, flowsOf, gelTake, takeOf } from './take.ts';
import { busiest } from './timing.ts';

export interface Site {
  readonly station: PlanStation;
  readonly supplies: Supplies;
  readonly practice: Practice;
  readonly rules: Crew;
  readonly races: readonly RaceArrivals[];
  readonly flows: readonly Flow[];
  readonly needs: Needs;
  /** Who hands out cups, or stands at the taps; who hands out gels; who cleans up. */
  readonly handOut: number;
  readonly gel: number;
  readonly clean: number;
}

/** What an arrival of a flow takes at a station. */
export const takeAt = (
  { supplies, station }: Pick<Site, 'supplies' | 'station'>,
  flow: Flow,
): ReturnType<typeof takeOf> => takeOf(supplies, station.serves, flow.division, flow.leg);

export function siteOf(plan: Plan, station: PlanStation, races: readonly RaceArrivals[]): Site {
  const [supplies, rules] = [suppliesOf(plan, station), crewOf(plan, station)];
  const flows = flowsOf(races);
  const base = { station, supplies, practice: practiceOf(plan, station), rules, races, flows };
  return { ...base, needs: needsOf(supplies, station.serves, headsOf(flows)), ...peopleOf(base) };
}

function peopleOf(
  site: Pick<Site, 'station' | 'supplies' | 'rules' | 'flows'>,
): Pick<Site, 'handOut' | 'gel' | 'clean'> {
  const { station, supplies, rules, flows } = site;
  const most = (span: number, of: (flow: Flow) => number): number => busiest(flows, span, of)?.sum ?? 0;
  const cups = (flow: Flow): number => DRINKS.reduce((sum, drink) => sum + takeAt(site, flow).cups[drink], 0);
  const gels = ({ division }: Flow): number => Math.min(gelTake(supplies, division), gelsOrdered(supplies, division));
  const drinks = station.serves.some((kind) => kind !== 'gel');
  const atTaps = handsFor(drinks ? most(60, () => 1) : 0, 60 / rules.tapTime);
  const handed = handsFor(most(60, cups) * (1 - rules.fromTables), rules.handRate);
  return {
    handOut: supplies.handOut === 'bottles' ? atTaps : handed,
    gel: station.serves.includes('gel') ? handsFor(most(60, gels), rules.gelRate) : 0,
    clean: whole(most(3600, cups) / rules.cleanPer),
  };
}

/** Cups of a drink a minute, spilt ones included, by minutes from `phase` on (seconds after midnight) or from the first arrival, if that is earlier. */
export function demandOf(site: Site, drink: Drink, phase: number): { readonly from: number; readonly cups: number[] } {
  const come = site.flows.filter(({ times }) => times.length > 0);
  if (come.length === 0) return { from: phase, cups: [] };
  const first = Math.floor((Math.min(...come.map(({ times }) => times[0]!)) - phase) / 60);
  const last = Math.floor((Math.max(...come.map(({ times }) => times.at(-1)!)) - phase) / 60);
  const cups = Array.from({ length: last - first + 1 }, () => 0);
  for (const flow of come) {
    const each = takeAt(site, flow).cups[drink] * (1 + site.supplies.waste);
    if (each === 0) continue;
    for (const time of flow.times) cups[Math.floor((time - phase) / 60) - first]! += each;
  }
  return { from: phase + first * 60, cups };
}
