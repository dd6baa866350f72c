import { describe, expect, it } from 'vitest';
import type { PlanRace } from '../plan/plan.ts';
import { TEN_MILES_FINISH, TEN_MILES_GUN_TO_LINE, inSeconds, raceWith } from '../testing/fields.ts';
import { valueOf } from '../testing/courses.ts';
import type { Field } from './day.ts';
import { fieldOf, startFlowOf, startersOf } from './field.ts';
import { resultsKey } from './finishSource.ts';

const NONE = new Map<string, readonly number[]>();
const fieldFor = (keys: Partial<PlanRace>, length = 42_195): Field => valueOf(fieldOf(raceWith(keys), length, NONE));
const said = (keys: Partial<PlanRace>) => {
  const result = fieldOf(raceWith(keys), 42_195, NONE);
  if (result.ok) throw new Error('expected no field');
  return result.findings;
};
const median = { median: 14_400, spread: 0.2 };

describe('starters', () => {
  it('are the entrants times the share that shows up, rounded half up for each wave', () => {
    expect(
      [
        [5, 0.9],
        [15, 0.9],
        [1200, 0.9],
        [1, 0.5],
        [1, 0.4],
        [45, 0.1],
        [35, 0.3],
        [0, 1],
      ].map(([entrants, show]) => startersOf({ time: 0, entrants: entrants! }, show!)),
    ).toEqual([5, 14, 1080, 1, 0, 5, 11, 0]);
  });

  it('cross the line in the order of their seed, at the flow of the line', () => {
    const { start } = fieldFor({ waves: [{ time: 28_800, entrants: 4 }], finish: median, show: 1, startFlow: 30 });
    expect([...start]).toEqual([28_800, 28_802, 28_804, 28_806]);
  });

  it('cross 80 a metre of line a minute, or 1,100, unless the plan says their flow', () => {
    expect(startFlowOf(raceWith({}))).toBe(1100);
    expect(startFlowOf(raceWith({ startWidth: 8 }))).toBe(640);
    expect(startFlowOf(raceWith({ startWidth: 8, startFlow: 900 }))).toBe(900);
  });

  // Data set TenMileRace: 8,636 finishers of one gun. One flow of 1,100 a minute, the default, meets both quantiles.
  it('of a ten-mile race cross the line within 60 s of the times recorded, at the median and at 90 %', () => {
    const { start } = fieldFor(
      { waves: [{ time: 0, entrants: 8636 }], finish: { quantiles: inSeconds(TEN_MILES_FINISH) }, show: 1 },
      16_093.44,
    );
    for (const [share, seconds] of TEN_MILES_GUN_TO_LINE.filter(([share]) => share === 0.5 || share === 0.9)) {
      expect(Math.abs(start[Math.floor(8635 * share)]! - seconds)).toBeLessThan(60);
    }
  });
});

describe('waves', () => {
  const times = { times: [100, 200, 300, 400, 500, 600] };

  it('are seeded fastest first, by the time of the wave and not by its place in the plan', () => {
    const { finish, start } = fieldFor({
      waves: [
        { time: 600, entrants: 4 },
        { time: 0, entrants: 2 },
      ],
      finish: times,
      show: 1,
      startFlow: 60,
    });
    expect([...finish]).toEqual([100, 200, 300, 400, 500, 600]);
    expect([...start]).toEqual([0, 1, 600, 601, 602, 603]);
  });

  it("with finish times of their own keep them, and the others share the race's", () => {
    const { finish, slow } = fieldFor({
      waves: [
        { time: 0, entrants: 2 },
        { time: 60, entrants: 2, finish: { times: [250, 90] } },
        { time: 120, entrants: 2 },
      ],
      finish: { times: [100, 200, 300, 400] },
      show: 1,
      slow: [0, 0.5],
    });
    expect([...finish]).toEqual([100, 200, 90, 250, 300, 400]);
    expect([...slow].map((value) => Math.round(value * 10))).toEqual([1, 2, 0, 3, 4, 5]);
  });
});

