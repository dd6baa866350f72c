import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generator } from '../testing/courses.ts';
import { type Factor, eliminationOrder, minimise } from './eliminate.ts';
import { FINDINGS, type LegTable, type Problem, isBetter, scoreOf, search } from './search.ts';
import { tries } from '../testing/tries.ts';

const EFFORT = { steps: 1e6, runs: 10_000 };

/** All combinations of choices. */
const combinations = (sizes: readonly number[]): number[][] =>
  sizes.reduce<number[][]>(
    (all, size) => all.flatMap((one) => Array.from({ length: size }, (_, x) => [...one, x])),
    [[]],
  );

/** Small whole numbers, so that ties are frequent; a few combinations forbidden. */
function problemFrom(seed: number, stations: number, races: number): Problem {
  const random = generator(seed);
  const below = (most: number): number => Math.floor(random() * most);
  const sizes = Array.from({ length: stations }, () => 1 + below(4));
  const scopes = [
    ...sizes.map((_, v) => [v]),
    ...sizes.flatMap((_, v) => sizes.flatMap((_other, u) => (u > v && random() < 0.6 ? [[v, u]] : []))),
  ];
  const table = (vars: readonly number[], value: () => number): Factor => ({
    vars,
    values: Float64Array.from({ length: vars.reduce((all, v) => all * sizes[v]!, 1) }, value),
  });
  const cost = (): number => (random() < 0.05 ? Infinity : below(3) * FINDINGS + below(50));
  const legs = Array.from({ length: races }, (_, race) =>
    [...scopes.filter(() => random() < 0.6), scopes[0]!].map((vars): LegTable => ({
      race,
      ...table(vars, () => below(8)),
    })),
  ).flat();
  return { sizes, factors: scopes.map((vars) => table(vars, cost)), legs, races };
}

describe('minimise', () => {
  it('finds the least sum that trying all combinations finds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 1, max: 5 }), (seed, stations) => {
        const { sizes, factors } = problemFrom(seed, stations, 0);
        const sumOf = (choices: readonly number[]): number =>
          factors.reduce(
            (sum, { vars, values }) => sum + values[vars.reduce((at, v) => at * sizes[v]! + choices[v]!, 0)]!,
            0,
          );
        const least = Math.min(...combinations(sizes).map(sumOf));
        const found = minimise(
          sizes,
          factors,
          eliminationOrder(
            sizes,
            factors.map(({ vars }) => vars),
          ),
        );
        expect(found?.value ?? Infinity).toBe(least);
        if (found !== null) expect(sumOf(found.choices)).toBe(least);
      }),
      { seed: 20_270_912, numRuns: tries(300) },
    );
  });

  it('takes a chain in as many steps as its neighbours have pairs of choices', () => {
    const sizes = Array.from({ length: 10 }, () => 41);
    const chain = sizes.slice(1).map((_, k) => [k, k + 1]);
    expect(eliminationOrder(sizes, chain).steps).toBe(9 * 41 * 41 + 41);
    // One more race that leaves stations out makes a circle.
    expect(eliminationOrder(sizes, [...chain, [2, 7]]).steps).toBeLessThan(6 * 41 ** 3);
  });

  it('takes the first of equal choices', () => {
    const flat: Factor = { vars: [0, 1], values: new Float64Array(9) };
    expect(minimise([3, 3], [flat], eliminationOrder([3, 3], [[0, 1]]))?.choices).toEqual([0, 0]);
  });
});

