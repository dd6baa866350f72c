/**
 * Vehicles and the sweep at a clock time. A vehicle goes as its run was planned: at one speed from the start of the course to its
 * first stop and from stop to stop, and it waits where it stands. Before a run and after its last stop it is off the course.
 */
import type { Metres, Seconds } from '../units.ts';
import type { Run } from './day.ts';
import { linearAt } from './finishTimes.ts';
import type { Sweep } from './sweep.ts';

/** Where a vehicle is in one of its runs. */
export interface OnTheMove {
  readonly measure: Metres;
  /** The station at which it stops; `null` on the way. */
  readonly at: string | null;
  /** The next stop, or the one at which it stands. */
  readonly next: string;
}

/** When a run sets off from the start of the course, and when it leaves its last stop; `speed` metres a second. */
export function runSpan({ stops }: Run, speed: number): readonly [from: Seconds, to: Seconds] {
  const first = stops[0]!;
  return [first.arrive - first.measure / speed, stops.at(-1)!.leave];
}

/** Where the vehicle of a run is at a time; `null` where it is off the course. */
export function onTheMove(run: Run, speed: number, time: Seconds): OnTheMove | null {
  const [from, to] = runSpan(run, speed);
  if (time < from || time > to) return null;
  let [left, before] = [from, 0];
  for (const { station, measure, arrive, leave } of run.stops) {
    if (time < arrive) {
      const share = (time - left) / (arrive - left);
      return { measure: before + share * (measure - before), at: null, next: station };
    }
    if (time <= leave) return { measure, at: station, next: station };
    [left, before] = [leave, measure];
  }
  return null;
}

/** Where the sweep is at a time; `null` before it leaves and after its last known time. */
export function sweepMeasure({ measures, times }: Sweep, time: Seconds): Metres | null {
  return time < times[0]! || time > times.at(-1)! ? null : linearAt(times, measures, time);
}