describe('finish times', () => {
  it('come from past results by file and column', () => {
    const race = raceWith({
      waves: [{ time: 0, entrants: 3 }],
      finish: { csv: 'results.csv', column: 'net' },
      show: 1,
    });
    const { finish } = valueOf(
      fieldOf(
        race,
        42_195,
        new Map([
          [resultsKey('results.csv', 'net'), [9000, 7200, 8000]],
          [resultsKey('results.csv', 'gun'), [1, 2, 3]],
        ]),
      ),
    );
    expect([...finish]).toEqual([7200, 8000, 9000]);
  });

  // SciPy 1.17.1, scipy.interpolate.PchipInterpolator([0, 0.5, 1], [100, 200, 600]) at 0.125, 0.375, 0.625 and 0.875.
  it('come from quantiles, on a smooth curve between that never falls', () => {
    expect([
      ...fieldFor({
        waves: [{ time: 0, entrants: 4 }],
        finish: {
          quantiles: [
            [0, 100],
            [0.5, 200],
            [1, 600],
          ],
        },
        show: 1,
      }).finish,
    ]).toEqual([108.125, 161.875, 259.21875, 467.65625]);
  });

  it('come from a median and a spread', () => {
    const { finish } = fieldFor({ waves: [{ time: 0, entrants: 3 }], finish: median, show: 1 });
    expect(finish[1]).toBeCloseTo(14_400, 8);
    expect(Math.log(finish[2]! / 14_400)).toBeCloseTo(0.2 * 0.967421566101701, 8);
  });
});

describe('without what it needs there is no field', () => {
  it('but a note or a warning that says how to correct it', () => {
    expect(said({ finish: median })).toMatchObject([
      { code: 'race-without-waves', severity: 'note', where: { race: 'm' } },
    ]);
    expect(said({ waves: [{ time: 0, entrants: 0 }], finish: median })).toMatchObject([
      { code: 'race-without-starters', severity: 'warning' },
    ]);
    const [finding] = said({
      waves: [
        { time: 0, entrants: 9, finish: median },
        { time: 60, entrants: 9 },
      ],
    });
    expect(finding).toMatchObject({ code: 'race-without-times', severity: 'warning' });
    expect(finding!.message).toContain('Wave no. 2');
    expect(finding!.message).toContain('Give a median with a spread');
  });

  it('or an error where past results were not read, or hold no time', () => {
    const keys: Partial<PlanRace> = {
      waves: [{ time: 0, entrants: 9 }],
      finish: { csv: 'results.csv', column: 'net' },
    };
    expect(said(keys)).toMatchObject([
      { code: 'results-missing', severity: 'error', where: { race: 'm', file: 'results.csv' } },
    ]);
    expect(fieldOf(raceWith(keys), 42_195, new Map([[resultsKey('results.csv', 'net'), []]])).ok).toBe(false);
  });

  it('or an error where nobody could run such a race', () => {
    const waves = [{ time: 0, entrants: 5000 }];
    expect(said({ waves: [{ time: 0, entrants: 1e15 }], finish: median })).toMatchObject([
      { code: 'race-too-large', severity: 'error', limit: 1_000_000 },
    ]);
    expect(said({ waves, finish: { median: 14_400, spread: 5 } })).toMatchObject([
      { code: 'race-endless', severity: 'error' },
    ]);
    expect(said({ waves, finish: median, startFlow: 1e-300 })).toMatchObject([
      { code: 'race-endless', severity: 'error' },
    ]);
    expect(said({ waves, finish: { times: [1e308] }, startFlow: 1e-320 })[0]!.message).toContain('would never finish');
  });
});

describe('a wave that starts while the one before still crosses the line', () => {
  it('is noted, with when the line is clear', () => {
    const race = raceWith({
      waves: [
        { time: 28_800, entrants: 3001 },
        { time: 28_900, entrants: 10 },
        { time: 29_400, entrants: 10 },
      ],
      finish: median,
      show: 1,
      startFlow: 600,
    });
    const { findings } = fieldOf(race, 42_195, NONE);
    expect(findings).toMatchObject([{ code: 'waves-overlap', severity: 'note', where: { race: 'm' } }]);
    expect(findings[0]!.message).toContain(
      'The 08:00 wave crosses the line until 08:05, at 600 a minute, but the next starts at 08:01.',
    );
  });
});
