/** That arrivals have no steps where the plan gives finish times by a few shares. */
import { describe, expect, it } from 'vitest';
import { inSeconds, passAt, raceWith } from '../testing/fields.ts';
import { valueOf } from '../testing/courses.ts';
import { arrivalsAt, runRace } from './arrivals.ts';
import { fieldOf } from './field.ts';

/** The half marathon of the demo, a hundred times over in one wave: shares and minutes. */
const HALF = [
  [0, 68],
  [0.1, 95],
  [0.5, 124],
  [0.9, 158],
  [1, 205],
] as const;
const STARTERS = 162_000;

const race = raceWith({
  waves: [{ time: 0, entrants: STARTERS }],
  finish: { quantiles: inSeconds(HALF) },
  show: 1,
  startFlow: Infinity,
});
const field = valueOf(fieldOf(race, 21_097.5, new Map()));

/** The greatest jump between neighbouring spans of so many seconds, of the most in a span; without both ends, which are cut. */
function jumpOf(measure: number, span: number): number {
  const [at] = arrivalsAt([{ id: 's1', passes: [passAt(measure)] }], [runRace(field, [0, 21_097.5], null, null)]);
  const { times } = at!.races[0]!;
  expect(times).toHaveLength(STARTERS);
  const first = Math.floor(times[0]! / span);
  const counts = Array.from({ length: Math.floor(times.at(-1)! / span) - first + 1 }, () => 0);
  for (const time of times) counts[Math.floor(time / span) - first]!++;
  const jumps = counts.slice(2, -1).map((count, k) => Math.abs(count - counts[k + 1]!));
  return Math.max(...jumps) / Math.max(...counts);
}

describe('arrivals of a field that is given by five shares', () => {
  // Straight lines between the shares jump by half of it and more, however short the span.
  it.each([5000, 10_000, 15_000, 20_000, 21_097.5])('have no step at %d m: jumps shrink with the span', (measure) => {
    const minute = (60 * measure) / 21_097.5;
    const [whole, quarter] = [jumpOf(measure, minute), jumpOf(measure, minute / 4)];
    expect(whole).toBeLessThan(0.1);
    expect(quarter).toBeLessThan(0.4 * whole);
  });

  it('still meet every given time', () => {
    for (const [share, minutes] of HALF.slice(1, -1))
      expect(Math.abs(field.finish[Math.round(share * STARTERS)]! / 60 / minutes - 1)).toBeLessThan(1e-3);
  });
});
