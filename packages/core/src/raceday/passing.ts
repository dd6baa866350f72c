/** When the first of a race is at a place, and when the last is through. */
import type { Metres, Seconds } from '../units.ts';
import { type RaceOnCourse, timesAt } from './arrivals.ts';
import { sweepAt } from './sweep.ts';

/** The span of time in which a race is at a place. */
export interface Passing {
  /** Of those whom the sweep lets get there. */
  readonly first: Seconds;
  /** The last of them or the sweep, the later. */
  readonly last: Seconds;
}

/** Places kept for a race: a station that is dragged asks for a new one with each step. */
const MOST_KEPT = 1000;
const kept = new WeakMap<RaceOnCourse, Map<Metres, Passing | null>>();

/** When a race is at a calibrated measure of its course; `null` where nobody gets there. */
export function passingAt(race: RaceOnCourse, measure: Metres): Passing | null {
  const places = kept.get(race) ?? new Map<Metres, Passing | null>();
  if (places.size >= MOST_KEPT) places.clear();
  kept.set(race, places);
  const known = places.get(measure);
  if (known !== undefined) return known;
  const found = passingOf(race, measure);
  places.set(measure, found);
  return found;
}

function passingOf(race: RaceOnCourse, measure: Metres): Passing | null {
  const { sweep, outFrom, field } = race;
  const due = sweep === null ? Infinity : sweepAt(sweep, measure);
  const until = field.race.late === 'served' ? Infinity : due;
  const times = timesAt(race, measure);
  let [first, last] = [Infinity, -Infinity];
  for (let i = 0; i < times.length; i++) {
    const time = times[i]!;
    if (time > until || outFrom[i]! <= measure) continue;
    if (time < first) first = time;
    if (time > last) last = time;
  }
  return first === Infinity ? null : { first, last: Number.isFinite(due) ? Math.max(last, due) : last };
}
