/** The checks of speeds, of the order of waves, and of the crowd on the road. */
import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { Layout } from '../layout/layout.ts';
import type { FinishTimes, PlanRace, PlanStation } from '../plan/plan.ts';
import { mostRunners, runnersBetween } from '../raceday/crowd.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { factsOf, layoutOf, planRace } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { crowdedRoad } from './crowdedRoad.ts';
import { slowWaveFirst } from './slowWaveFirst.ts';
import { bestOver, speedImpossible } from './speedImpossible.ts';

const H = 3600;
const MIN = 60;
const road = turtle(ORIGIN, [[90, 12_000]], 200);
const on = (measure: number, keys: Partial<PlanStation> = {}): Partial<PlanStation> => ({
  on: { course: 'c', measure, side: 'right', offset: 5 },
  ...keys,
});
const about = (median: number): FinishTimes => ({
  quantiles: [
    [0, median - 60],
    [1, median + 60],
  ],
});
const race = (id: string, keys: Partial<PlanRace> = {}): PlanRace => ({
  ...planRace(id, 'c'),
  waves: [{ time: 8 * H, entrants: 100 }],
  finish: about(60 * MIN),
  show: 1,
  slow: [0, 0],
  ...keys,
});
const found = (
  check: Check,
  races: readonly PlanRace[],
  stations: readonly Partial<PlanStation>[] = [],
  courses: readonly Course[] = [road],
): readonly Finding[] => {
  const layout: Layout = layoutOf(courses, stations, { races });
  return check.find(layout, factsOf(layout));
};

describe('slow-wave-first', () => {
  const slow = race('slow', { finish: about(80 * MIN) });
  const fast = (time: number, finish: number = 60): PlanRace =>
    race('fast', { waves: [{ time, entrants: 100 }], finish: about(finish * MIN) });

  it('is a warning where a faster race starts less than a quarter of an hour behind a slower one', () => {
    expect(found(slowWaveFirst, [slow, fast(8 * H + 5 * MIN)])).toEqual([
      expect.objectContaining({
        code: 'slow-wave-first',
        severity: 'warning',
        where: { path: '/races/0', race: 'slow' },
        measured: expect.closeTo(80 / 60, 3),
      }),
    ]);
    // 200 m on, where they are compared, the faster has caught up by 19 seconds.
    expect(found(slowWaveFirst, [slow, fast(8 * H + 15 * MIN + 25)])).toEqual([]);
    expect(found(slowWaveFirst, [slow, fast(8 * H + 15 * MIN + 15)])).toHaveLength(1);
  });

  it('is silent where the faster starts first, or is faster by less than a tenth', () => {
    expect(found(slowWaveFirst, [slow, fast(8 * H - 5 * MIN)])).toEqual([]);
    expect(found(slowWaveFirst, [slow, fast(8 * H + 5 * MIN, 73)])).toEqual([]);
    expect(found(slowWaveFirst, [slow, fast(8 * H + 5 * MIN, 72.5)])).toHaveLength(1);
  });

  it('looks at the waves of one race too, which are seeded unless each has its own times', () => {
    const waves = [
      { time: 8 * H, entrants: 100 },
      { time: 8 * H + 5 * MIN, entrants: 100 },
    ];
    expect(found(slowWaveFirst, [race('r', { waves, finish: { median: 60 * MIN, spread: 0.2 } })])).toEqual([]);
    const own = waves.map((wave, k) => ({ ...wave, finish: about((k === 0 ? 80 : 60) * MIN) }));
    expect(found(slowWaveFirst, [race('r', { waves: own })])).toHaveLength(1);
  });

  it('is silent where the two have no road in common', () => {
    const other = turtle(from(ORIGIN, 0, 100), [[90, 12_000]], 200, 'd');
    const races = [slow, { ...fast(8 * H + 5 * MIN), course: 'd' }];
    expect(found(slowWaveFirst, races, [], [road, other])).toEqual([]);
    const same = turtle(from(ORIGIN, 0, 10), [[90, 12_000]], 200, 'd');
    expect(found(slowWaveFirst, races, [], [road, same])).toHaveLength(1);
  });

  it('needs two waves', () => {
    expect(slowWaveFirst.missing!(layoutOf([road], [], { races: [slow] }))).toBe('one-wave');
  });
});

