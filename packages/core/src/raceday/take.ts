/**
 * What one arrival takes. Litres = rate × time since that race's last drink (the start before the first); the rate by
 * heat (see `DRINK_RATE`). Litres become cups of `cup` × `fill`, at least 0.4 and at most 4 in all: assumptions. Where
 * both drinks are served, water's share is two thirds: common practice, no source. Into bottles litres are unbounded.
 */
import { DRINK_RATE, GEL_TAKE } from '../plan/defaults.ts';
import type { Division, Heat, Served, Supplies } from '../plan/plan.ts';
import type { Seconds } from '../units.ts';
import type { RaceArrivals } from './day.ts';

/** Walkers take so many times what runners take in the same time: common practice, no source. */
export const WALK_FACTOR = 1.3;

/** Cups and gels that wheelchair racers take of each kind: common practice, no source. */
export const WHEELS_TAKE = 0.1;

/** Fewest and most cups that a runner takes at a station: assumptions. */
export const CUPS_LEAST = 0.4;
export const CUPS_MOST = 4;

/** Since the last drink, seconds, where arrivals do not say: an assumption. */
export const ASSUMED_LEG: Seconds = 20 * 60;

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

/** Litres that a runner drinks in an hour: the plan's own rate, else that of the heat. */
export const drinkRate = (supplies: Supplies): number => supplies.drinkRate ?? DRINK_RATE[heatOf(supplies).heat];

/** Arrivals that take the same: one race at one served pass, or at all of them where they are not told apart. */
export interface Flow {
  readonly race: string;
  readonly division: Division;
  /** Ascending, seconds after midnight. */
  readonly times: Float64Array;
  /** Mean time since the last drink, seconds. */
  readonly leg: Seconds;
}

export const flowsOf = (races: readonly RaceArrivals[]): Flow[] =>
  races.flatMap(({ race, division, times, byPass }) =>
    (byPass ?? [{ times, leg: ASSUMED_LEG }]).map((pass) => ({ race, division, times: pass.times, leg: pass.leg })),
  );

/** What one arrival takes: cups of each drink and gels; litres of each drink. 0 of what is not served. */
export interface Take {
  readonly cups: { readonly [drink in Drink]: number };
  readonly litres: { readonly [drink in Drink]: number };
  readonly gels: number;
}

const sharesOf = ({ waterShare }: Supplies, serves: readonly Served[]): { readonly [drink in Drink]: number } => {
  const [water, sports] = [serves.includes('water'), serves.includes('sportsDrink')];
  const part = water && sports ? waterShare : Number(water);
  return { water: part, sportsDrink: sports ? 1 - part : 0 };
};

/** Litres of all drinks that an arrival drinks, from the time since the last drink; wheels apart. */
const thirst = (supplies: Supplies, division: Division, leg: Seconds): number =>
  drinkRate(supplies) * (leg / 3600) * (division === 'walk' ? WALK_FACTOR : 1);

/** Gels that an arrival of a division takes where there are some. */
export const gelTake = ({ take }: Supplies, division: Division): number =>
  take[division]?.gel ?? (division === 'wheels' ? WHEELS_TAKE : (take.run?.gel ?? GEL_TAKE));

/** What an arrival of a division takes, `leg` seconds after the last drink. The plan's own `take` rules, drink by drink. */
export function takeOf(supplies: Supplies, serves: readonly Served[], division: Division, leg: Seconds): Take {
  const own = supplies.take[division] ?? {};
  const run = supplies.take.run ?? {};
  const shares = sharesOf(supplies, serves);
  const cupLitres = supplies.cup * supplies.fill;
  const all = thirst(supplies, division, leg);
  const walk = division === 'walk' ? WALK_FACTOR : 1;
  const inCups = Math.min(Math.max(all / walk / cupLitres, CUPS_LEAST), CUPS_MOST) * walk;
  const cupsOf = (drink: Drink): number => {
    if (!serves.includes(drink)) return 0;
    const given = own[drink] ?? (division !== 'wheels' && run[drink] !== undefined ? run[drink] * walk : undefined);
    return given ?? (division === 'wheels' ? WHEELS_TAKE : inCups * shares[drink]);
  };
  const cups = { water: cupsOf('water'), sportsDrink: cupsOf('sportsDrink') };
  const gels = serves.includes('gel') ? gelTake(supplies, division) : 0;
  if (supplies.handOut === 'cups')
    return { cups, gels, litres: { water: cups.water * cupLitres, sportsDrink: cups.sportsDrink * cupLitres } };
  const intoBottle = (drink: Drink): number =>
    own[drink] !== undefined || run[drink] !== undefined || division === 'wheels'
      ? cups[drink] * cupLitres
      : all * shares[drink];
  return {
    cups: { water: 0, sportsDrink: 0 },
    gels,
    litres: { water: intoBottle('water'), sportsDrink: intoBottle('sportsDrink') },
  };
}
