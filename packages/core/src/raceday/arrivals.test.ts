import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexCourse } from '../course/segmentIndex.ts';
import { MARATHON_FINISH, MARATHON_SPLITS, inSeconds, passAt, raceWith } from '../testing/fields.ts';
import { ORIGIN, turtle, valueOf } from '../testing/courses.ts';
import { planOf } from '../testing/plans.ts';
import type { PlanRace } from '../plan/plan.ts';
import { type RaceOnCourse, arrivalsAt, racesOnCourses, runRace } from './arrivals.ts';
import { busiest, mergedTimes, perMinuteOf, quantilesOf } from './timing.ts';
import type { RaceArrivals } from './day.ts';
import { fieldOf } from './field.ts';
import { sweepAt, sweepOf } from './sweep.ts';
import { real } from '../testing/numbers.ts';

const LENGTH = 42_195;
const ENDS = [0, LENGTH] as const;

function running(keys: Partial<PlanRace>, ends: readonly [number, number] = ENDS): RaceOnCourse {
  const field = valueOf(fieldOf(raceWith(keys), ends[1] - ends[0], new Map()));
  return runRace(field, ends, null, sweepOf(field, 'c', ends, []).sweep);
}

const arrivals = (race: RaceOnCourse, ...measures: readonly number[]): RaceArrivals =>
  arrivalsAt([{ id: 's1', passes: measures.map((measure) => passAt(measure)) }], [race])[0]!.races[0]!;

const marathon: Partial<PlanRace> = {
  waves: [{ time: 0, entrants: 31_931 }],
  finish: { quantiles: inSeconds(MARATHON_FINISH) },
  show: 1,
  startFlow: Infinity,
};

describe('against recorded times', () => {
  // Open results of 31,931 finishers: see testing/fields.ts. Net times, so nobody waits for the start line.
  it.each(MARATHON_SPLITS)(
    'the 10, 50 and 90 %% quantiles at %d km are within 3 %% of the recorded splits',
    (km, ...recorded) => {
      const { p10, p50, p90 } = quantilesOf(arrivals(running(marathon), km * 1000).times)!;
      [p10, p50, p90].forEach((time, k) => expect(Math.abs(time / 60 / recorded[k]! - 1)).toBeLessThan(0.03));
    },
  );
});

describe('arrivals', () => {
  it('count a runner once for each served pass of their race, and nobody else', () => {
    const race = running({ waves: [{ time: 0, entrants: 100 }], finish: { median: 14_400, spread: 0.2 }, show: 1 });
    const passes = [
      passAt(5000),
      passAt(30_000, { pass: 1 }),
      passAt(20_000, { served: false }),
      passAt(9000, { race: 'h' }),
    ];
    const [station, bare] = arrivalsAt(
      [
        { id: 's1', passes },
        { id: 's2', passes: [passAt(1000, { served: false })] },
      ],
      [race],
    );
    expect(station).toMatchObject({ station: 's1', sweep: null, races: [{ race: 'm', division: 'run', out: 0 }] });
    expect(station!.races[0]!.times).toHaveLength(200);
    expect(bare).toEqual({ station: 's2', races: [], sweep: null });
  });

  it('are the starts at the start line and the finish times at the finish', () => {
    const race = running(
      { waves: [{ time: 600, entrants: 50 }], finish: { median: 14_400, spread: 0.2 }, show: 1 },
      [100, 42_295],
    );
    expect(arrivals(race, 100).times).toEqual(race.field.start);
    const finishes = race.field.finish.map((time, i) => time + race.field.start[i]!).sort();
    arrivals(race, 42_295).times.forEach((time, i) => expect(time).toBeCloseTo(finishes[i]!, 8));
  });

  it('follow the course, its marks, its gradient and the clock of the plan', () => {
    const course = turtle(ORIGIN, [[80, 10_000]], 100);
    const race = raceWith({
      waves: [{ time: 0, entrants: 3 }],
      finish: { times: [3000, 3600, 6000] },
      show: 1,
      slow: [0, 0],
      startFlow: 1e9,
      cutoff: 5000,
      gradient: true,
    });
    const plan = { ...planOf({ races: [race] }), clock: [{ course: 'c', measure: 4000, sweep: 2300 }] };
    const { races, findings } = racesOnCourses(plan, new Map([['c', indexCourse(course)]]), [
      valueOf(fieldOf(race, 10_000, new Map())),
    ]);
    expect(findings).toMatchObject([{ code: 'gradient-unknown', severity: 'note' }]);
    const [station] = arrivalsAt([{ id: 's1', passes: [passAt(5000)] }], races);
    expect([...station!.races[0]!.times].map(Math.round)).toEqual([1500, 1800]);
    expect(station!.races[0]!.out).toBe(1);
    expect(station!.sweep).toBeCloseTo(2300 + 2700 / 6, 3);
  });
});

