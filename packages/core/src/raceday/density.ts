/**
 * Runners of a race at one time, counted by equal stretches of its course: whom the sweep has overtaken is not among them.
 * The time share at the ends of the stretches is worked out once a race and stretch; each runner is then placed by bisection.
 */
import type { Metres, Seconds } from '../units.ts';
import type { RaceOnCourse } from './arrivals.ts';
import { type Work, workTo } from './pace.ts';
import { overtakenBy } from './whereabouts.ts';

/** Work at the ends of the stretches, by what is constant and what comes with slowing. */
interface Ends {
  readonly even: Float64Array;
  readonly late: Float64Array;
  readonly total: Work;
}

const kept = new WeakMap<RaceOnCourse, Map<Metres, Ends>>();

/** How many stretches of a length a course has, the last perhaps shorter. */
export const stretchesOf = ({ ends: [start, finish] }: Pick<RaceOnCourse, 'ends'>, every: Metres): number =>
  Math.max(1, Math.ceil((finish - start) / every - 1e-9));

function endsOf(race: RaceOnCourse, every: Metres): Ends {
  const known = kept.get(race)?.get(every);
  if (known !== undefined) return known;
  const { ends, hills } = race;
  const length = ends[1] - ends[0];
  const count = stretchesOf(race, every);
  const works = Array.from({ length: count + 1 }, (_, k) => workTo(Math.min(1, (k * every) / length), hills));
  const made = {
    even: Float64Array.from(works, ({ even }) => even),
    late: Float64Array.from(works, ({ late }) => late),
    total: workTo(1, hills),
  };
  if (!kept.has(race)) kept.set(race, new Map());
  kept.get(race)!.set(every, made);
  return made;
}

/** A race's starters at a time, those on the road by stretches: `onRoad` is the sum of `runners`. */
export interface Density {
  readonly runners: Uint32Array;
  readonly waiting: number;
  readonly onRoad: number;
  readonly finished: number;
  /** Whom the sweep has overtaken. */
  readonly stopped: number;
}

/** Runners on the road in each stretch of `every` metres from the start on, at a clock time, and how many are elsewhere: as `whereaboutsAt` counts them. */
export function densityAt(race: RaceOnCourse, time: Seconds, every: Metres): Density {
  const { start, finish, slow } = race.field;
  const { even, late, total } = endsOf(race, every);
  const runners = new Uint32Array(even.length - 1);
  const out = overtakenBy(race, time);
  let [waiting, finished, stopped] = [0, 0, 0];
  for (let i = 0; i < start.length; i++) {
    const since = time - start[i]!;
    if (since < 0) waiting++;
    else if (out(i)) stopped++;
    else if (since >= finish[i]!) finished++;
    else {
      const done = (since / finish[i]!) * (total.even + slow[i]! * total.late);
      runners[stretchAt(even, late, slow[i]!, done)]!++;
    }
  }
  return { runners, waiting, finished, stopped, onRoad: start.length - waiting - finished - stopped };
}

/** The stretch whose first end is the last that this much work has passed. */
function stretchAt(even: Float64Array, late: Float64Array, slow: number, done: number): number {
  let [low, high] = [0, even.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (even[middle]! + slow * late[middle]! <= done) low = middle;
    else high = middle;
  }
  return low;
}
