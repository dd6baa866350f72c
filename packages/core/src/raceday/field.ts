/**
 * The field of a race: who starts when, and takes how long. Model: finish times by quantile, no random numbers; waves
 * seeded fastest first; wave time + place in the wave ÷ start flow. 80 persons a minute a metre of start line and 1,100 a
 * minute in all are common practice, no source. How runners slow: `slowing.ts`.
 */
import { type Finding, type Result, bad, good } from '../finding.ts';
import type { FinishTimes, PlanRace, PlanWave } from '../plan/plan.ts';
import { shortText } from '../text/found.ts';
import type { Metres } from '../units.ts';
import type { Field } from './day.ts';
import { racedayFinding } from './racedayFinding.ts';
import {
  type FinishSources,
  type PastResults,
  type Ranked,
  finishSources,
  isPastResults,
  timesOf,
} from './finishSource.ts';
import type { Hills } from './hills.ts';
import { isHills } from './shapes.ts';
import { slowingOf } from './slowing.ts';
import { positive, want } from '../wants.ts';
import { isRace } from '../plan/shapes.ts';

/** Persons a minute over the start line, for a plan that gives neither flow nor width. */
const START_FLOW = 1100;
/** Persons a minute for each metre of start line. */
const FLOW_PER_METRE = 80;
/** Bounds beyond which a plan has a slip of the pen: starters of a race, and seconds from the first gun to the last finish. */
const MOST_STARTERS = 1_000_000;
const LONGEST = 7 * 24 * 3600;

/**
 * Persons a minute over a race's start line: the plan's, else 80 for each metre of its width, else 1,100 (common practice, no source).
 */
export function startFlowOf(race: PlanRace): number {
  want('startFlowOf', 'race', isRace, race);
  return race.startFlow ?? (race.startWidth === undefined ? START_FLOW : FLOW_PER_METRE * race.startWidth);
}

/** Entrants who start, rounded half up. */
export const startersOf = (wave: PlanWave, show: number): number => Math.floor(wave.entrants * show + 0.5 + 1e-9);

/**
 * All starters of a race on a course of `length` metres, wave by wave in order of time. Where past results have splits and the
 * plan does not say how runners slow, each slows as theirs tell; `hills`: of the course, taken out of the splits. Not ok, with a note or a warning, where the
 * plan has no waves, no starters or no finish times; with an error where past results are not among `results`.
 * @example
 * ```ts
 * import { fieldOf } from '@halfcup/core/raceday';
 *
 * const race = { id: 'run', name: 'Pier run', course: 'pier', division: 'run', waves: [{ time: 8 * 3600, entrants: 400 }], finish: { median: 3000, spread: 0.2 }, show: 0.9, late: 'out', gradient: false } as const;
 * const field = fieldOf(race, 10_000, new Map());
 * field.ok && field.value.start.length; // → 360
 * field.ok && field.value.finish[0]; // → 1649.3
 * fieldOf({ ...race, waves: [] }, 10_000, new Map()).findings[0]?.code; // → 'race-without-waves'
 * ```
 */
export function fieldOf(
  race: PlanRace,
  length: Metres,
  results: PastResults,
  hills: Hills | null = null,
): Result<Field> {
  want('fieldOf', 'race', isRace, race);
  want('fieldOf', 'length', positive, length);
  want('fieldOf', 'results', isPastResults, results);
  want('fieldOf', 'hills', isHills, hills);
  const lacking = lackOf(race, results);
  if (lacking !== null) return bad([lacking]);
  const waves = [...race.waves].sort((a, b) => a.time - b.time);
  const sources = finishSources(race, length, results, hills);
  const ranked = rankedByWave(race, waves, sources);
  const finish = joined(ranked.map((wave) => wave.finish));
  const start = joined(waves.map((wave) => startsOf(wave, race)));
  const endless = endlessOf(race, waves[0]!.time, start, finish);
  if (endless !== null) return bad([endless]);
  const slow = slowingOf(race, length, finish, joined(ranked.map((wave) => wave.slow)));
  const { fitted } = sources;
  return good({ race, division: race.division, start, finish, slow, ...(fitted.length === 0 ? {} : { fitted }) }, [
    ...overlapsOf(race, waves),
    ...sources.findings,
  ]);
}

