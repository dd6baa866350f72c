/**
 * Better places for stations: fewest errors, then fewest warnings, then the least sum of each race's
 * longest leg (in whole metres), then the fewest hand-placed items given up, then the least movement.
 * First over places every `step` metres, all combinations; then finer around the best. What comes out
 * is analysed as a whole, and given up where that is no better than the plan as it is.
 */
import type { Analysis } from '../analyse.ts';
import { courseTable } from '../station/seeStation.ts';
import type { CourseTable } from '../station/directions.ts';
import { stepWithin } from './budget.ts';
import { type Ground, costed, groundOf } from './costs.ts';
import { placeAt, placedByHand, presentPlace, whyStays } from './places.ts';
import { type Choice, problemOf } from './problem.ts';
import { type Found, search } from './search.ts';
import { type Verified, verified } from './verify.ts';
import { type Shape, aFunction, aText, listOf, notNegative, partly, positive, want } from '../wants.ts';
import { isAnalysis } from '../review/shapes.ts';

/** Which stations may move, how far, and how hard to look. */
export interface ImproveOptions {
  /** Ids of the stations that may move; absent: all. */
  readonly only?: readonly string[];
  /** Metres along the course to either side; absent: 500. */
  readonly within?: number;
  /**
   * Whole metres between places that are tried in all combinations; absent: 25 to 500 m away, more where stations
   * stand so near one another that there were over 4 million combinations of neighbours, and farther off as many again at even steps.
   */
  readonly step?: number;
  /** Whole metres between places that are tried around the best; absent: 1. */
  readonly finest?: number;
  /** Most steps of one elimination; above it some couplings are left out and the proof is a bound. */
  readonly steps?: number;
  /** Share of the work that is done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** Asked again and again; once true, the best that is known so far is given. */
  readonly stop?: () => boolean;
}

const isOptions: Shape = partly<ImproveOptions>('options such as { within: 200 }', {
  only: listOf(aText),
  within: notNegative,
  step: positive,
  finest: positive,
  steps: notNegative,
  onProgress: aFunction,
  stop: aFunction,
});

/** What `improve` has found, and how. */
export interface Improvement extends Verified {
  /** Places tried in all combinations, of all stations together, and metres between them. */
  readonly tried: number;
  readonly step: number;
  /** Metres between the places tried that are over 500 m away. */
  readonly stepBeyond: number;
  /** Stations that could not be moved, and why. */
  readonly stays: readonly { readonly station: string; readonly why: string }[];
  /** `stop` ended the search before it was through. */
  readonly stopped: boolean;
}

const WITHIN = 500;
const STEP = 25;
/** Most places over 500 m away, to either side. */
const FAR_PLACES = 20;
const FINER = 5;
const STEPS = 6e7;
const RUNS = 120;

/** What one call works with. */
interface Work {
  readonly analysis: Analysis;
  readonly ground: Ground;
  readonly table: CourseTable;
  readonly options: ImproveOptions;
  readonly within: number;
  readonly step: number;
  readonly stepBeyond: number;
  readonly movable: readonly boolean[];
}

/**
 * Better places for the stations of an analysed plan: fewest errors, then fewest warnings, then the least sum of the races'
 * longest legs, then the fewest items given up that a hand has placed, then the least movement. What comes out is analysed
 * as a whole, and is the plan as it is where that is no better. Fixed stations, and those off the course, stay.
 * It may take seconds: run it off the main thread, with `onProgress` and `stop`.
 * @example
 * ```ts
 * import { analyse, improve, readPlan } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { moves, proof } = improve(result.value, { within: 200, only: ['s1'] });
 * moves.map(({ station, shift, measure }) => [station, shift, measure]); // → [['s1', -135, 1865]]
 * proof; // → 'optimal'
 * ```
 */
export function improve(analysis: Analysis, options: ImproveOptions = {}): Improvement {
  want('improve', 'analysis', isAnalysis, analysis);
  want('improve', 'options', isOptions, options);
  const { courses, stations } = analysis;
  const within = options.within ?? WITHIN;
  const movable = stations.map(
    (station) => (options.only === undefined || options.only.includes(station.id)) && whyStays(station) === null,
  );
  const step = options.step ?? stepWithin(analysis, movable, Math.min(within, WITHIN), STEP);
  const stepBeyond = options.step ?? Math.max(step, Math.ceil((within - WITHIN) / FAR_PLACES));
  const work: Work = {
    analysis,
    ground: groundOf(analysis),
    table: courseTable(courses),
    options,
    within,
    step,
    stepBeyond,
    movable,
  };
  const coarse = coarseChoices(work);
  const tried = coarse?.reduce((sum, list, k) => sum + (movable[k]! ? list.length : 0), 0) ?? 0;
  const found = coarse === null ? null : solve(coarse, work);
  const best = found === null ? null : refined(found, work);
  options.onProgress?.(1);
  const chosen = best?.chosen ?? found?.chosen ?? [];
  const stays = stations.flatMap((station) => {
    const why = whyStays(station);
    return why === null || options.only?.includes(station.id) === false ? [] : [{ station: station.id, why }];
  });
  const present = coarse === null ? [] : coarse.map((list) => list[0]!);
  return {
    ...verified(analysis, present, chosen, found?.found ?? null),
    tried,
    step,
    stepBeyond,
    stays,
    stopped: best === null,
  };
}

