/**
 * Finish times that nobody can run, or that are slower than a walk: a slip of the pen in a time or a length. World's
 * bests by distance, between them linear in the logarithms, and at their ends the same speed farther on: all from memory, as
 * of 2025, and enough to catch a slip. Of a median with a spread one in a thousand counts, as its tails are the model's.
 */
import { max, min } from 'd3-array';
import type { RaceOnCourse } from '../raceday/arrivals.ts';
import { linearAt } from '../raceday/finishTimes.ts';
import { quantile } from '../raceday/timing.ts';
import type { Division, FinishTimes, PlanRace } from '../plan/plan.ts';
import { COMMON_PRACTICE, type Case, type Check, dayCheck } from './check.ts';

/** Metres and seconds. Running: 1,500 m to 100 km; race walking: 10 to 50 km. */
const BESTS: Readonly<Record<Exclude<Division, 'wheels'>, readonly (readonly [number, number])[]>> = {
  run: [
    [1500, 206],
    [5000, 755],
    [10_000, 1571],
    [21_097.5, 3402],
    [42_195, 7235],
    [100_000, 21_935],
  ],
  walk: [
    [10_000, 2200],
    [20_000, 4596],
    [50_000, 12_753],
  ],
};
/** Fastest that racers on wheels keep up, handcycles among them, metres a second: an assumption. */
const WHEELS = 13.5;
/** Slowest walk, metres a second: 3 km/h, common practice, no source. */
const WALK = 3 / 3.6;
/** Share of a modelled field that its tails do not count for. */
const TAIL = 0.001;

/** Seconds that nobody has beaten over a distance. */
export function bestOver(length: number, division: Division): number {
  if (division === 'wheels') return length / WHEELS;
  const bests = BESTS[division];
  const [first, last] = [bests[0]!, bests.at(-1)!];
  if (length <= first[0]) return (length * first[1]) / first[0];
  if (length >= last[0]) return (length * last[1]) / last[0];
  const logs = (k: 0 | 1): number[] => bests.map((best) => Math.log(best[k]));
  return Math.exp(linearAt(logs(0), logs(1), Math.log(length)));
}

/** The fastest and the slowest time as the plan gives them; `null` where it gives a median, or a file. */
function typedOf({ finish, waves }: PlanRace): readonly [number, number] | null {
  const given = waves.map((wave) => wave.finish ?? finish);
  const times = given.map((one) => (one === undefined ? [] : timesIn(one)));
  return times.some((list) => list.length === 0) ? null : [min(times.flat())!, max(times.flat())!];
}

function timesIn(finish: FinishTimes): readonly number[] {
  if ('quantiles' in finish) return finish.quantiles.map(([, seconds]) => seconds);
  return 'times' in finish ? [min(finish.times)!, max(finish.times)!] : [];
}

function cases(running: RaceOnCourse, index: number): Case<'speed-impossible'>[] {
  const { race, division, finish } = running.field;
  const sorted = finish.toSorted();
  const modelled = [race.finish, ...race.waves.map((wave) => wave.finish)].some(
    (one) => one !== undefined && 'median' in one,
  );
  const tail = modelled ? TAIL : 0;
  const typed = typedOf(race);
  const [fastest, slowest] = typed ?? [quantile(sorted, tail), quantile(sorted, 1 - tail)];
  const length = running.ends[1] - running.ends[0];
  const [best, most] = [bestOver(length, division), length / WALK];
  const where = { path: `/races/${index}/finish`, race: race.id };
  const own = { race: race.id, length, ...(typed === null ? {} : { typed: true as const }) };
  return [
    ...(fastest < best
      ? [
          {
            params: { is: 'fast' as const, ...own, time: fastest, best },
            where,
            measured: fastest,
            limit: best,
            unit: 's',
          },
        ]
      : []),
    ...(slowest > most
      ? [
          {
            params: { is: 'slow' as const, ...own, time: slowest, most },
            where,
            measured: slowest,
            limit: most,
            unit: 's',
          },
        ]
      : []),
  ];
}

export const speedImpossible: Check = dayCheck(
  {
    code: 'speed-impossible',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  ({ plan }, { races }) =>
    races.flatMap((running) =>
      cases(
        running,
        plan.races.findIndex(({ id }) => id === running.field.race.id),
      ),
    ),
);
