/**
 * The best choice of places, in this order: fewest errors, then warnings (both in the factors' whole
 * part), then the least sum of each race's longest leg, then the rest of the factors. Longest legs are
 * found by caps: with every leg of a race over its cap forbidden, the least cost must still be reached;
 * the caps with the least sum are found by halving, race by race.
 * Where the graph is too wide for that, some couplings are left out: what is found then, with the least that these can come to, is a bound.
 */
import { type Factor, type Order, eliminationOrder, minimise } from './eliminate.ts';

/** Lengths of one leg of a race in whole metres, by the choices of the stations at its ends. */
export interface LegTable extends Factor {
  readonly race: number;
}

export interface Problem {
  /** Choices of each variable. */
  readonly sizes: readonly number[];
  /** Whole multiples of `FINDINGS` for findings, less than one for all else together. */
  readonly factors: readonly Factor[];
  readonly legs: readonly LegTable[];
  readonly races: number;
}

export interface Found {
  readonly choices: readonly number[];
  /** No combination is better. */
  readonly exact: boolean;
  /** No combination has a lower cost of findings, nor with that one a lower sum of longest legs. */
  readonly bound: { readonly findings: number; readonly longest: number };
}

/** What one step of the cost of findings weighs: beyond all that comes after it. */
export const FINDINGS: number = 2 ** 32;

/** Steps of elimination above which couplings are left out, and how often it may be run. */
export interface Effort {
  readonly steps: number;
  readonly runs: number;
  readonly stop?: () => boolean;
}

/** The best choices; `null` where it was stopped. */
export function search(problem: Problem, effort: Effort): Found | null {
  const kept = keptScopes(problem, effort.steps);
  const inside = (vars: readonly number[]): boolean => vars.length < 2 || kept.some((scope) => sameScope(scope, vars));
  const narrowed: Problem = {
    ...problem,
    factors: problem.factors.filter(({ vars }) => inside(vars)),
    legs: problem.legs.filter(({ vars }) => inside(vars)),
  };
  const whole: boolean =
    narrowed.factors.length === problem.factors.length && narrowed.legs.length === problem.legs.length;
  const solver = solverOf(narrowed, effort);
  const solved = solveCaps(narrowed, solver);
  if (solved === null) return null;
  if (whole && solved.exact) return solved;
  const left = problem.factors.filter(({ vars }) => !inside(vars));
  // What is left out may be less than nothing: no combination gets more of it than its least.
  const findings = solved.bound.findings + left.reduce((sum, { values }) => sum + leastFindings(values), 0);
  const tries = [problem.sizes.map(() => 0), solved.choices].map((choices) => descend(problem, choices, effort.stop));
  const choices = tries.reduce((best, one) => (isBetter(scoreOf(problem, one), scoreOf(problem, best)) ? one : best));
  return { choices, exact: false, bound: { ...solved.bound, findings } };
}

/** The least findings of a table's choices; 0 where all are forbidden. */
function leastFindings(values: Float64Array): number {
  const least = values.reduce((low, value) => Math.min(low, value), Infinity);
  return least === Infinity ? 0 : findingsIn(least);
}

const sameScope = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((v, k) => v === b[k]);

/** The pairs of variables whose costs are kept: all, or fewer until elimination takes no more than `most` steps. */
function keptScopes({ sizes, factors, legs }: Problem, most: number): (readonly number[])[] {
  let scopes: (readonly number[])[] = [];
  for (const { vars } of [...factors, ...legs])
    if (vars.length === 2 && !scopes.some((scope) => sameScope(scope, vars))) scopes.push(vars);
  for (let order = eliminationOrder(sizes, scopes); order.steps > most && scopes.length > 0;) {
    const { widest } = order;
    const within = (scope: readonly number[]): boolean => scope.every((v) => widest.includes(v));
    // Of many couplings only those are tried that make the largest table what it is.
    const some = scopes.length > EACH_TRIED && scopes.some(within) ? within : () => true;
    let least: { readonly scopes: typeof scopes; readonly order: Order } | null = null;
    for (const [k, scope] of scopes.entries()) {
      if (!some(scope)) continue;
      const rest = scopes.toSpliced(k, 1);
      const other = eliminationOrder(sizes, rest);
      if (least === null || other.steps < least.order.steps) least = { scopes: rest, order: other };
    }
    ({ scopes, order } = least!);
  }
  return scopes;
}

