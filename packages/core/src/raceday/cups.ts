/**
 * What a station's day takes in all: cups, gels and litres, needed and ordered. Cups of a kind are arrivals × take ×
 * (1 + waste); what is ordered is `reserve` more. Gels are ordered by `gelOrder`, which holds their margin. The takes
 * are of `take.ts`.
 */
import type { Finding } from '../finding.ts';
import type { Division, Plan, PlanStation, Served, Supplies } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import { racedayFinding } from './racedayFinding.ts';
import { ASSUMED_HEAT, type Drink, type Flow, gelTake, heatOf, takeOf } from './take.ts';

const steps = (supplies: Supplies): readonly [number, number] | undefined =>
  supplies.heat === undefined && supplies.wbgtC !== undefined ? supplies.heatSteps : undefined;

/** What there is to report of heat, of the plan once and of each station with a heat of its own. */
export function heatFindings(plan: Plan): Finding[] {
  const own = plan.stations.flatMap((station, k) =>
    ['heat', 'wbgtC', 'heatSteps'].some((key) => Object.hasOwn(station.supplies, key))
      ? [{ supplies: suppliesOf(plan, station), path: `/stations/${k}/supplies`, station: station.id }]
      : [],
  );
  return [{ supplies: plan.supplies, path: '/supplies' }, ...own].flatMap(({ supplies, ...where }): Finding[] => {
    const turned = steps(supplies);
    if (turned !== undefined && turned[0] > turned[1]) {
      return [racedayFinding('heat-steps', { steps: turned }, { severity: 'warning', where })];
    }
    if (heatOf(supplies).by !== 'assumed') return [];
    const given = supplies.wbgtC === undefined ? {} : { wbgtC: supplies.wbgtC };
    return [racedayFinding('heat-assumed', { assumed: ASSUMED_HEAT, ...given }, { severity: 'note', where })];
  });
}

/** Gels ordered for each arrival of a division; for wheels no more than they take. */
export const gelsOrdered = (supplies: Supplies, division: Division): number =>
  division === 'wheels' ? Math.min(supplies.gelOrder, gelTake(supplies, division)) : supplies.gelOrder;

/** Rounded up to whole pieces; what only the last bits of a product add is no piece. */
export const whole = (pieces: number): number => Math.max(0, Math.ceil(pieces - 1e-9 * Math.max(1, pieces)));

/** Drinks by kind. */
type Drinks = { readonly [drink in Drink]: number };

/** What a station's day takes: `exact` unrounded, cups and gels in whole pieces, litres. 0 of what is not served. */
export interface Needs {
  readonly exact: Drinks & { readonly gel: number };
  readonly cups: Drinks;
  readonly gels: number;
  readonly volume: Drinks;
  /** With the reserve. */
  readonly ordered: { readonly cups: Drinks; readonly volume: Drinks };
}

/** How many come of a flow. */
export type Heads = Pick<Flow, 'division' | 'leg'> & { readonly count: number };

export const headsOf = (flows: readonly Flow[]): Heads[] =>
  flows.map(({ division, leg, times }) => ({ division, leg, count: times.length }));

const bothOf = (of: (drink: Drink) => number): Drinks => ({ water: of('water'), sportsDrink: of('sportsDrink') });

export function needsOf(supplies: Supplies, serves: readonly Served[], heads: readonly Heads[]): Needs {
  const takes = heads.map(({ division, leg, count }) => ({ count, take: takeOf(supplies, serves, division, leg) }));
  const sum = (of: (take: ReturnType<typeof takeOf>) => number): number =>
    takes.reduce((total, { count, take }) => total + count * of(take), 0);
  const more = 1 + supplies.reserve;
  const exact = bothOf((drink) => sum(({ cups }) => cups[drink]) * (1 + supplies.waste));
  const gel = serves.includes('gel')
    ? heads.reduce((total, { division, count }) => total + count * gelsOrdered(supplies, division), 0)
    : 0;
  const [cups, ordered] = [bothOf((drink) => whole(exact[drink])), bothOf((drink) => whole(exact[drink] * more))];
  const litres = supplies.cup * supplies.fill;
  // Bottles are filled at the tap and nothing is spilt; cups are poured with what is spilt of them.
  const taps = bothOf((drink) => sum(({ litres: into }) => into[drink]));
  const inCups = supplies.handOut === 'cups';
  return {
    exact: { ...exact, gel },
    cups,
    gels: whole(gel),
    volume: inCups ? bothOf((drink) => cups[drink] * litres) : taps,
    ordered: {
      cups: ordered,
      volume: bothOf((drink) => (inCups ? ordered[drink] * litres : taps[drink] * more)),
    },
  };
}

/** Gels that will not reach round: fewer ordered than those who come are taken to take. */
export function gelFindings(plan: Plan, station: PlanStation, flows: readonly Flow[]): Finding[] {
  if (!station.serves.includes('gel')) return [];
  const heads = headsOf(flows);
  const supplies = suppliesOf(plan, station);
  const taken = heads.reduce((sum, { division, count }) => sum + count * gelTake(supplies, division), 0);
  const { gels } = needsOf(supplies, station.serves, heads);
  const needed = whole(taken);
  if (needed <= gels) return [];
  return [
    racedayFinding(
      'gels-short',
      { ordered: gels, taken: needed, each: supplies.gelOrder },
      {
        severity: 'warning',
        where: { station: station.id, item: 'gel' },
        measured: gels,
        limit: needed,
        unit: 'gels',
      },
    ),
  ];
}
