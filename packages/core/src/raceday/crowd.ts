/** How many runners a stretch of road holds at once, over all races that run on it, and when that is most. */
import type { Metres, Seconds } from '../units.ts';
import { type RaceOnCourse, timesAt } from './arrivals.ts';
import { whereaboutsAt } from './whereabouts.ts';

/** A race on a stretch of its course. */
export interface StretchOf {
  readonly race: RaceOnCourse;
  readonly from: Metres;
  readonly to: Metres;
}

/** Runners of a race between two measures at a time; whom the sweep has overtaken is off the road. */
export function runnersBetween({ race, from, to }: StretchOf, time: Seconds): number {
  const [start, finish] = race.ends;
  return whereaboutsAt(race, [start, from, to, finish], time).between[1]!;
}

/** The most runners on stretches of one road at a time, and when (seconds after midnight); `null` where nobody comes. */
export function mostRunners(stretches: readonly StretchOf[]): { readonly count: number; readonly at: Seconds } | null {
  const comes = sortedTimes(stretches, ({ from }) => from);
  const leaves = sortedTimes(stretches, ({ to }) => to);
  if (comes.length === 0) return null;
  let [gone, most, at] = [0, 0, comes[0]!];
  for (let come = 0; come < comes.length; come++) {
    while (leaves[gone]! <= comes[come]!) gone++;
    if (come + 1 - gone > most) [most, at] = [come + 1 - gone, comes[come]!];
  }
  return { count: stretches.reduce((sum, stretch) => sum + runnersBetween(stretch, at), 0), at };
}

function sortedTimes(stretches: readonly StretchOf[], measureOf: (stretch: StretchOf) => Metres): Float64Array {
  const columns = stretches.map((stretch) => timesAt(stretch.race, measureOf(stretch)));
  const all = new Float64Array(columns.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const column of columns) {
    all.set(column, at);
    at += column.length;
  }
  return all.sort();
}