/** Up to so many couplings each is tried for leaving it out. */
const EACH_TRIED = 60;

/** The least cost under caps, one a race; runs that are left. */
interface Solver {
  readonly least: (caps: readonly number[]) => ReturnType<typeof minimise>;
  readonly spent: () => boolean;
  readonly stopped: () => boolean;
}

function solverOf({ sizes, factors, legs }: Problem, { runs, stop }: Effort): Solver {
  const groups = groupsOf(sizes, factors, legs);
  const order: Order = eliminationOrder(
    sizes,
    groups.map(({ vars }) => vars),
  );
  let left = runs;
  let stopped = false;
  return {
    least: (caps) => {
      left--;
      stopped ||= stop?.() === true;
      if (stopped) return null;
      return minimise(
        sizes,
        groups.map((group) => capped(group, caps)),
        order,
      );
    },
    spent: () => left <= 0,
    stopped: () => stopped,
  };
}

interface Group extends Factor {
  readonly legs: readonly LegTable[];
}

/** All costs of the same variables added up once, with the legs between these. */
function groupsOf(sizes: readonly number[], factors: readonly Factor[], legs: readonly LegTable[]): Group[] {
  const groups: { vars: readonly number[]; values: Float64Array; legs: LegTable[] }[] = [];
  const groupAt = (vars: readonly number[]): (typeof groups)[number] => {
    const found = groups.find((group) => sameScope(group.vars, vars));
    if (found !== undefined) return found;
    const made = { vars, values: new Float64Array(vars.reduce((all, v) => all * sizes[v]!, 1)), legs: [] };
    groups.push(made);
    return made;
  };
  for (const { vars, values } of factors) {
    const group = groupAt(vars);
    values.forEach((value, k) => (group.values[k]! += value));
  }
  for (const leg of legs) groupAt(leg.vars).legs.push(leg);
  return groups;
}

function capped(group: Group, caps: readonly number[]): Factor {
  const own = group.legs.filter(({ race }) => caps[race]! < Infinity);
  if (own.length === 0) return group;
  const values = group.values.slice();
  for (const { race, values: lengths } of own) {
    const cap = caps[race]!;
    for (let k = 0; k < values.length; k++) if (lengths[k]! > cap) values[k] = Infinity;
  }
  return { vars: group.vars, values };
}

const findingsIn = (value: number): number => Math.floor(value / FINDINGS);

function solveCaps(problem: Problem, solver: Solver): Found | null {
  const free = Array.from({ length: problem.races }, () => Infinity);
  const first = solver.least(free);
  if (first === null) return null;
  const findings = findingsIn(first.value);
  const reaches = (caps: readonly number[]): boolean => findingsIn(solver.least(caps)?.value ?? Infinity) <= findings;
  const lengths = free.map((_, race) => lengthsOf(problem, race));
  const lows = lengths.map((own, race) => leastCap(own, -Infinity, Infinity, (cap) => reaches(free.with(race, cap)))!);
  const low = lows.reduce((sum, cap) => sum + (cap ?? 0), 0);
  if (solver.stopped()) return null;
  const best = leastCaps(lengths, lows, reaches, solver);
  let chosen: ReturnType<typeof minimise> = null;
  for (const caps of best.caps) {
    const one = solver.least(caps);
    if (one !== null && (chosen === null || one.value < chosen.value)) chosen = one;
  }
  if (solver.stopped()) return null;
  const { choices } = chosen ?? first;
  return { choices, exact: !best.cut && chosen !== null, bound: { findings, longest: best.cut ? low : best.sum } };
}

/** The lengths that a race's longest leg can have, ascending. */
function lengthsOf({ legs }: Problem, race: number): number[] {
  const own = legs.filter((leg) => leg.race === race);
  const least = Math.max(...own.map(({ values }) => values.reduce((low, length) => Math.min(low, length), Infinity)));
  return [...new Set(own.flatMap(({ values }) => Array.from(values)))]
    .filter((length) => length >= least && length < Infinity)
    .sort((a, b) => a - b);
}

