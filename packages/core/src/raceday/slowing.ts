/**
 * How much runners slow over the second half, by their pace: from 0.06 for the fastest to 0.40 for the slowest finisher of
 * one open set of 31,931 marathon results, in proportion to the place among them. So a field without its slow half, or of fast
 * runners only, slows as its runners do. Other distances by the marathon time of the same effort; half of it under 30 km
 * is an assumption.
 */
import type { PlanRace } from '../plan/plan.ts';
import type { Metres, Seconds } from '../units.ts';
import { monotoneCurve } from './monotone.ts';

const FIRST = 0.06;
const LAST = 0.4;
const LONG: Metres = 30_000;
const MARATHON: Metres = 42_195;
/** Of time over distance at the same effort: P. S. Riegel, American Scientist 69 (1981); quoted, not read. */
const FATIGUE = 1.06;

/** Seconds, and the share of the 31,931 finishers who took no longer. Open results, repository llimllib/bostonmarathon (MIT). */
const FINISHERS: readonly (readonly [seconds: Seconds, share: number])[] = [
  [7717, 0],
  [9574, 0.01],
  [10_544, 0.05],
  [11_092, 0.1],
  [11_982, 0.2],
  [12_649, 0.3],
  [13_270, 0.4],
  [13_946, 0.5],
  [14_717, 0.6],
  [15_789, 0.7],
  [17_130, 0.8],
  [19_106, 0.9],
  [20_650, 0.95],
  [23_455, 0.99],
  [32_333, 1],
];
const shareBy = monotoneCurve(
  FINISHERS.map(([seconds]) => seconds),
  FINISHERS.map(([, share]) => share),
);

/** Slowing of a runner who takes `finish` seconds for `length` metres, by pace. */
export function slowByPace(finish: Seconds, length: Metres): number {
  const alike = finish * (MARATHON / length) ** FATIGUE;
  return (FIRST + (LAST - FIRST) * shareBy(alike)) * (length < LONG ? 0.5 : 1);
}

/**
 * How much each finisher of a race slows: the plan's own by place, from its first value to its last; else as fitted to
 * splits (`NaN` where there are none); else by pace, wheels not at all.
 */
export function slowingOf(
  race: PlanRace,
  length: Metres,
  finish: Float64Array,
  fitted: Float64Array | null = null,
): Float64Array {
  if (race.slow !== undefined) return slowByRank(finish, race.slow);
  const byPace = race.division === 'wheels' ? () => 0 : (time: Seconds) => slowByPace(time, length);
  return finish.map((time, i) => (fitted === null || Number.isNaN(fitted[i]!) ? byPace(time) : fitted[i]!));
}

/** From the first value for the fastest of the race to the last for the slowest, linear by rank. */
function slowByRank(finish: Float64Array, [first, last]: readonly [number, number]): Float64Array {
  const order = finish.map((_, i) => i).sort((a, b) => finish[a]! - finish[b]! || a - b);
  const slow = new Float64Array(finish.length);
  order.forEach((runner, rank) => {
    slow[runner] = first + ((last - first) * rank) / Math.max(finish.length - 1, 1);
  });
  return slow;
}
