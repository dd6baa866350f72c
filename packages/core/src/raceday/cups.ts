/**
 * What runners take at a station, by heat, division and kind: cups, gels and litres. Cups of a kind are
 * arrivals × take × (1 + waste); gels are ordered by `gelOrder`, which holds their margin. The rates are
 * common practice, the factors for walkers and wheels too; no source.
 */
import type { Finding } from '../finding.ts';
import { TAKE_BY_HEAT } from '../plan/defaults.ts';
import type { Division, Heat, Plan, PlanStation, Served, Supplies, TakeRates } from '../plan/plan.ts';
import { suppliesOf } from '../plan/practice.ts';
import type { RaceArrivals } from './day.ts';
import { racedayFinding } from './racedayFinding.ts';

/** Walkers take so many times the cups of runners: common practice, no source. */
export const WALK_FACTOR = 1.3;

/** What wheels take of each kind: common practice, no source. */
export const WHEELS_TAKE = 0.1;

/** The heat where a plan gives neither a level nor a temperature with steps: an assumption. */
export const ASSUMED_HEAT: Heat = 'warm';

export type Drink = 'water' | 'sportsDrink';
export const DRINKS: readonly Drink[] = ['sportsDrink', 'water'];

/** The heat level, and whence it comes: a level that is given goes before a temperature. */
export function heatOf(supplies: Supplies): { readonly heat: Heat; readonly by: 'given' | 'wbgt' | 'assumed' } {
  const { heat, wbgtC, heatSteps } = supplies;
  if (heat !== undefined) return { heat, by: 'given' };
  if (wbgtC === undefined || heatSteps === undefined) return { heat: ASSUMED_HEAT, by: 'assumed' };
  return { heat: wbgtC < heatSteps[0] ? 'cool' : wbgtC < heatSteps[1] ? 'warm' : 'hot', by: 'wbgt' };
}

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

/**
 * Pieces that each arrival of a division takes: the plan's where it says, else runners by heat, walkers' cups 1.3 ×
 * the runners' (their gels the same), wheels 0.1 of each.
 */
export function takeRates(supplies: Supplies, division: Division): Required<TakeRates> {
  const run = { ...TAKE_BY_HEAT[heatOf(supplies).heat], ...supplies.take.run };
  if (division === 'run') return run;
  const base =
    division === 'walk'
      ? { water: run.water * WALK_FACTOR, sportsDrink: run.sportsDrink * WALK_FACTOR, gel: run.gel }
      : { water: WHEELS_TAKE, sportsDrink: WHEELS_TAKE, gel: WHEELS_TAKE };
  return { ...base, ...supplies.take[division] };
}

/** Gels ordered for each arrival of a division; for wheels no more than they take. */
export const gelsOrdered = (supplies: Supplies, division: Division): number =>
  division === 'wheels' ? Math.min(supplies.gelOrder, takeRates(supplies, division).gel) : supplies.gelOrder;

/** Rounded up to whole pieces; what only the last bits of a product add is no piece. */
export const whole = (pieces: number): number => Math.max(0, Math.ceil(pieces - 1e-9 * Math.max(1, pieces)));

/** How many come of each division. */
export interface Heads {
  readonly division: Division;
  readonly count: number;
}

export const headsOf = (races: readonly RaceArrivals[]): Heads[] =>
  races.map(({ division, times }) => ({ division, count: times.length }));

/** Cups of a drink for the day, waste included, unrounded. */
export const cupsExact = (supplies: Supplies, heads: readonly Heads[], drink: Drink): number =>
  heads.reduce((sum, { division, count }) => sum + count * takeRates(supplies, division)[drink], 0) *
  (1 + supplies.waste);

/** What a station's day takes: `exact` unrounded, cups and gels in whole pieces, litres of those cups. 0 of what is not served. */
export interface Needs {
  readonly exact: { readonly water: number; readonly sportsDrink: number; readonly gel: number };
  readonly cups: { readonly water: number; readonly sportsDrink: number };
  readonly gels: number;
  readonly volume: { readonly water: number; readonly sportsDrink: number };
}

export function needsOf(supplies: Supplies, serves: readonly Served[], heads: readonly Heads[]): Needs {
  const drink = (kind: Drink): number => (serves.includes(kind) ? cupsExact(supplies, heads, kind) : 0);
  const gel = serves.includes('gel')
    ? heads.reduce((sum, { division, count }) => sum + count * gelsOrdered(supplies, division), 0)
    : 0;
  const exact = { water: drink('water'), sportsDrink: drink('sportsDrink'), gel };
  const cups = { water: whole(exact.water), sportsDrink: whole(exact.sportsDrink) };
  const litres = supplies.cup * supplies.fill;
  return {
    exact,
    cups,
    gels: whole(gel),
    volume: { water: cups.water * litres, sportsDrink: cups.sportsDrink * litres },
  };
}

/** Gels that will not reach round: fewer ordered than those who come are taken to take. */
export function gelFindings(plan: Plan, station: PlanStation, heads: readonly Heads[]): Finding[] {
  if (!station.serves.includes('gel')) return [];
  const supplies = suppliesOf(plan, station);
  const taken = heads.reduce((sum, { division, count }) => sum + count * takeRates(supplies, division).gel, 0);
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
