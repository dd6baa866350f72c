/**
 * Places, one list a station, as costs between their choices: what `search.ts` takes. Stops keep
 * their running order in every race; legs are compared in whole metres.
 */
import { type Course, courseLength, startMeasure } from '../course/course.ts';
import type { Layout, StationLayout } from '../layout/layout.ts';
import { inverseLength } from '../geodesy/karney.ts';
import { courseById } from '../plan/lookups.ts';
import type { RaceSpacing } from '../station/station.ts';
import { type Costed, type Ground, legCost, pairCost } from './costs.ts';
import type { Factor } from './eliminate.ts';
import type { Place } from './places.ts';
import { FINDINGS, type LegTable, type Problem } from './search.ts';

/** A place with what it costs by itself. */
export interface Choice extends Place {
  readonly costs: Costed;
}

/** What an override that is given up weighs against metres of movement, of all stations together. */
const DROPPED = 2 ** 24;

/** One time that a race comes to a station: which of the race's served passes of it, from 0. */
interface Stop {
  readonly station: number;
  readonly turn: number;
}

/** The stops of a race in running order, as they are now. */
function stopsOf(race: string, stations: readonly StationLayout[]): Stop[] {
  return stations
    .flatMap((station, index) => served(station, race).map((measure, turn) => ({ station: index, turn, measure })))
    .sort((a, b) => a.measure - b.measure)
    .map(({ station, turn }) => ({ station, turn }));
}

const served = ({ passes }: StationLayout, race: string): number[] =>
  passes.filter((pass) => pass.served && pass.race === race).map(({ measure }) => measure);

/** A problem, and whether its costs are all there is: what one station wants from several others is no sum over pairs. */
export interface Stated {
  readonly problem: Problem;
  readonly whole: boolean;
}

/** The whole problem of one list of choices a station, in the order of the layout's stations; `null` where it was stopped. */
export function problemOf(
  present: Layout,
  choices: readonly (readonly Choice[])[],
  ground: Ground,
  stop: () => boolean = () => false,
): Stated | null {
  const sizes = choices.map((list) => list.length);
  const own = choices.map((list, v): Factor => ({ vars: [v], values: Float64Array.from(list, ownCost) }));
  const legs: Legs[] = [];
  for (const [race, spacing] of present.spacing.entries()) {
    if (stop()) return null;
    legs.push(legsOf(race, spacing, present, choices, ground));
  }
  const waters = choices.map((list, v) => (list.some(({ costs }) => costs.wanting > 0) ? waterAfter(v, present) : []));
  const pairs = pairsOf(choices, waters, ground, stop);
  if (pairs === null) return null;
  const factors = [...own, ...legs.flatMap((one) => one.factors), ...pairs];
  return {
    problem: { sizes, factors, legs: legs.flatMap(({ tables }) => tables), races: present.spacing.length },
    whole: waters.every((list) => list.length < 2),
  };
}

/** The stations at which runners find water next after a station, each once. */
function waterAfter(station: number, { stations, spacing }: Layout): number[] {
  const next = spacing.flatMap(({ race }) => {
    const stops = stopsOf(race, stations);
    const others = (k: number): number[] =>
      stops
        .slice(k + 1)
        .flatMap((stop) =>
          stop.station !== station && stations[stop.station]!.station.serves.includes('water') ? [stop.station] : [],
        );
    return stops.flatMap((stop, k) => (stop.station === station ? others(k).slice(0, 1) : []));
  });
  return [...new Set(next)];
}

const ownCost = ({ costs, shift, dropped }: Choice): number =>
  costs.own * FINDINGS + dropped.length * DROPPED + Math.abs(shift);

interface Legs {
  readonly factors: readonly Factor[];
  readonly tables: readonly LegTable[];
}

function legsOf(
  race: number,
  spacing: RaceSpacing,
  present: Layout,
  choices: readonly (readonly Choice[])[],
  ground: Ground,
): Legs {
  const { course } = courseById(present.courses, spacing.course);
  const stops = [null, ...stopsOf(spacing.race, present.stations), null];
  const made = stops.slice(1).map((to, k) => legOf({ race, spacing, course, from: stops[k]!, to, choices, ground }));
  return { factors: made.map(({ factor }) => factor), tables: made.map(({ table }) => table) };
}

interface LegInput {
  readonly race: number;
  readonly spacing: RaceSpacing;
  readonly course: Course;
  /** `null`: the start, or the finish. */
  readonly from: Stop | null;
  readonly to: Stop | null;
  readonly choices: readonly (readonly Choice[])[];
  readonly ground: Ground;
}

function legOf({ race, spacing, course, from, to, choices, ground }: LegInput): { factor: Factor; table: LegTable } {
  const vars = [...new Set([from, to].flatMap((stop) => (stop === null ? [] : [stop.station])))].sort((a, b) => a - b);
  const lists = vars.map((v) => choices[v]!);
  const count = lists.reduce((all, list) => all * list.length, 1);
  const lengths = new Float64Array(count);
  const costs = new Float64Array(count);
  const inner = lists[1]?.length ?? 1;
  const measure = (stop: Stop, chosen: readonly Choice[]): number =>
    served(chosen[vars.indexOf(stop.station)]!.laid, spacing.race)[stop.turn]!;
  for (let k = 0; k < count; k++) {
    const chosen = lists.map((list, n) => list[n === 0 ? Math.floor(k / inner) : k % inner]!);
    const begin = from === null ? startMeasure(course) : measure(from, chosen);
    const end = to === null ? courseLength(course) : measure(to, chosen);
    const length = end - begin;
    const leg = {
      from: from === null ? 'start' : chosen[vars.indexOf(from.station)]!.laid.id,
      to: to === null ? 'finish' : chosen[vars.indexOf(to.station)]!.laid.id,
      length,
      end,
    };
    // Stations do not overtake one another.
    lengths[k] = length < 0 ? Infinity : Math.round(length);
    costs[k] =
      length < 0
        ? Infinity
        : legCost(
            spacing,
            leg,
            chosen.map(({ laid }) => laid),
            ground,
          ) * FINDINGS;
  }
  return { factor: { vars, values: costs }, table: { race, vars, values: lengths } };
}

function pairsOf(
  choices: readonly (readonly Choice[])[],
  waters: readonly (readonly number[])[],
  ground: Ground,
  stop: () => boolean,
): Factor[] | null {
  const factors: Factor[] = [];
  const radii = choices.map(radiusOf);
  for (const [a, list] of choices.entries()) {
    if (stop()) return null;
    for (let b = a + 1; b < choices.length; b++) {
      const others = choices[b]!;
      const follow = waters[a]!.includes(b) || waters[b]!.includes(a);
      if (!follow && centresApart(list, others) > radii[a]! + radii[b]!) continue;
      const values = Float64Array.from(
        list.flatMap((one) => others.map((other) => pairCost(one.costs, other.costs, follow, ground) * FINDINGS)),
      );
      if (values.some((value) => value !== 0)) factors.push({ vars: [a, b], values });
    }
  }
  return factors;
}

/** Metres between the first places of two stations. */
function centresApart([one]: readonly Choice[], [other]: readonly Choice[]): number {
  const [a, b] = [one!.laid.at, other!.laid.at];
  return inverseLength(a[0], a[1], b[0], b[1]);
}

/** How far from the first place anything of a station may stand, metres. */
function radiusOf(list: readonly Choice[]): number {
  const [lon, lat] = list[0]!.laid.at;
  return list.reduce(
    (radius, { laid, costs }) => Math.max(radius, inverseLength(lon, lat, laid.at[0], laid.at[1]) + costs.reach),
    0,
  );
}
