/**
 * Cups that stand poured before the first runner. Mass curve (W. Rippl, The capacity of storage-reservoirs for
 * water supply, Minutes of Proceedings ICE 71, 1883, of draught and supply): the stock is the largest excess of
 * running demand over what the pourers have poured. Demand comes before pour within a minute, so the stock holds
 * for any order within it. The floor's shares and the safety are common practice, the line between an assumption.
 */
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
 * Most cups that must stand on the tables at once: the largest excess of demand over pour in any run of minutes, as what
 * is poured while the tables are full cannot be kept for later. At least `massCurve`.
 */
export function largestStock(demand: readonly number[], pour: number, from: number = 0): number {
  let running = 0;
  let stock = 0;
  demand.forEach((cups, k) => {
    running = Math.max(0, running - (k > from ? pour : 0)) + cups;
    stock = Math.max(stock, running);
  });
  return whole(stock);
}

/** A number with a comma between thousands. */
export const thousands = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/gu, ',');
