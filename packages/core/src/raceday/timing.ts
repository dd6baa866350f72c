/**
 * Sums over arrival times: quantiles, clock minutes, the busiest stretch of time. Times in seconds after
 * midnight. Quantiles: definition 5 of R. J. Hyndman, Y. Fan, Sample quantiles in statistical packages,
 * The American Statistician 50 (1996), the same (i − ½)/N by which a field is drawn.
 */
import type { Quantiles, RaceArrivals } from './day.ts';
import { mergeSorted } from './sorting.ts';

/** All times of several races, ascending. Where only one race has times the array is that race's own, so callers only read it. */
export const mergedTimes = (races: readonly Pick<RaceArrivals, 'times'>[]): Float64Array =>
  mergeSorted(races.map(({ times }) => times));

/** The value at a share from 0 to 1 of at least one ascending value: linear between, the first and the last beyond. */
export function quantile(sorted: Float64Array, share: number): number {
  const place = Math.min(Math.max(sorted.length * share - 0.5, 0), sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  return low + (place - below) * ((sorted[below + 1] ?? low) - low);
}

/** First, 10, 50, 90 % and last of ascending times, seconds; `null` of none. */
export function quantilesOf(sorted: Float64Array): Quantiles | null {
  if (sorted.length === 0) return null;
  const at = (share: number): number => quantile(sorted, share);
  return { first: sorted[0]!, p10: at(0.1), p50: at(0.5), p90: at(0.9), last: sorted.at(-1)! };
}

/** Every clock minute from the first arrival to the last, with the arrivals of each race in it. */
export function perMinuteOf(
  races: readonly RaceArrivals[],
  phase: number = 0,
): [minute: number, counts: Record<string, number>][] {
  const come = races.filter(({ times }) => times.length > 0);
  if (come.length === 0) return [];
  const from = Math.floor((Math.min(...come.map(({ times }) => times[0]!)) - phase) / 60);
  const to = Math.floor((Math.max(...come.map(({ times }) => times.at(-1)!)) - phase) / 60);
  const counted = races.map(({ times }) => countsByMinute(times, from, to, phase));
  return Array.from({ length: to - from + 1 }, (_, k): [number, Record<string, number>] => [
    (from + k) * 60 + phase,
    Object.fromEntries(races.map(({ race }, r) => [race, counted[r]![k]!])),
  ]);
}

function countsByMinute(times: Float64Array, from: number, to: number, phase: number): Uint32Array {
  const counts = new Uint32Array(to - from + 1);
  for (let i = 0; i < times.length; i++) counts[Math.floor((times[i]! - phase) / 60) - from]!++;
  return counts;
}

/**
 * The largest sum of weights within `span` seconds (the end excluded), and when that begins; a race's weight is what
 * each arrival counts. `null` where nobody arrives.
 */
export function busiest<T extends Pick<RaceArrivals, 'times'>>(
  races: readonly T[],
  span: number,
  weightOf: (race: T) => number,
): { readonly sum: number; readonly at: number } | null {
  const filled = races.filter(({ times }) => times.length > 0);
  if (filled.length === 0) return null;
  const [only] = filled;
  if (filled.length === 1) {
    const { count, at } = busiestOf(only!.times, span);
    return { sum: count * weightOf(only!), at };
  }
  const weights = filled.map(weightOf);
  return filled.length <= FEW_RACES ? busiestTogether(filled, span, weights) : busiestOfMany(filled, span, weights);
}

/** Up to so many races are counted one by one at each arrival; of more the sum is carried along. */
const FEW_RACES = 8;
/** Share of a sum by which another must pass it, beyond what carrying it along may be off. */
const DRIFT = 1e-9;

/** The most of ascending times within `span` seconds, and when that begins. */
function busiestOf(times: Float64Array, span: number): { readonly count: number; readonly at: number } {
  let end = 0;
  let count = 0;
  let at = 0;
  for (let i = 0; i < times.length; i++) {
    const until = times[i]! + span;
    while (end < times.length && times[end]! < until) end++;
    if (end - i > count) {
      count = end - i;
      at = times[i]!;
    }
  }
  return { count, at };
}

function busiestTogether(
  races: readonly Pick<RaceArrivals, 'times'>[],
  span: number,
  weights: readonly number[],
): { readonly sum: number; readonly at: number } {
  const starts = new Uint32Array(races.length);
  const ends = new Uint32Array(races.length);
  let best = { sum: -1, at: 0 };
  for (const at of mergedTimes(races)) {
    // Counted anew from the two ends of the window: running sums of weights would drift.
    let sum = 0;
    for (let k = 0; k < races.length; k++) {
      const { times } = races[k]!;
      while (starts[k]! < times.length && times[starts[k]!]! < at) starts[k]!++;
      while (ends[k]! < times.length && times[ends[k]!]! < at + span) ends[k]!++;
      sum += (ends[k]! - starts[k]!) * weights[k]!;
    }
    if (sum > best.sum) best = { sum, at };
  }
  return best;
}

/** Ascending times, each with the race that it is of. */
interface Owned {
  readonly times: Float64Array;
  readonly race: Uint32Array;
}

/** The arrivals of some races in one order, with the race of each; of equal times the earlier race's first. */
function inOrder(races: readonly Pick<RaceArrivals, 'times'>[], first: number = 0): Owned {
  if (races.length === 1) {
    const { times } = races[0]!;
    return { times, race: new Uint32Array(times.length).fill(first) };
  }
  // By halves: no time is moved more often than the number of races can be halved.
  const half = races.length >> 1;
  return mergeOwned(inOrder(races.slice(0, half), first), inOrder(races.slice(half), first + half));
}

function mergeOwned(a: Owned, b: Owned): Owned {
  const count = a.times.length + b.times.length;
  const times = new Float64Array(count);
  const race = new Uint32Array(count);
  let [i, j] = [0, 0];
  for (let k = 0; k < count; k++) {
    const fromA = j >= b.times.length || (i < a.times.length && a.times[i]! <= b.times[j]!);
    times[k] = fromA ? a.times[i]! : b.times[j]!;
    race[k] = fromA ? a.race[i++]! : b.race[j++]!;
  }
  return { times, race };
}

/** As `busiestTogether`, in time that does not grow with the number of races at each arrival. */
function busiestOfMany(
  races: readonly Pick<RaceArrivals, 'times'>[],
  span: number,
  weights: readonly number[],
): { readonly sum: number; readonly at: number } {
  const { times, race } = inOrder(races);
  const counts = new Uint32Array(races.length);
  let best = { sum: -1, at: 0 };
  let carried = 0;
  let end = 0;
  for (let i = 0; i < times.length; i++) {
    const at = times[i]!;
    for (; end < times.length && times[end]! < at + span; end++) {
      counts[race[end]!]!++;
      carried += weights[race[end]!]!;
    }
    if (carried > best.sum * (1 + DRIFT)) {
      // Counted anew, as the few are: the sum that is carried along drifts.
      carried = counts.reduce((sum, count, k) => sum + count * weights[k]!, 0);
      if (carried > best.sum) best = { sum: carried, at };
    }
    counts[race[i]!]!--;
    carried -= weights[race[i]!]!;
  }
  return best;
}
