/**
 * Who of a race is where at a time of day. The model is that of the arrivals: whom the sweep has overtaken by then is out, found at
 * the sweep's knots so far and where it is now.
 */
import type { Metres, Seconds } from '../units.ts';
import { type RaceOnCourse, timesAt } from './arrivals.ts';
import { linearAt } from './finishTimes.ts';
import { sweepAt } from './sweep.ts';

/** Starters of a race at one moment: `started` is the sum of `onRoad`, `finished` and `stopped`. */
export interface Whereabouts {
  /** Who will still cross the start line. */
  readonly waiting: number;
  readonly started: number;
  readonly onRoad: number;
  readonly finished: number;
  /** Whom the sweep has overtaken. */
  readonly stopped: number;
  /** On the road between each two of the places asked for; their sum is `onRoad`. */
  readonly between: readonly number[];
}

/** Where the starters of a race are at a time (seconds after midnight); `places`: measures ascending from the start to the finish. */
export function whereaboutsAt(race: RaceOnCourse, places: readonly Metres[], time: Seconds): Whereabouts {
  const { start } = race.field;
  const out = overtakenBy(race, time);
  const passed = places.map((measure) => timesAt(race, measure));
  const between = places.slice(1).map(() => 0);
  let [waiting, finished, stopped] = [0, 0, 0];
  for (let i = 0; i < start.length; i++) {
    if (start[i]! > time) waiting++;
    else if (out(i)) stopped++;
    else if (passed.at(-1)![i]! <= time) finished++;
    else {
      // The last place passed; the start line is one, whatever rounding makes of it.
      let at = between.length - 1;
      while (at > 0 && passed[at]![i]! > time) at--;
      between[at]!++;
    }
  }
  const onRoad = between.reduce((sum, count) => sum + count, 0);
  return { waiting, started: onRoad + finished + stopped, onRoad, finished, stopped, between };
}

/** Whether the sweep has overtaken a starter by a time. */
export function overtakenBy(race: RaceOnCourse, time: Seconds): (starter: number) => boolean {
  const { sweep, ends, outFrom, field } = race;
  if (sweep === null || field.race.late === 'served' || time < sweep.times[0]!) return () => false;
  const now = Math.min(linearAt(sweep.times, sweep.measures, time), ends[1]);
  if (now < ends[0]) return () => false;
  const due = sweepAt(sweep, now);
  const there = timesAt(race, now);
  return (i) => outFrom[i]! <= now || there[i]! > due;
}
