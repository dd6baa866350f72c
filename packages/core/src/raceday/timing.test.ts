import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RaceArrivals } from './day.ts';
import { generator } from '../testing/courses.ts';
import { busiest, mergedTimes, perMinuteOf, quantile, quantilesOf } from './timing.ts';

const race = (id: string, times: readonly number[]): RaceArrivals => ({
  race: id,
  division: 'run',
  times: Float64Array.from(times).sort(),
  out: 0,
});

const someRaces = fc
  .array(fc.array(fc.integer({ min: 28_000, max: 32_000 }), { maxLength: 40 }), { minLength: 1, maxLength: 3 })
  .map((lists) => lists.map((times, k) => race(`r${k}`, times)));

describe('Sums over arrival times', () => {
  it('takes quantiles at (i − ½)/N, as definition 5 of Hyndman and Fan (1996) has them', () => {
    // By hand from the definition: x at N·p + ½. R names it quantile(type = 5), numpy "hazen".
    const ten = Float64Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect([0, 0.05, 0.1, 0.25, 0.5, 0.9, 1].map((share) => quantile(ten, share))).toEqual([
      1, 1, 1.5, 3, 5.5, 9.5, 10,
    ]);
    expect(quantilesOf(Float64Array.of(7))).toEqual({ first: 7, p10: 7, p50: 7, p90: 7, last: 7 });
    expect(quantilesOf(new Float64Array(0))).toBeNull();
  });

  it('counts every clock minute between the first arrival and the last, also those without any', () => {
    expect(perMinuteOf([race('m', [32_459.9, 32_400, 32_580]), race('h', [])])).toEqual([
      [32_400, { m: 2, h: 0 }],
      [32_460, { m: 0, h: 0 }],
      [32_520, { m: 0, h: 0 }],
      [32_580, { m: 1, h: 0 }],
    ]);
  });

  it('leaves out the end of the sliding minute', () => {
    expect(busiest([race('m', [0, 59.999, 60, 61])], 60, () => 1)).toEqual({ sum: 3, at: 59.999 });
    expect(busiest([race('m', [0, 60])], 60, () => 1)).toEqual({ sum: 1, at: 0 });
    expect(busiest([], 60, () => 1)).toBeNull();
  });

  it('finds the same of many races as counting every window of every race does', () => {
    const next = generator(11);
    for (let round = 0; round < 20; round++) {
      const races = Array.from({ length: 9 + Math.floor(next() * 20) }, (_, k) =>
        race(
          `r${k}`,
          Array.from({ length: Math.floor(next() * 30) }, () => Math.floor(next() * 900)).sort((a, b) => a - b),
        ),
      );
      const weights = new Map(races.map(({ race: id }) => [id, 0.1 + Math.floor(next() * 20) / 7]));
      const weightOf = ({ race: id }: { readonly race: string }): number => weights.get(id)!;
      const sums = races
        .flatMap(({ times }) => Array.from(times))
        .sort((a, b) => a - b)
        .map((at) => ({
          at,
          sum: races.reduce(
            (sum, one) => sum + one.times.filter((time) => time >= at && time < at + 60).length * weightOf(one),
            0,
          ),
        }));
      const found = busiest(races, 60, weightOf)!;
      const most = Math.max(...sums.map(({ sum }) => sum));
      expect(found.sum).toBeCloseTo(most, 9);
      expect(sums.find(({ sum }) => sum > most - 1e-9)!.at).toBe(found.at);
    }
  });

  it('finds the same busiest minute as a count from every arrival, and loses nobody by the minute', () => {
    fc.assert(
      fc.property(someRaces, (races) => {
        const all = [...mergedTimes(races)];
        const sums = all.map((at) => all.filter((time) => time >= at && time < at + 60).length);
        expect(busiest(races, 60, () => 1)?.sum ?? -Infinity).toBe(Math.max(...sums));
        const counted = perMinuteOf(races).reduce(
          (sum, [, counts]) => sum + Object.values(counts).reduce((a, b) => a + b, 0),
          0,
        );
        expect(counted).toBe(all.length);
      }),
      { seed: 41, numRuns: 200 },
    );
  });
});