describe('search', () => {
  it.each([1, 2, 3])(
    'finds, with %i races, the findings, then longest legs, then the rest that trying all combinations finds',
    (races) => {
      fc.assert(
        fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 1, max: 5 }), (seed, stations) => {
          const problem = problemFrom(seed, stations, races);
          const scores = combinations(problem.sizes).map((choices) => scoreOf(problem, choices));
          const best = scores.reduce((a, b) => (isBetter(b, a) ? b : a));
          const found = search(problem, EFFORT);
          if (found === null) {
            expect(best[0]).toBe(Infinity);
            return;
          }
          expect(scoreOf(problem, found.choices)).toEqual(best);
          expect(found).toMatchObject({ exact: true, bound: { findings: best[0], longest: best[1] } });
        }),
        { seed: 20_270_913, numRuns: tries(300) },
      );
    },
  );

  it('gives a bound that no combination is below where it may not take the steps, and says that it is no proof', () => {
    const seen = { exact: 0, loose: 0 };
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 4, max: 40 }), (seed, steps) => {
        const problem = problemFrom(seed, 5, 2);
        const scores = combinations(problem.sizes).map((choices) => scoreOf(problem, choices));
        const best = scores.reduce((a, b) => (isBetter(b, a) ? b : a));
        const found = search(problem, { steps, runs: 10_000 });
        if (found === null || best[0] === Infinity) return;
        seen[found.exact ? 'exact' : 'loose']++;
        const { findings, longest } = found.bound;
        expect(findings).toBeLessThanOrEqual(best[0]);
        if (findings === best[0]) expect(longest).toBeLessThanOrEqual(best[1]);
        const present = scoreOf(
          problem,
          problem.sizes.map(() => 0),
        );
        expect(isBetter(present, scoreOf(problem, found.choices))).toBe(false);
        expect(isBetter(scoreOf(problem, found.choices), best)).toBe(false);
      }),
      { seed: 20_270_914, numRuns: 200 },
    );
    expect(seen.loose).toBeGreaterThan(50);
  });

  it('keeps its bound true where couplings that take findings away are left out', () => {
    let lowered = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.constantFrom(1, 8, 20, 60, 6e7), (seed, steps) => {
        const given = problemFrom(seed, 5, 2);
        const random = generator(seed + 1);
        // Two stations next to each other may share a finding: together they have fewer than each by itself.
        const factors = given.factors.map((factor) =>
          factor.vars.length === 2
            ? { ...factor, values: factor.values.map((value) => value - Math.floor(random() * 4) * FINDINGS) }
            : { ...factor, values: factor.values.map((value) => value + 9 * FINDINGS) },
        );
        const problem = { ...given, factors };
        const scores = combinations(problem.sizes).map((choices) => scoreOf(problem, choices));
        const best = scores.reduce((a, b) => (isBetter(b, a) ? b : a));
        const found = search(problem, { steps, runs: 10_000 });
        if (found === null || best[0] === Infinity) return;
        const { findings, longest } = found.bound;
        if (found.exact) {
          expect([findings, longest]).toEqual([best[0], best[1]]);
          expect(scoreOf(problem, found.choices)).toEqual(best);
        } else lowered++;
        expect(findings).toBeLessThanOrEqual(best[0]);
        if (findings === best[0]) expect(longest).toBeLessThanOrEqual(best[1]);
      }),
      { seed: 20_270_915, numRuns: 200 },
    );
    expect(lowered).toBeGreaterThan(50);
  });

  it('keeps its bound true where the runs give out', () => {
    let cut = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const problem = problemFrom(seed, 5, 3);
      const all = combinations(problem.sizes).map((choices) => scoreOf(problem, choices));
      const best = all.reduce((a, b) => (isBetter(b, a) ? b : a));
      const found = search(problem, { steps: 1e6, runs: 12 });
      if (found === null || found.exact) continue;
      cut++;
      expect(found.bound.findings).toBe(best[0]);
      expect(found.bound.longest).toBeLessThanOrEqual(best[1]);
    }
    expect(cut).toBeGreaterThan(10);
  });

  it('gives nothing once it is told to stop', () => {
    expect(search(problemFrom(5, 4, 2), { ...EFFORT, stop: () => true })).toBeNull();
  });
});

/** The order found by looking at every variable and every scope again each time. */
function plainOrder(sizes: readonly number[], scopes: readonly (readonly number[])[]): readonly number[] {
  let open = scopes;
  const left = new Set(sizes.keys());
  const order: number[] = [];
  const around = (v: number): number[] => [...new Set([v, ...open.filter((scope) => scope.includes(v)).flat()])];
  const table = (v: number): number => around(v).reduce((all, u) => all * sizes[u]!, 1);
  while (left.size > 0) {
    const next = [...left].reduce((best, v) => (table(v) < table(best) ? v : best));
    const scope = around(next).filter((v) => v !== next);
    open = [...open.filter((one) => !one.includes(next)), scope];
    left.delete(next);
    order.push(next);
  }
  return order;
}

describe('the order of elimination', () => {
  it('is that found by looking at everything again each time', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 12 }),
        fc.array(fc.tuple(fc.nat(11), fc.nat(11)), { maxLength: 30 }),
        (sizes, pairs) => {
          const scopes = pairs.filter(([a, b]) => a < b && b < sizes.length).map(([a, b]): readonly number[] => [a, b]);
          expect(eliminationOrder(sizes, scopes).vars).toEqual(plainOrder(sizes, scopes));
        },
      ),
      { seed: 5, numRuns: tries(500) },
    );
  });
});

describe('many stations on one stretch', () => {
  it('are searched within the steps given, some couplings left out', () => {
    const random = generator(3);
    const sizes = Array.from({ length: 160 }, () => 12);
    const factors = sizes.flatMap((_, v) =>
      [1, 2, 3, 4].flatMap((ahead): Factor[] =>
        v + ahead < sizes.length
          ? [
              {
                vars: [v, v + ahead],
                values: Float64Array.from({ length: 144 }, () => Math.floor(random() * 3) * FINDINGS),
              },
            ]
          : [],
      ),
    );
    let polls = 0;
    const stop = (): boolean => {
      polls++;
      return false;
    };
    const problem: Problem = { sizes, factors, legs: [], races: 0 };
    const found = search(problem, { steps: 300_000, runs: 20, stop })!;
    expect(found.exact).toBe(false);
    expect(found.choices).toHaveLength(160);
    expect(polls).toBeLessThan(200);
    // Each choice by itself is as good as it can be beside the others.
    const score = scoreOf(problem, found.choices);
    for (let v = 0; v < 160; v += 13)
      for (let x = 0; x < 12; x++) expect(isBetter(scoreOf(problem, found.choices.with(v, x)), score)).toBe(false);
    expect(score[0]).toBeGreaterThanOrEqual(found.bound.findings);
  });
});
