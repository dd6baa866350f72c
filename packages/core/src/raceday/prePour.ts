/**
 * Cups that stand poured before the first runner. Mass curve (W. Rippl, The capacity of storage-reservoirs for
 * water supply, Minutes of Proceedings ICE 71, 1883, of draught and supply): the stock is the largest excess of
 * running demand over what the pourers have poured. Demand comes before pour within a minute, so the stock holds
 * for any order within it. The floor's shares and the safety are common practice, the line between an assumption.
 */
import type { PrePour } from './day.ts';
import { whole } from './cups.ts';
import { finite, listOf, notNegative, want } from '../wants.ts';

/** Seconds from the 10 % to the 90 % arrival: bunched up to the first, spread from the second on. Common practice. */
export const BUNCHED: number = 40 * 60;
export const SPREAD: number = 90 * 60;

/** Share of the day's cups: `bunched` up to 40 min between the 10 and 90 % arrivals, `spread` from 90 min, linear between. */
export function floorShare([bunched, spread]: readonly [number, number], seconds: number): number {
  const part = Math.min(Math.max((seconds - BUNCHED) / (SPREAD - BUNCHED), 0), 1);
  return bunched + part * (spread - bunched);
}

/**
 * Fewest whole cups with which the tables never run dry: demand in cups a minute, minute by minute; `pour` cups a
 * minute from minute `from` on, after that minute's demand. 0 without demand.
 * @example
 * ```ts
 * import { massCurve } from '@halfcup/core/raceday';
 *
 * massCurve([0, 100, 300, 300, 50], 120); // → 340
 * ```
 */
export function massCurve(demand: readonly number[], pour: number, from: number = 0): number {
  want('massCurve', 'demand', listOf(notNegative), demand);
  want('massCurve', 'pour', notNegative, pour);
  want('massCurve', 'from', finite, from);
  let running = 0;
  let stock = 0;
  demand.forEach((cups, k) => {
    running += cups;
    stock = Math.max(stock, running - pour * Math.max(0, k - from));
  });
  return whole(stock);
}

/** The first minute whose demand finds too few cups, and how many are missing then; the tables hold at most `room`. */
export function firstDry(
  demand: readonly number[],
  pour: number,
  stock: number,
  room: number,
  from: number = 0,
): { readonly minute: number; readonly short: number } | null {
  let level = stock;
  for (let k = 0; k < demand.length; k++) {
    level -= demand[k]!;
    if (level < -1e-6) return { minute: k, short: whole(-level) };
    if (k >= from) level = Math.min(room, level + pour);
  }
  return null;
}

/**
 * Fewest pourers, each of `rate` cups a minute, with whom a stock lasts; where the first minutes alone take more than
 * the stock, as many as pour the busiest minute's cups within it.
 */
export function fewestPourers(demand: readonly number[], rate: number, stock: number, from: number = 0): number {
  const most = Math.ceil(Math.max(0, ...demand) / rate);
  let [low, high] = [0, most];
  if (massCurve(demand, most * rate, from) > stock) return most;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (massCurve(demand, middle * rate, from) <= stock) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** What the stock of one drink depends on. */
export interface PrePourCase {
  /** Cups a minute, by minutes counted from the first arrival on foot; those before it are of wheels. */
  readonly demand: readonly number[];
  /** The minute in `demand` from which the pourers pour. */
  readonly from: number;
  /** p90 − p10 of those who come on foot, seconds. */
  readonly spread: number;
  /** The day's cups of this drink. */
  readonly cups: number;
  /** Tables as the plan says, or `null`: as many as hold the stock, and `atLeast`. */
  readonly fixed: number | null;
  readonly atLeast: number;
  readonly cupsPerLayer: number;
  readonly layers: number;
  readonly floor: readonly [number, number];
  readonly safety: number;
  /** Cups a minute that the pourers pour of this drink, and one person's. */
  readonly pour: number;
  readonly rate: number;
}

/** Cups of the pre-pour before the tables' room is looked at: the larger of curve × safety and floor, never more than the day's. */
const wanted = (one: PrePourCase, curve: number, floor: number): number =>
  Math.min(one.cups, Math.max(whole(curve * one.safety), floor));

/** The stock of one drink, its tables and layers; capped by the room where the plan fixes the tables. */
export function prePourOf(one: PrePourCase): { readonly prePour: PrePour; readonly wanted: number } {
  const curve = massCurve(one.demand, one.pour, one.from);
  const floor = whole(one.cups * floorShare(one.floor, one.spread));
  const want = wanted(one, curve, floor);
  const perTable = one.cupsPerLayer * one.layers;
  const tables = one.fixed ?? Math.max(one.atLeast, Math.ceil(want / perTable));
  const room = one.fixed === null ? null : tables * perTable;
  const cups = Math.min(want, room ?? want);
  const layers = tables === 0 ? 0 : Math.ceil(cups / (tables * one.cupsPerLayer));
  // With so many, what the floor or the room puts up is enough, and the curve asks for no more.
  const pourers = fewestPourers(one.demand, one.rate, Math.floor(Math.min(cups, floor) / one.safety + 1e-9), one.from);
  return {
    prePour: {
      cups,
      share: one.cups === 0 ? 0 : cups / one.cups,
      massCurve: curve,
      floor,
      room,
      tables,
      layers,
      pourers,
    },
    wanted: want,
  };
}

/** A number with a comma between thousands. */
export const thousands = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/gu, ',');

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** As it is told on the ground: "3 tables × 3 layers = 1,800 cups", the layers that hold the stock filled. */
export const prePourTold = ({ tables, layers }: Pick<PrePour, 'tables' | 'layers'>, cupsPerLayer: number): string =>
  `${counted(tables, 'table')} × ${counted(layers, 'layer')} = ${thousands(tables * layers * cupsPerLayer)} cups`;
