import { expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import { ORIGIN, generator, turtle, turtlePoints, courseThrough } from '../testing/courses.ts';
import { disturbed, gaussian, placedDocument } from '../testing/placed.ts';
import { layoutOf } from '../testing/plans.ts';
import { pointAt } from '../course/locate.ts';
import { type Verdict, reviewPlaced } from './placed.ts';
import { decide } from './placedVerdict.ts';

// The house's limits, 90 to 110 yd: common practice, no source.
const LOW = 82.296;
const HIGH = 100.584;

it('holds inside by the margin, fails outside by it, and cannot tell between (JCGM 106:2012, guard bands)', () => {
  const at = (measured: number): Verdict => decide(measured, [80, 100], 4);
  expect([75.9, 76, 76.1, 80, 83.9, 84, 90, 96, 96.1, 100, 103.9, 104, 104.1].map(at)).toEqual([
    'fails',
    'fails',
    'cannot tell',
    'cannot tell',
    'cannot tell',
    'holds',
    'holds',
    'holds',
    'cannot tell',
    'cannot tell',
    'cannot tell',
    'fails',
    'fails',
  ]);
});

it('exact positions are told at the limit itself, and nothing holds where the margin is larger than the tolerance', () => {
  expect([79.99, 80, 100, 100.01].map((measured) => decide(measured, [80, 100], 0))).toEqual([
    'fails',
    'holds',
    'holds',
    'fails',
  ]);
  expect([70, 90, 110.9, 111.1].map((measured) => decide(measured, [80, 100], 11))).toEqual([
    'cannot tell',
    'cannot tell',
    'cannot tell',
    'fails',
  ]);
});

interface Case {
  readonly truth: number;
  readonly r95: number;
  readonly verdict: Verdict;
}

interface Trial {
  readonly layout: Layout;
  readonly seed: number;
  /** True distances are drawn from here, metres. */
  readonly between: readonly [number, number];
  readonly r95: readonly [number, number];
  /** Whether the table is recorded; else the plan's pin is off by `pinR95`, and the sign stands where the true table asks for it. */
  readonly table: boolean;
}

/** Signs placed at known distances before the table, then recorded with normal errors at both ends. */
function trial({ layout, seed, between, r95: [least, most], table }: Trial, count: number): Case[] {
  const uniform = generator(seed);
  const normal = gaussian(seed + 1);
  const { course } = layout.courses[0]!;
  const on = (measure: number): LonLat => pointAt(course, measure, -5)!.at;
  const pin = layout.stations[0]!.directions[0]!.measure;
  const { pinR95 } = layout.plan.practice;
  return Array.from({ length: count }, () => {
    const truth = between[0] + uniform() * (between[1] - between[0]);
    const r95 = least + uniform() * (most - least);
    const shift = table ? 0 : (normal() * pinR95) / 2.4477;
    const sign = { name: 's1 sign', at: disturbed(on(pin + shift - truth), r95, normal), hdop: r95 / 5 };
    const tables = table ? [{ name: 's1 water', at: disturbed(on(pin), r95, normal), hdop: r95 / 5 }] : [];
    const { verdict } = reviewPlaced(layout, placedDocument([sign, ...tables])).verdicts[0]!;
    return { truth, r95, verdict };
  });
}

/** Shares of wrong and of undecided answers. */
function rates(cases: readonly Case[]): { outsideHolds: number; insideFails: number; undecided: number } {
  const inside = cases.filter(({ truth }) => truth >= LOW && truth <= HIGH);
  const outside = cases.filter(({ truth }) => truth < LOW || truth > HIGH);
  const share = (of: readonly Case[], verdict: Verdict): number =>
    of.filter((one) => one.verdict === verdict).length / of.length;
  return {
    outsideHolds: share(outside, 'holds'),
    insideFails: share(inside, 'fails'),
    undecided: share(cases, 'cannot tell'),
  };
}

const straight = layoutOf(
  [turtle(ORIGIN, [[90, 3000]], 50)],
  [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, serves: ['water'] }],
);
/** Bends of 60 m radius to either side, one of them between sign and table. */
const bent = layoutOf(
  [
    courseThrough(
      turtlePoints(
        ORIGIN,
        [[90, 1400], ...Array.from({ length: 24 }, (_, k) => [90 + 60 * Math.sin(k / 3.8), 10] as const), [90, 1000]],
        10,
      ),
    ),
  ],
  [{ on: { course: 'c', measure: 1560, side: 'right', offset: 5 }, serves: ['water'] }],
);

it('of 1,000 random placements at most 5 in 100 outside read holds, and at most 5 in 100 inside read fails', () => {
  for (const [layout, seed] of [
    [straight, 1],
    [bent, 2],
  ] as const) {
    const { outsideHolds, insideFails, undecided } = rates(
      trial({ layout, seed, between: [62, 122], r95: [1, 10], table: true }, 1000),
    );
    expect(outsideHolds).toBeLessThanOrEqual(0.05);
    expect(insideFails).toBeLessThanOrEqual(0.05);
    expect(undecided).toBeLessThan(0.6);
  }
});

it('the same within 2 m outside and inside of the limits, where it is hardest', () => {
  for (const [k, middle] of [LOW, HIGH].entries()) {
    const { outsideHolds, insideFails } = rates(
      trial({ layout: straight, seed: 30 + k, between: [middle - 2, middle + 2], r95: [1, 10], table: true }, 2000),
    );
    expect(outsideHolds).toBeLessThanOrEqual(0.05);
    expect(insideFails).toBeLessThanOrEqual(0.05);
    // Were the errors of both ends not combined, or k too large, this would be far from 5 in 100.
    expect(outsideHolds + insideFails).toBeGreaterThan(0.01);
  }
});

it('the same where the table is known from the plan only, with the error of its pin', () => {
  const { outsideHolds, insideFails } = rates(
    trial({ layout: straight, seed: 50, between: [72, 112], r95: [1, 10], table: false }, 1000),
  );
  expect(outsideHolds).toBeLessThanOrEqual(0.05);
  expect(insideFails).toBeLessThanOrEqual(0.05);
});

it('with errors of 1 m nearly every placement is told', () => {
  const cases = trial({ layout: straight, seed: 60, between: [62, 122], r95: [1, 1], table: true }, 1000);
  expect(rates(cases).undecided).toBeLessThan(0.1);
  expect(cases.filter(({ verdict }) => verdict === 'holds').length).toBeGreaterThan(200);
  expect(cases.filter(({ verdict }) => verdict === 'fails').length).toBeGreaterThan(500);
});