interface Solved {
  readonly chosen: readonly Choice[];
  /** `adds`: the costs of the parts are all there is. */
  readonly found: Found & { readonly adds: boolean };
}

function solve(lists: readonly (readonly Choice[])[], { analysis, ground, options }: Work): Solved | null {
  const { stop } = options;
  const stated = problemOf(analysis, lists, ground, stop);
  if (stated === null) return null;
  const { problem, whole } = stated;
  const found = search(problem, { steps: options.steps ?? STEPS, runs: RUNS, ...(stop === undefined ? {} : { stop }) });
  return found === null
    ? null
    : { chosen: found.choices.map((choice, k) => lists[k]![choice]!), found: { ...found, adds: whole } };
}

/** Shifts in whole steps to either side, the smallest first, upstream before downstream. */
function shiftsWithin(within: number, step: number): number[] {
  const count = Math.max(Math.floor(within / step + 1e-9), 0);
  return Array.from({ length: count }, (_, k) => (k + 1) * step).flatMap((shift) => [-shift, shift]);
}

/** Metres between places at a shift. */
const spacingAt = (shift: number, { step, stepBeyond }: Work): number => (Math.abs(shift) > WITHIN ? stepBeyond : step);

/** The present place first; `null` where it was stopped. */
function coarseChoices(work: Work): Choice[][] | null {
  const { analysis, options, within, step, stepBeyond } = work;
  const near = shiftsWithin(Math.min(within, WITHIN), step);
  const shifts = [
    ...near,
    ...shiftsWithin(within - WITHIN, stepBeyond).map((shift) => shift + Math.sign(shift) * WITHIN),
  ];
  const lists: Choice[][] = [];
  for (const [index, station] of analysis.stations.entries()) {
    const list: Choice[] = [{ ...presentPlace(station), costs: costed(station, work.ground) }];
    for (const shift of work.movable[index]! ? shifts : []) {
      if (options.stop?.() === true) return null;
      list.push(...choicesAt(shift, index, work));
    }
    lists.push(list);
    options.onProgress?.((0.6 * (index + 1)) / analysis.stations.length);
  }
  return lists;
}

/** With items placed by hand kept, and given back to the practice. */
function choicesAt(shift: number, index: number, { analysis, ground, table }: Work): Choice[] {
  const station = analysis.stations[index]!;
  const ways = placedByHand(station.station).length > 0 ? [false, true] : [false];
  return ways.flatMap((drop) => {
    const place = placeAt(shift, drop, station, analysis.plan, table);
    return place === null ? [] : [{ ...place, costs: costed(place.laid, ground) }];
  });
}

/** The same with places ever finer around those that were chosen; `null` where it was stopped. */
function refined(coarse: Solved, work: Work): Solved | null {
  let best = coarse;
  const finest = work.options.finest ?? 1;
  for (let wide = work.stepBeyond; wide > finest;) {
    const fine = Math.max(finest, Math.ceil(wide / FINER));
    const next = solve(
      best.chosen.map((choice, index) => aroundChoice(choice, index, wide, fine, work)),
      work,
    );
    if (next === null) return null;
    best = next;
    wide = fine;
    work.options.onProgress?.(1 - (0.4 * fine) / work.stepBeyond);
  }
  return best;
}

function aroundChoice(choice: Choice, index: number, wide: number, fine: number, work: Work): Choice[] {
  if (!work.movable[index]!) return [choice];
  const shifts = shiftsWithin(Math.min(wide, spacingAt(choice.shift, work)) - 1, fine)
    .map((shift) => choice.shift + shift)
    .filter((shift) => shift !== 0 && Math.abs(shift) <= work.within);
  // Also the other way with what a hand has placed, at the same place.
  const others =
    choice.shift === 0
      ? []
      : choicesAt(choice.shift, index, work).filter(({ dropped }) => dropped.length !== choice.dropped.length);
  return [choice, ...others, ...shifts.flatMap((shift) => choicesAt(shift, index, work))];
}