describe('the sweep', () => {
  const field = (keys: Partial<PlanRace>) =>
    running(
      {
        waves: [
          { time: 0, entrants: 2 },
          { time: 600, entrants: 2 },
        ],
        finish: { median: 3600, spread: 0.1 },
        show: 1,
        startFlow: 60,
        ...keys,
      },
      [0, 10_000],
    ).field;
  const swept = (keys: Partial<PlanRace>, clock: readonly (readonly [number, number])[] = []) =>
    sweepOf(
      field(keys),
      'c',
      [0, 10_000],
      clock.map(([measure, sweep]) => ({ course: 'c', measure, sweep })),
    );

  it('leaves with the last starter of the last wave and reaches the finish at the cutoff, even pace', () => {
    const { sweep } = swept({ cutoff: 6601 });
    expect([0, 5000, 10_000].map((measure) => sweepAt(sweep!, measure))).toEqual([601, 3601, 6601]);
  });

  it('is where the clock says, linear between, whatever the order of the clock', () => {
    const { sweep } = swept({ cutoff: 6601 }, [
      [8000, 6000],
      [4000, 2001],
    ]);
    expect([0, 2000, 4000, 6000, 8000, 9000, 10_000].map((measure) => sweepAt(sweep!, measure))).toEqual([
      601, 1301, 2001, 4000.5, 6000, 6300.5, 6601,
    ]);
  });

  it('without a cutoff is known up to the last time of the clock, and not at all without both', () => {
    const { sweep } = swept({}, [[4000, 2001]]);
    expect([2000, 4000, 4001].map((measure) => sweepAt(sweep!, measure))).toEqual([1301, 2001, Infinity]);
    expect(swept({})).toEqual({ sweep: null, findings: [] });
  });

  it('takes a time of the clock near the finish, or the same to a minute, for that of the cutoff', () => {
    const at = (measure: number, time: number): unknown => {
      const { sweep, findings } = swept({ cutoff: 6600 }, [[measure, time]]);
      return sweep === null ? findings.map(({ code }) => code) : [sweepAt(sweep, 9000), sweepAt(sweep, 10_000)];
    };
    // One and the same minute some metres before the finish, as a course that is drawn twice has it.
    expect(at(9994, 6600)).toEqual([expect.closeTo(601 + (5999 * 9000) / 9994, 6), 6600]);
    // Later than the cutoff, but at the finish: the clock says it more exactly.
    expect(at(9900, 6900)).toEqual([expect.any(Number), 6900]);
    expect(at(9456, 6600)).toEqual([expect.any(Number), 6600]);
    expect(at(9456, 6660)).toEqual([expect.any(Number), 6660]);
    expect(at(9456, 6661)).toEqual(['sweep-impossible']);
    expect(swept({ cutoff: 6600 }, [[9456, 6661]]).findings[0]!.message).toContain(
      'but the cutoff at the finish (10.00 km) is 01:50.',
    );
  });

  it.each([
    [
      'the cutoff before the last wave',
      { cutoff: 500 },
      [],
      'The cutoff at 00:08 is not after the last start: the last cross the line at 00:10.',
    ],
    [
      'the clock before the last wave',
      { cutoff: 6601 },
      [[0, 300]],
      'The sweep leaves at 00:05, before the last wave at 00:10.',
    ],
    [
      'times that go back',
      { cutoff: 6601 },
      [
        [4000, 3000],
        [5000, 2900],
      ],
      'On c the sweep is at 4.00 km at 00:50 and at 5.00 km at 00:48.',
    ],
  ] as const)('that cannot be is reported and left out: %s', (what, keys, clock, words) => {
    const { sweep, findings } = swept(keys, clock);
    expect(sweep).toBeNull();
    expect(findings).toMatchObject([
      {
        code: what.startsWith('the cutoff') ? 'cutoff-early' : 'sweep-impossible',
        severity: 'error',
        where: { race: 'm', course: 'c' },
      },
    ]);
    expect(findings[0]!.message).toContain(words);
  });

  it('takes out whom it overtakes, there and farther on, or not where the plan still serves them', () => {
    // Sweep at 5 km at 2,100 s; 3,600 s even pace is there at 1,800, 4,400 s at 2,200.
    const keys = {
      waves: [{ time: 0, entrants: 2 }],
      finish: { times: [3600, 4400] },
      slow: [0, 0],
      startFlow: 1e9,
      cutoff: 4200,
    } as const;
    const race = running({ ...keys, show: 1 }, [0, 10_000]);
    const served = running({ ...keys, show: 1, late: 'served' }, [0, 10_000]);
    expect([1000, 5000].map((measure) => arrivals(race, measure).out)).toEqual([1, 1]);
    expect([...arrivals(race, 5000).times].map(Math.round)).toEqual([1800]);
    expect(arrivals(served, 5000).out).toBe(0);
    expect([...arrivals(served, 5000).times].map(Math.round)).toEqual([1800, 2200]);
  });

  it('does not let in again who was overtaken before', () => {
    // Ahead of the clock's sweep at 2 km by nobody but the first; at 8 km the sweep is late enough for both.
    const field = valueOf(
      fieldOf(
        raceWith({
          waves: [{ time: 0, entrants: 2 }],
          finish: { times: [3600, 4400] },
          slow: [0, 0],
          startFlow: 1e9,
          show: 1,
        }),
        10_000,
        new Map(),
      ),
    );
    const { sweep } = sweepOf(
      field,
      'c',
      [0, 10_000],
      [
        { course: 'c', measure: 2000, sweep: 800 },
        { course: 'c', measure: 8000, sweep: 9000 },
      ],
    );
    const { times, out } = arrivals(runRace(field, [0, 10_000], null, sweep), 8000);
    expect(out).toBe(1);
    expect([...times].map(Math.round)).toEqual([2880]);
  });
});

