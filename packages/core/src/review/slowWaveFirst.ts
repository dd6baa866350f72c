/**
 * A wave that starts just before a clearly faster one on the same road: the fast run up on the slow. Two waves share a
 * road where the course of the later one, shortly after its start, runs on that of the earlier one; they meet
 * there if its first come within a quarter of an hour of the others' first. Common practice, the limits assumptions.
 */
import { courseLength, startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { passesOf } from '../course/passes.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import type { Layout } from '../layout/layout.ts';
import { type RaceOnCourse, timesAt } from '../raceday/arrivals.ts';
import { startersOf } from '../raceday/field.ts';
import { quantile } from '../raceday/timing.ts';
import { type Case, type Check, COMMON_PRACTICE, type DayFacts, dayCheck } from './check.ts';
import { SAME_ROAD } from './roadTimes.ts';
import { courseOf } from './standing.ts';

/** Where after the start two roads are compared, metres. */
const AFTER_START = 200;
/** Apart by less than this, seconds, a wave starts just before another. */
const JUST_BEFORE = 15 * 60;
/** By so much of its speed a wave is faster than another. */
const FASTER = 1.1;
/** Starts no farther apart, metres, are one. */
const SAME_START = 50;
/** Two courses run the same way where their headings differ by less, degrees. */
const SAME_WAY = 60;

/** One wave: its gun, and which of the race's starters it is. */
interface Wave {
  readonly running: RaceOnCourse;
  readonly gun: number;
  readonly from: number;
  readonly to: number;
  /** Of its median, metres a second. */
  readonly speed: number;
}

function wavesOf(running: RaceOnCourse): Wave[] {
  const { race, finish } = running.field;
  const length = running.ends[1] - running.ends[0];
  let from = 0;
  return [...race.waves]
    .sort((a, b) => a.time - b.time)
    .flatMap((wave): Wave[] => {
      const to = from + startersOf(wave, race.show);
      const own = finish.slice(from, to).sort();
      const made = { running, gun: wave.time, from, to, speed: length / (own.length === 0 ? NaN : quantile(own, 0.5)) };
      from = to;
      return own.length === 0 ? [] : [made];
    });
}

/** Measures at which two races are on one road, the same way, shortly after the start of the second; `null` where they are not. */
function meeting(slow: RaceOnCourse, fast: RaceOnCourse, layout: Layout): readonly [slow: number, fast: number] | null {
  const { course } = courseOf(layout, fast.field.race.course);
  const start = startMeasure(course);
  const there = start + Math.min(AFTER_START, (courseLength(course) - start) / 2);
  if (slow.field.race.course === fast.field.race.course) return [there, there];
  const ground = pointAt(course, there);
  if (ground === null) return null;
  const pass = passesOf(courseOf(layout, slow.field.race.course), ground.at, { snapRadius: SAME_ROAD }).find(
    ({ azimuthDeg }) => azimuthDifference(azimuthDeg, ground.azimuthDeg) <= SAME_WAY,
  );
  return pass === undefined ? null : [pass.measure, there];
}

/** When the first of a wave is at a measure. */
type FirstAt = (wave: Wave, measure: number) => number;

/** Each asked once: many races meet one another at the same places. */
function firstAtOnce(): FirstAt {
  const known = new Map<RaceOnCourse, Map<number, Float64Array>>();
  const timesOf = (running: RaceOnCourse, measure: number): Float64Array => {
    const times = known.get(running)?.get(measure) ?? timesAt(running, measure);
    if (!known.has(running)) known.set(running, new Map());
    known.get(running)!.set(measure, times);
    return times;
  };
  return ({ running, from, to }, measure) =>
    timesOf(running, measure)
      .subarray(from, to)
      .reduce((first, time) => Math.min(first, time), Infinity);
}

/** A race with its waves. */
interface Started {
  readonly running: RaceOnCourse;
  readonly waves: readonly Wave[];
}

/** The pair of waves of two races in which the later one is faster by most. */
function worstPair(
  { running: slow, waves: slowWaves }: Started,
  { running: fast, waves: fastWaves }: Started,
  firstAt: FirstAt,
  layout: Layout,
): Case<'slow-wave-first'>[] {
  const pairs = fastWaves.flatMap((later) =>
    slowWaves
      .filter(({ gun, speed }) => gun < later.gun && later.speed > speed * FASTER)
      .map((before) => ({ before, later })),
  );
  const places = pairs.length === 0 ? null : meeting(slow, fast, layout);
  if (places === null) return [];
  const [worst] = pairs
    .map((pair) => ({ ...pair, apart: firstAt(pair.later, places[1]) - firstAt(pair.before, places[0]) }))
    .filter(({ apart }) => apart > 0 && apart < JUST_BEFORE)
    .sort((a, b) => b.later.speed / b.before.speed - a.later.speed / a.before.speed);
  if (worst === undefined) return [];
  const { before, later } = worst;
  // From one start the guns are known; elsewhere the fast come to the slow's road by their own way.
  const oneStart = Math.abs(places[0] - slow.ends[0] - (places[1] - fast.ends[0])) <= SAME_START;
  const apart = oneStart ? later.gun - before.gun : Math.max(60, Math.round(worst.apart / 60) * 60);
  const [slowId, fastId] = [slow.field.race.id, fast.field.race.id];
  return [
    {
      params: {
        slow: { race: slowId, wave: before.gun, speed: before.speed },
        fast: { race: fastId, wave: later.gun, speed: later.speed },
        apart,
      },
      where: { path: `/races/${layout.plan.races.findIndex(({ id }) => id === slowId)}`, race: slowId },
      measured: later.speed / before.speed,
      limit: FASTER,
    },
  ];
}

const find = (layout: Layout, { races }: DayFacts): Case<'slow-wave-first'>[] => {
  const started = races.map((running): Started => ({ running, waves: wavesOf(running) }));
  const firstAt = firstAtOnce();
  return started.flatMap((slow) => started.flatMap((fast) => worstPair(slow, fast, firstAt, layout)));
};

export const slowWaveFirst: Check = dayCheck(
  {
    code: 'slow-wave-first',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ plan }) => (plan.races.reduce((sum, { waves }) => sum + waves.length, 0) > 1 ? null : 'one-wave'),
  },
  find,
);
