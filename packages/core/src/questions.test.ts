import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Analysis } from './analyse.ts';
import { etaAt, nextStation, runnersAt } from './questions.ts';
import { OUT_AND_BACK, STRAIGHT, analysisOf, runners } from './testing/analyses.ts';
import { real } from './testing/numbers.ts';
import { tries } from './testing/tries.ts';
import { plainDay } from './testing/questions.ts';

const on = (measure: number): { on: { course: string; measure: number; side: 'right'; offset: number } } => ({
  on: { course: 'c', measure, side: 'right', offset: 5 },
});
const EIGHT = 8 * 3600;
const waves = [
  { time: EIGHT, entrants: 70 },
  { time: EIGHT + 600, entrants: 50 },
];
const dayOf = (keys: Parameters<typeof runners>[1] = {}): Analysis =>
  analysisOf(OUT_AND_BACK, [{ ...on(1000), passes: 'all' }, on(2500)], {
    races: [runners(0, { waves, finish: { median: 2700, spread: 0.3 }, ...keys })],
  });
const plain = dayOf();
const swept = dayOf({ cutoff: EIGHT + 3000 });
const hilly = analysisOf(
  OUT_AND_BACK.map(([lon, lat], k) => [lon, lat, 30 * Math.sin(k / 4)] as unknown as (typeof OUT_AND_BACK)[number]),
  [on(1200), on(4000)],
  { races: [runners(0, { waves, gradient: true, finish: { median: 2700, spread: 0.3 } })] },
);

describe('the next station', () => {
  it('is the first served pass ahead, pass by pass on an out-and-back', () => {
    const asked = [0, 999, 1001, 2600, 5001].map((measure) => nextStation(plain, 'm', measure));
    expect(asked.map((next) => next && [next.station, Math.round(next.measure), next.pass])).toEqual([
      ['s1', 1000, 0],
      ['s1', 1000, 0],
      ['s2', 2500, 0],
      ['s1', 5000, 1],
      null,
    ]);
    expect(asked[1]!.ahead).toBeCloseTo(1, 4);
  });

  it('is the end of the leg of the spacing in which a runner is', () => {
    const { legs } = plain.spacing[0]!;
    fc.assert(
      fc.property(real(-100, 6100), (measure) => {
        const next = nextStation(plain, 'm', measure);
        expect(next?.station ?? 'finish').toBe(legs.find(({ end }) => end > measure)?.to ?? 'finish');
        if (next !== null) expect(next.ahead).toBe(next.measure - measure);
      }),
      { numRuns: tries(300), seed: 14 },
    );
  });

  it('is none for NaN, and a race that is not there is told with those that are', () => {
    expect(nextStation(plain, 'm', NaN)).toBeNull();
    expect(() => nextStation(plain, 'x', 0)).toThrow(new RangeError('no "x" among "m"'));
  });
});

describe('the time at a place', () => {
  it('of a station is that of its race day', () => {
    const { quantiles } = plain.day!.stations[1]!;
    const at = (share: number): number | null => etaAt(plain, 'm', share, nextStation(plain, 'm', 2000)!.measure);
    expect([at(0), at(0.1), at(0.5), at(0.9), at(1)]).toEqual([
      quantiles!.first,
      quantiles!.p10,
      quantiles!.p50,
      quantiles!.p90,
      quantiles!.last,
    ]);
  });

  it('never falls with the share nor along the course', () => {
    fc.assert(
      fc.property(real(0, 1), real(0, 1), real(0, 6000), real(0, 6000), (p, q, a, b) => {
        const [low, high, near, far] = [Math.min(p, q), Math.max(p, q), Math.min(a, b), Math.max(a, b)];
        expect(etaAt(plain, 'm', high, near)!).toBeGreaterThanOrEqual(etaAt(plain, 'm', low, near)!);
        expect(etaAt(plain, 'm', p, far)!).toBeGreaterThanOrEqual(etaAt(plain, 'm', p, near)!);
      }),
      { numRuns: tries(300), seed: 14 },
    );
  });

  it('is none off the course and without a field; what is no share and no analysis throws', () => {
    for (const measure of [-1, 6001, NaN]) expect(etaAt(plain, 'm', 0.5, measure)).toBeNull();
    expect(etaAt(analysisOf(STRAIGHT, [on(1000)]), 'm', 0.5, 100)).toBeNull();
    for (const share of [-0.1, 1.1, NaN]) expect(() => etaAt(plain, 'm', share, 100)).toThrow(RangeError);
    const { kept: _, ...bare } = plain;
    expect(() => etaAt(bare, 'm', 0.5, 100)).toThrow('expected what analyse');
  });
});

describe('who is where', () => {
  it.each<[string, Analysis]>([
    ['without a sweep', plain],
    ['with one', swept],
    ['on hills', hilly],
  ])('adds up at every time: started are on the road, finished or stopped, %s', (_, analysis) => {
    fc.assert(
      fc.property(real(EIGHT - 600, EIGHT + 9000), (time) => {
        const [race] = runnersAt(analysis, time);
        expect(race!.waiting + race!.started).toBe(120);
        expect(race!.onRoad + race!.finished + race!.stopped).toBe(race!.started);
        expect(race!.stretches.reduce((sum, { runners: count }) => sum + count, 0)).toBe(race!.onRoad);
      }),
      { numRuns: tries(300), seed: 14 },
    );
  });

  it('is what a count of each runner by hand gives', () => {
    for (const analysis of [plain, swept])
      for (let time = EIGHT - 60; time < EIGHT + 6000; time += 97)
        expect(runnersAt(analysis, time, 'm')[0]).toEqual(plainDay(analysis, time));
  });

  it('at last has everybody home or stopped, and those who were stopped are the ones that race day leaves out', () => {
    expect(runnersAt(plain, EIGHT + 36_000)[0]).toMatchObject({ waiting: 0, onRoad: 0, finished: 120, stopped: 0 });
    const [end] = runnersAt(swept, EIGHT + 36_000);
    const home = swept.day!.stations[0]!.races[0]!;
    expect(end!.stopped).toBeGreaterThan(0);
    expect(end!.finished + end!.stopped).toBe(120);
    expect(home.arrivals).toBeLessThan(240);
    expect(runnersAt(dayOf({ cutoff: EIGHT + 3000, late: 'served' }), EIGHT + 36_000)[0]!.stopped).toBe(0);
  });

  it('names the stretches by what they lie between, start to finish', () => {
    const [race] = runnersAt(plain, EIGHT + 900);
    expect(race!.stretches.map(({ from, to, along }) => [from, to, along.map(Math.round)])).toEqual([
      ['start', 's1', [0, 1000]],
      ['s1', 's2', [1000, 2500]],
      ['s2', 's1', [2500, 5000]],
      ['s1', 'finish', [5000, 6000]],
    ]);
  });

  it('leaves out races without a field, and throws for what is no time and no race', () => {
    expect(runnersAt(analysisOf(STRAIGHT, [on(1000)]), EIGHT)).toEqual([]);
    expect(() => runnersAt(plain, NaN)).toThrow(RangeError);
    expect(() => runnersAt(plain, EIGHT, 'x')).toThrow('no "x" among "m"');
  });
});