/** An error where the last would finish more than a week after the first gun. */
function endlessOf(race: PlanRace, gun: number, start: Float64Array, finish: Float64Array): Finding | null {
  const last = start.reduce((longest, time, i) => Math.max(longest, time + finish[i]!), 0) - gun;
  if (last <= LONGEST) return null;
  const after = last < Infinity ? last : null;
  return racedayFinding('race-endless', { after, most: LONGEST }, { severity: 'error', where: { race: race.id } });
}

/** A note for each wave that starts while the one before still crosses the line: more would cross at once than the line lets through. */
function overlapsOf(race: PlanRace, waves: readonly PlanWave[]): Finding[] {
  const flow = startFlowOf(race);
  return waves.flatMap((wave, k): Finding[] => {
    const before = waves[k - 1];
    const clear = before === undefined ? -Infinity : before.time + ((startersOf(before, race.show) - 1) / flow) * 60;
    if (before === undefined || startersOf(wave, race.show) === 0 || clear <= wave.time) return [];
    const overlap = { wave: before.time, until: clear, next: wave.time, flow };
    return [racedayFinding('waves-overlap', overlap, { severity: 'note', where: { race: race.id } })];
  });
}

/** Why there is no field, or `null`. */
function lackOf(race: PlanRace, results: PastResults): Finding | null {
  const where = { race: race.id };
  const { waves, show } = race;
  if (waves.length === 0) return racedayFinding('race-without-waves', {}, { severity: 'note', where });
  const starters = waves.reduce((sum, wave) => sum + startersOf(wave, show), 0);
  if (starters === 0) return racedayFinding('race-without-starters', { show }, { severity: 'warning', where });
  if (starters > MOST_STARTERS) {
    const bound = { measured: starters, limit: MOST_STARTERS };
    return racedayFinding('race-too-large', { starters, most: MOST_STARTERS }, { severity: 'error', where, ...bound });
  }
  const without = waves.findIndex((wave) => (wave.finish ?? race.finish) === undefined);
  if (without >= 0) return racedayFinding('race-without-times', { wave: without + 1 }, { severity: 'warning', where });
  return (
    race.waves
      .map((wave) => resultsLack(race, wave.finish ?? race.finish!, results))
      .find((finding) => finding !== null) ?? null
  );
}

function resultsLack(race: PlanRace, finish: FinishTimes, results: PastResults): Finding | null {
  if (!('csv' in finish) || timesOf(results, finish).length > 0) return null;
  const { csv, column } = finish;
  const facts = { severity: 'error', where: { race: race.id, file: csv } } as const;
  return racedayFinding('results-missing', { csv: shortText(csv), column: shortText(column) }, facts);
}

/** Finish times of each wave, ascending, and how its runners slow; waves that have none of their own share the race's, fastest first. */
function rankedByWave(race: PlanRace, waves: readonly PlanWave[], { ranked }: FinishSources): Ranked[] {
  const counts = waves.map((wave) => startersOf(wave, race.show));
  const shared = waves.reduce((sum, wave, k) => sum + (wave.finish === undefined ? counts[k]! : 0), 0);
  const seeded = shared === 0 ? null : ranked(race.finish!, shared);
  let taken = 0;
  return waves.map((wave, k) => {
    if (wave.finish !== undefined || seeded === null) return ranked(wave.finish ?? race.finish!, counts[k]!);
    taken += counts[k]!;
    const [from, to] = [taken - counts[k]!, taken];
    return { finish: seeded.finish.subarray(from, to), slow: seeded.slow.subarray(from, to) };
  });
}

/** When each of a wave crosses the line: the first at the gun. */
function startsOf(wave: PlanWave, race: PlanRace): Float64Array {
  const gap = 60 / startFlowOf(race);
  return Float64Array.from({ length: startersOf(wave, race.show) }, (_, place) => wave.time + place * gap);
}

function joined(columns: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(columns.reduce((sum, column) => sum + column.length, 0));
  let at = 0;
  for (const column of columns) {
    all.set(column, at);
    at += column.length;
  }
  return all;
}
