/**
 * Sums over arrival times: quantiles, clock minutes, the busiest stretch of time. Times in seconds after
 * midnight. Quantiles: definition 5 of R. J. Hyndman, Y. Fan, Sample quantiles in statistical packages,
 * The American Statistician 50 (1996), the same (i − ½)/N by which a field is drawn.
 */
import type { Quantiles, RaceArrivals } from './day.ts';

/** All times of several races, ascending. */
export function mergedTimes(races: readonly RaceArrivals[]): Float64Array {
  const all = new Float64Array(races.reduce((sum, race) => sum + race.times.length, 0));
  let next = 0;
  for (const race of races) {
    all.set(race.times, next);
    next += race.times.length;
  }
  return all.sort();
}

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
export function perMinuteOf(races: readonly RaceArrivals[]): [minute: number, counts: Record<string, number>][] {
  const come = races.filter(({ times }) => times.length > 0);
  if (come.length === 0) return [];
  const from = Math.floor(Math.min(...come.map(({ times }) => times[0]!)) / 60);
  const to = Math.floor(Math.max(...come.map(({ times }) => times.at(-1)!)) / 60);
  const minutes = Array.from({ length: to - from + 1 }, (_, k): [number, Record<string, number>] => [(from + k) * 60, Object.fromEntries(races.map(({ race }) => [race, 0]))]);
  for (const { race, times } of come) {
    for (const time of times) {
      const counts = minutes[Math.floor(time / 60) - from]![1];
      counts[race] = (counts[race] ?? 0) + 1;
    }
  }
  return minutes;
}

/**
 * The largest sum of weights within `span` seconds (the end excluded), and when that begins; a race's weight is what
 * each arrival counts. `null` where nobody arrives.
 */
export function busiest(races: readonly RaceArrivals[], span: number, weightOf: (race: RaceArrivals) => number): { readonly sum: number; readonly at: number } | null {
  const times = mergedTimes(races);
  if (times.length === 0) return null;
  const starts = races.map(() => 0);
  const ends = races.map(() => 0);
  const weights = races.map(weightOf);
  let best = { sum: -1, at: 0 };
  for (const at of times) {
    // Counted anew from the two ends of the window: running sums of weights would drift.
    let sum = 0;
    races.forEach((race, k) => {
      while (starts[k]! < race.times.length && race.times[starts[k]!]! < at) starts[k] = starts[k]! + 1;
      while (ends[k]! < race.times.length && race.times[ends[k]!]! < at + span) ends[k] = ends[k]! + 1;
      sum += (ends[k]! - starts[k]!) * weights[k]!;
    });
    if (sum > best.sum) best = { sum, at };
  }
  return best;
}
