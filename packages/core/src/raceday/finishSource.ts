/** From what a plan says of finish times to the times of so many starters, by rank, and how each of them slows where splits tell it. */
import type { Finding } from '../finding.ts';
import type { FinishTimes, PlanRace } from '../plan/plan.ts';
import type { Metres, Seconds } from '../units.ts';
import { type Shape, aText, finite, listOf, mapOf, want } from '../wants.ts';
import type { FittedField } from './day.ts';
import { listAt, lognormalAt, timesByRank } from './finishTimes.ts';
import type { Hills } from './hills.ts';
import { monotoneCurve } from './monotone.ts';
import { type PastTimes, isPastTimes } from './results.ts';
import { type FittedSlowing, fittedSlowing } from './splits.ts';

/** Past results that the plan names, by `resultsKey`: finish times in seconds, or what `readResults` gives, with splits. */
export type PastResults = ReadonlyMap<string, readonly Seconds[] | PastTimes>;

export const isPastResults: Shape = mapOf((value) =>
  Array.isArray(value) ? listOf(finite)(value) : isPastTimes(value),
);

/**
 * Key of past results in {@link PastResults}: one file may hold the times of several races, each in its column.
 * @example
 * ```ts
 * import { fieldOf, readResults, resultsKey } from '@halfcup/core/raceday';
 *
 * const race = { id: 'run', name: 'Pier run', course: 'pier', division: 'run', waves: [{ time: 8 * 3600, entrants: 10 }], finish: { csv: 'past.csv', column: 'time' }, show: 1, late: 'out', gradient: false } as const;
 * const past = readResults('name,time\nA,40:00\nB,1:00:00\n', 'time', 'past.csv');
 * if (!past.ok) throw new Error(past.findings[0]?.message);
 * const field = fieldOf(race, 10_000, new Map([[resultsKey('past.csv', 'time'), past.value]]));
 * field.ok && field.value.finish.length; // → 10
 * ```
 */
export function resultsKey(csv: string, column: string): string {
  want('resultsKey', 'csv', aText, csv);
  want('resultsKey', 'column', aText, column);
  return `${csv}\n${column}`;
}

type FromFile = Extract<FinishTimes, { csv: string }>;

const found = (results: PastResults, { csv, column }: FromFile): readonly Seconds[] | PastTimes =>
  results.get(resultsKey(csv, column)) ?? [];

/** Times of the results that a plan names; none where they are not among `results`. */
export function timesOf(results: PastResults, finish: FromFile): readonly Seconds[] {
  const past = found(results, finish);
  return 'times' in past ? past.times : past;
}

/** Columns by rank, the fastest first. `slow`: `NaN` where no splits tell it. */
export interface Ranked {
  readonly finish: Float64Array;
  readonly slow: Float64Array;
}

/** What a race's finish times are drawn from. */
export interface FinishSources {
  readonly ranked: (finish: FinishTimes, count: number) => Ranked;
  readonly fitted: readonly FittedField[];
  readonly findings: readonly Finding[];
}

/** The sources of a race on a course of `length` metres; splits are fitted once a source, and not where the plan says how runners slow. */
export function finishSources(
  race: PlanRace,
  length: Metres,
  results: PastResults,
  hills: Hills | null,
): FinishSources {
  const fits = new Map<string, FittedSlowing>();
  const fitted: FittedField[] = [];
  for (const finish of race.slow === undefined ? [race.finish, ...race.waves.map((wave) => wave.finish)] : []) {
    if (finish === undefined || !('csv' in finish)) continue;
    const key = resultsKey(finish.csv, finish.column);
    const past = found(results, finish);
    if (!('splits' in past) || fits.has(key)) continue;
    const fit = fittedSlowing(past, length, hills, { race: race.id, file: finish.csv });
    fits.set(key, fit);
    if (fit.runners > 0) fitted.push({ race: race.id, csv: finish.csv, splits: fit.columns, runners: fit.runners });
  }
  const ranked = (finish: FinishTimes, count: number): Ranked => {
    const slow = 'csv' in finish ? (fits.get(resultsKey(finish.csv, finish.column))?.slow ?? []) : [];
    return {
      finish: timesByRank(count, quantileOf(finish, results)),
      slow: timesByRank(count, (share) => slow[Math.min(Math.floor(share * slow.length), slow.length - 1)] ?? NaN),
    };
  };
  return { ranked, fitted, findings: [...fits.values()].flatMap(({ findings }) => findings) };
}

function quantileOf(finish: FinishTimes, results: PastResults): (quantile: number) => number {
  if ('median' in finish) return lognormalAt(finish.median, finish.spread);
  if ('times' in finish) return listAt(finish.times);
  if ('csv' in finish) return listAt(timesOf(results, finish));
  return monotoneCurve(
    finish.quantiles.map(([share]) => share),
    finish.quantiles.map(([, seconds]) => seconds),
  );
}