/** The least of ascending lengths within limits at which a condition holds that goes on holding above it; undefined where there is none. */
function leastCap(
  lengths: readonly number[],
  from: number,
  to: number,
  holds: (cap: number) => boolean,
): number | undefined {
  const own = lengths.filter((length) => length >= from && length <= to);
  const [first] = own;
  if (first === undefined || holds(first)) return first;
  if (!holds(own.at(-1)!)) return undefined;
  let [no, yes] = [0, own.length - 1];
  while (yes - no > 1) {
    const middle = (no + yes) >> 1;
    if (holds(own[middle]!)) yes = middle;
    else no = middle;
  }
  return own[yes];
}

interface Caps {
  readonly sum: number;
  /** Every set of caps with that sum which no lower one replaces. */
  readonly caps: readonly (readonly number[])[];
  /** Runs gave out before all were seen. */
  readonly cut: boolean;
}

/** Caps with the least sum at which the least cost is still reached. */
function leastCaps(
  lengths: readonly (readonly number[])[],
  lows: readonly number[],
  reaches: (caps: readonly number[]) => boolean,
  solver: Solver,
): Caps {
  let best = Infinity;
  let kept: (readonly number[])[] = [];
  let cut = false;
  const rest = (race: number): number => lows.slice(race).reduce((sum, cap) => sum + cap, 0);
  const go = (caps: readonly number[], sum: number): void => {
    const race = caps.length;
    if (race === lows.length) {
      kept = sum < best ? [caps] : [...kept, caps];
      best = sum;
      return;
    }
    const others = rest(race + 1);
    for (let from = lows[race]!; sum + from + others <= best;) {
      cut ||= solver.spent();
      if (cut && best < Infinity) return;
      // Races to come may take what this one and the least of the others leave.
      const spare = best - sum - from - others;
      const ahead = lows.slice(race + 1).map((cap) => cap + spare);
      const found = leastCap(lengths[race]!, from, best - sum - others, (cap) => reaches([...caps, cap, ...ahead]));
      if (found === undefined) return;
      go([...caps, found], sum + found);
      const next = lengths[race]!.find((length) => length > found);
      if (next === undefined) return;
      from = next;
    }
  };
  go([], 0);
  return { sum: best, caps: kept, cut };
}

/** Where the value of some choices stands in a table of these variables. */
const placeIn = ({ sizes }: Pick<Problem, 'sizes'>, vars: readonly number[], choices: readonly number[]): number =>
  vars.reduce((index, v) => index * sizes[v]! + choices[v]!, 0);

type Score = readonly [findings: number, longest: number, rest: number];

/** Findings, sum of longest legs, and all else, of one combination. */
export function scoreOf({ sizes, factors, legs, races }: Problem, choices: readonly number[]): Score {
  const at = (vars: readonly number[]): number => placeIn({ sizes }, vars, choices);
  const cost = factors.reduce((sum, { vars, values }) => sum + values[at(vars)]!, 0);
  const longest = Array.from({ length: races }, () => 0);
  for (const { race, vars, values } of legs) longest[race] = Math.max(longest[race]!, values[at(vars)]!);
  return [findingsIn(cost), longest.reduce((a, b) => a + b, 0), cost];
}

export const isBetter = (a: Score, b: Score): boolean => {
  const k = a.findIndex((value, index) => value !== b[index]);
  return k >= 0 && a[k]! < b[k]!;
};

/** Changes one choice at a time as long as that betters. */
function descend(problem: Problem, start: readonly number[], stop?: () => boolean): readonly number[] {
  const own = ownFactors(problem);
  const costOf = (v: number, choices: readonly number[]): number =>
    own[v]!.reduce((sum, factor) => sum + factor.values[placeIn(problem, factor.vars, choices)]!, 0);
  let best = start;
  let score = scoreOf(problem, best);
  let again = true;
  while (again) {
    if (stop?.() === true) break;
    again = false;
    for (const [v, size] of problem.sizes.entries()) {
      let present = costOf(v, best);
      for (let x = 0; x < size; x++) {
        const other = best.with(v, x);
        // One finding more outweighs all else: the whole need not be looked at.
        if (costOf(v, other) - present > FINDINGS / 2) continue;
        const one = scoreOf(problem, other);
        if (!isBetter(one, score)) continue;
        best = other;
        score = one;
        present = costOf(v, best);
        again = true;
      }
    }
  }
  return best;
}

/** The factors that each variable is in. */
function ownFactors({ sizes, factors }: Problem): readonly (readonly Factor[])[] {
  const own: Factor[][] = sizes.map(() => []);
  for (const factor of factors) for (const v of factor.vars) own[v]!.push(factor);
  return own;
}