describe('conservation', () => {
  const waves = fc.array(
    fc.record({ time: fc.integer({ min: 0, max: 7200 }), entrants: fc.integer({ min: 1, max: 400 }) }),
    { minLength: 1, maxLength: 4 },
  );
  const cases = fc.record({
    waves,
    show: fc.constantFrom(1, 0.9, 0.55),
    finish: fc.record({ median: fc.integer({ min: 6000, max: 20_000 }), spread: real(0, 0.5) }),
    startFlow: fc.integer({ min: 20, max: 3000 }),
    late: fc.constantFrom('out' as const, 'served' as const),
    cutoff: fc.integer({ min: 7300, max: 40_000 }),
  });
  const measures = fc.array(real(0, LENGTH), { minLength: 1, maxLength: 4 });
  const runs = { seed: 20_270_912, numRuns: 200 };

  it('arrivals and those out are the starters, times the served passes; they ascend and none is negative', () => {
    fc.assert(
      fc.property(cases, measures, (keys, at) => {
        const race = running(keys);
        const { times, out } = arrivals(race, ...at);
        expect(times.length + out).toBe(race.field.start.length * at.length);
        if (keys.late === 'served') expect(out).toBe(0);
        expect(times.every((time, i) => time >= (times[i - 1] ?? 0))).toBe(true);
      }),
      runs,
    );
  });

  it('minutes add up to the arrivals of each race, and no 60 s hold more than all', () => {
    fc.assert(
      fc.property(cases, measures, (keys, at) => {
        const one = arrivals(running(keys), ...at);
        const races = [one, { ...one, race: 'h', times: one.times.slice(0, Math.floor(one.times.length / 2)) }];
        const minutes = perMinuteOf(races);
        for (const { race, times } of races)
          expect(minutes.reduce((sum, [, counts]) => sum + counts[race]!, 0)).toBe(times.length);
        const fullest = minutes.reduce((most, [, counts]) => Math.max(most, counts['m']! + counts['h']!), 0);
        expect(busiest(races, 60, () => 1)?.sum ?? 0).toBeGreaterThanOrEqual(fullest);
        expect(minutes.every(([minute], k) => minute % 60 === 0 && minute > (minutes[k - 1]?.[0] ?? -1))).toBe(true);
      }),
      runs,
    );
  });

  it('who is out at one station is not let in at a later one', () => {
    fc.assert(
      fc.property(cases, measures, (keys, at) => {
        const race = running({ ...keys, late: 'out' });
        const outs = [...at].sort((a, b) => a - b).map((measure) => arrivals(race, measure).out);
        expect(outs.every((out, k) => out >= (outs[k - 1] ?? 0))).toBe(true);
      }),
      runs,
    );
  });

  it('twice the entrants over twice the flow leave the 10 to 90 % quantiles within 0.5 %', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 4000 }),
        fc.integer({ min: 200, max: 2000 }),
        real(0.05, 0.4),
        real(2000, LENGTH),
        (entrants, startFlow, spread, measure) => {
          const at = (times: number) =>
            quantilesOf(
              arrivals(
                running({
                  waves: [{ time: 0, entrants: entrants * times }],
                  finish: { median: 15_000, spread },
                  show: 1,
                  startFlow: startFlow * times,
                }),
                measure,
              ).times,
            )!;
          const [once, twice] = [at(1), at(2)];
          for (const share of ['p10', 'p50', 'p90'] as const)
            expect(Math.abs(twice[share] / once[share] - 1)).toBeLessThan(0.005);
        },
      ),
      { ...runs, numRuns: 40 },
    );
  });
});