describe('speed-impossible', () => {
  /** All finish within two minutes around a time. */
  const speeds = (minutes: number, keys: Partial<PlanRace> = {}): string[] =>
    found(speedImpossible, [race('r', { finish: about(minutes * MIN), ...keys })]).map(
      ({ params }) => (params as { is: string }).is,
    );
  // From memory: half marathon 56:42, marathon 2:00:35; between 10 km and the half, 12 km in about 31:40.
  const best = bestOver(12_000, 'run') / MIN;

  it('knows about how fast anybody has been', () => {
    expect(bestOver(21_097.5, 'run')).toBeCloseTo(3402, 6);
    expect(bestOver(42_195, 'run')).toBeCloseTo(7235, 6);
    expect(best).toBeGreaterThan(31);
    expect(best).toBeLessThan(32.5);
    expect(bestOver(400, 'run')).toBeCloseTo((206 * 400) / 1500, 6);
    expect(bestOver(200_000, 'run')).toBeCloseTo(2 * 21_935, 6);
    expect(bestOver(20_000, 'walk')).toBeGreaterThan(bestOver(20_000, 'run'));
    expect(bestOver(20_000, 'wheels')).toBeLessThan(bestOver(20_000, 'run'));
  });

  it('asks back where the fastest would beat the world’s best of the division', () => {
    expect(speeds(best + 1.01)).toEqual([]);
    expect(speeds(best + 0.9)).toEqual(['fast']);
    expect(speeds(best + 0.9, { division: 'wheels' })).toEqual([]);
    expect(speeds(best + 1.01, { division: 'walk' })).toEqual(['fast']);
  });

  it('asks back where the slowest would be slower than 3 km/h', () => {
    expect(speeds(238)).toEqual([]);
    expect(speeds(240)).toEqual(['slow']);
  });

  it('takes the tails of a median with a spread for what they are', () => {
    const marathon = turtle(ORIGIN, [[90, 42_195]], 500);
    const field = race('r', { waves: [{ time: 8 * H, entrants: 30_000 }], finish: { median: 260 * MIN, spread: 0.2 } });
    expect(found(speedImpossible, [field], [], [marathon])).toEqual([]);
    expect(found(speedImpossible, [{ ...field, finish: { median: 26 * MIN, spread: 0.2 } }], [], [marathon])).toEqual([
      expect.objectContaining({ severity: 'warning', where: { path: '/races/0/finish', race: 'r' } }),
    ]);
  });
});

describe('crowded-road', () => {
  /** Everybody runs 12 km in an hour: 200 m a minute, and a start of 1,000 a minute is 100 on 20 m of road. */
  const even = (id: string = 'r', keys: Partial<PlanRace> = {}): PlanRace =>
    race(id, {
      waves: [{ time: 8 * H, entrants: 1000 }],
      finish: {
        quantiles: [
          [0, 60 * MIN],
          [1, 60 * MIN],
        ],
      },
      startFlow: 1000,
      ...keys,
    });
  // Tables and crew take 1.262 m of the width. 100 persons with 2.323 m² each (25 sq ft) fill 11.61 m of 20 m.
  const wide = (width: number): Partial<PlanStation> => on(3000, { width });

  it('is a warning where a person would have less than 25 sq ft beside the tables of the first station', () => {
    const [finding, ...more] = found(crowdedRoad, [even()], [wide(1.262 + 11.5)]);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      code: 'crowded-road',
      severity: 'warning',
      limit: 99,
      where: { station: 's1' },
      source: 'common practice, no source',
    });
    expect(finding!.measured).toBeGreaterThanOrEqual(100);
    expect(found(crowdedRoad, [even()], [wide(1.262 + 11.8)])).toEqual([]);
  });

  it('looks at the first station of a race, and where another joins', () => {
    expect(found(crowdedRoad, [even()], [on(1000, { width: 40 }), wide(3)])).toEqual([]);
    const joins = turtle(
      from(from(ORIGIN, 90, 2000), 0, 500),
      [
        [180, 500],
        [90, 9000],
      ],
      100,
      'd',
    );
    const races = [even(), { ...even('j', { waves: [{ time: 8 * H + 13 * MIN, entrants: 1000 }] }), course: 'd' }];
    const at = (width: number): readonly Finding[] =>
      found(crowdedRoad, races, [on(1000, { width: 40 }), on(4000, { width })], [road, joins]);
    expect(at(1.262 + 12).map(({ where }) => where.station)).toEqual(['s2']);
    expect(at(40)).toEqual([]);
  });

  it('takes the width of the start where the first station gives none, and cannot be judged without either', () => {
    expect(found(crowdedRoad, [even('r', { startWidth: 11.5 })], [on(3000)])).toHaveLength(1);
    expect(crowdedRoad.missing!(layoutOf([road], [on(3000)], { races: [even()] }))).toBe('no-crowd-width');
  });
});

describe('the most runners on a stretch', () => {
  it('are those whom a look at any time finds', () => {
    const layout = layoutOf([road], [], { races: [race('r', { finish: { median: 60 * MIN, spread: 0.2 } })] });
    const { races } = factsOf(layout);
    const stretch = { race: races[0]!, from: 3000, to: 3500 };
    const most = mostRunners([stretch])!;
    const looks = Array.from({ length: 2000 }, (_, k) => runnersBetween(stretch, 8 * H + 2 * k));
    expect(Math.max(...looks)).toBeLessThanOrEqual(most.count);
    expect(Math.max(...looks)).toBeGreaterThanOrEqual(most.count - 1);
    expect(runnersBetween(stretch, most.at)).toBe(most.count);
    expect(mostRunners([])).toBeNull();
  });
});
