import { describe, expect, it } from 'vitest';
import { linearAt, listAt, lognormalAt, normalQuantile, timesByRank } from './finishTimes.ts';

describe('finish times by rank', () => {
  // M. Wichura, "Algorithm AS 241", Appl. Stat. 37 (1988), as in Python's statistics.NormalDist().inv_cdf.
  it('the normal quantile has its tabled values', () => {
    const table = [
      [0.5, 0],
      [0.25, -0.6744897501960817],
      [0.1, -1.2815515655446008],
      [0.001, -3.090232306167813],
      [1e-6, -4.753424308822899],
      [0.9, 1.2815515655446008],
      [0.975, 1.9599639845400536],
      [0.999999, 4.753424308822899],
    ] as const;
    for (const [p, z] of table) expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(1e-8);
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
    expect(() => normalQuantile(1.5)).toThrow(/found the probability 1\.5/u);
  });

  it('a list is met exactly by as many runners as it has times, in any order', () => {
    expect([...timesByRank(4, listAt([300, 100, 400, 200]))]).toEqual([100, 200, 300, 400]);
  });

  // Type 5 of Hyndman and Fan (1996), as in R's quantile(c(100, 200, 400), c(.25, .5, .75), type = 5).
  it('a list is taken linear between its plotting positions and never beyond its ends', () => {
    expect([0, 0.25, 0.5, 0.75, 1].map(listAt([100, 200, 400]))).toEqual([100, 125, 200, 350, 400]);
    expect([...timesByRank(3, listAt([50]))]).toEqual([50, 50, 50]);
  });

  it('quantiles are linear between', () => {
    expect([0, 0.1, 0.5, 0.75, 1].map((share) => linearAt([0, 0.5, 1], [100, 200, 400], share))).toEqual([
      100, 120, 200, 300, 400,
    ]);
  });

  it('log-normal times have their median, their spread and as many below as above', () => {
    const times = timesByRank(20_001, lognormalAt(14_400, 0.2));
    expect(times[10_000]).toBeCloseTo(14_400, 6);
    const logs = [...times].map((time) => Math.log(time / 14_400));
    expect(logs.reduce((sum, log) => sum + log, 0)).toBeCloseTo(0, 6);
    expect(Math.sqrt(logs.reduce((sum, log) => sum + log * log, 0) / logs.length)).toBeCloseTo(0.2, 4);
  });

  it('without spread everybody takes the median', () => {
    expect([...timesByRank(3, lognormalAt(3600, 0))]).toEqual([3600, 3600, 3600]);
  });
});