describe('sums of arrivals', () => {
  // R: quantile(c(0, 10, 20, 30, 100), c(.1, .5, .9), type = 5).
  it('quantiles are linear between the middles of ranks', () => {
    const { first, p10, p50, p90, last } = quantilesOf(Float64Array.of(0, 10, 20, 30, 100))!;
    expect([first, p10, p50, p90, last]).toEqual([0, 0, 20, 100, 100]);
    expect(quantilesOf(Float64Array.of(7))).toEqual({ first: 7, p10: 7, p50: 7, p90: 7, last: 7 });
    expect(quantilesOf(new Float64Array(0))).toBeNull();
  });

  const of = (race: string, ...times: readonly number[]): RaceArrivals => ({
    race,
    division: 'run',
    times: Float64Array.from(times),
    out: 0,
  });

  it('minutes hold every race, also one of which nobody arrives, and quiet ones too', () => {
    expect(perMinuteOf([of('m', 59.9, 60, 61, 180), of('h', 61), of('w')])).toEqual([
      [0, { m: 1, h: 0, w: 0 }],
      [60, { m: 2, h: 1, w: 0 }],
      [120, { m: 0, h: 0, w: 0 }],
      [180, { m: 1, h: 0, w: 0 }],
    ]);
    expect(perMinuteOf([of('m')])).toEqual([]);
    expect([...mergedTimes([of('m', 1, 5), of('h', 3)])]).toEqual([1, 3, 5]);
  });

  it('the busiest 60 s do not keep to the clock, and their end is not in them', () => {
    const peak = (...lists: readonly (readonly number[])[]): unknown =>
      busiest(
        lists.map((times, k) => of(String(k), ...times)),
        60,
        () => 1,
      );
    expect(peak([0, 50, 55, 70, 109, 110, 500])).toEqual({ sum: 4, at: 50 });
    expect(peak([0, 50, 109], [55, 70, 110, 500])).toEqual({ sum: 4, at: 50 });
    expect(peak([0, 60, 120])).toEqual({ sum: 1, at: 0 });
    expect(peak([])).toBeNull();
  });

  it('the busiest 60 s are those that counting every window finds', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 600 }), { minLength: 1, maxLength: 60 }), (list) => {
        const times = Float64Array.from(list).sort();
        const counted = list.map((from) => list.filter((time) => time >= from && time < from + 60).length);
        expect(busiest([of('m', ...times)], 60, () => 1)!.sum).toBe(Math.max(...counted));
        const odd = times.filter((_, k) => k % 2 === 1);
        const even = times.filter((_, k) => k % 2 === 0);
        expect(busiest([of('m', ...odd), of('h', ...even)], 60, () => 1)!.sum).toBe(Math.max(...counted));
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
