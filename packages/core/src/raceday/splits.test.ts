import { describe, expect, it, test } from 'vitest';
import type { PlanRace } from '../plan/plan.ts';
import { valueOf } from '../testing/courses.ts';
import { raceWith } from '../testing/fields.ts';
import { fieldOf } from './field.ts';
import { resultsKey } from './finishSource.ts';
import type { Hills } from './hills.ts';
import { timeAt } from './pace.ts';
import { type PastTimes, readResults } from './results.ts';
import { slowByPace } from './slowing.ts';
import { splitPlaceOf } from './splitNames.ts';

const LENGTH = 42_195;
const clock = (seconds: number): string => {
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return `${h}:${String(m).padStart(2, '0')}:${s < 10 ? '0' : ''}${s.toFixed(2)}`;
};
const race = (keys: Partial<PlanRace> = {}): PlanRace =>
  raceWith({ waves: [{ time: 0, entrants: 40 }], finish: { csv: 'past.csv', column: 'net' }, show: 1, ...keys });
const past = (read: PastTimes) => new Map([[resultsKey('past.csv', 'net'), read]]);

/** Runner k of 40 takes 3 h and 4 min more each, and slows by an amount that does not follow the pace. */
const runners = Array.from({ length: 40 }, (_, k) => ({ time: 10_800 + 240 * k, slow: ((k * 7) % 40) / 80 - 0.05 }));
const results = (hills: Hills | null = null): string =>
  [
    'place,10K,Half,35 km,net',
    ...runners.map(({ time, slow }, k) => {
      const at = (d: number): string => clock(timeAt(d, LENGTH, time, slow, hills));
      return [k + 1, at(10_000), at(LENGTH / 2), k % 4 === 3 ? '' : at(35_000), clock(time)].join(',');
    }),
  ].join('\n');
const read = (text: string): PastTimes => valueOf(readResults(text, 'net', 'past.csv'));

describe('a column of past results', () => {
  test.each([
    ['5 km', 5000],
    ['10K', 10_000],
    ['15k split', 15_000],
    ['Split 5 km', 5000],
    ['km 30', 30_000],
    ['Mile 6', 9656.064],
    ['Paso 10 km', 10_000],
    ['Half', 'half'],
    ['halfway', 'half'],
    ['Media', 'half'],
    ['Half marathon', 21_097.5],
  ])('named %j is a split', (name, at) => {
    expect(splitPlaceOf(name)).toEqual(typeof at === 'number' ? expect.closeTo(at, 6) : at);
  });

  test.each([['net'], ['place'], ['5 km pace'], ['10K rank'], ['bib 10'], ['5-10 km'], ['40'], ['']])(
    'named %j is none',
    (name) => {
      expect(splitPlaceOf(name)).toBeNull();
    },
  );
});

describe('slowing fitted to splits', () => {
  it('finds how much each past finisher slowed, which no pace tells', () => {
    const field = valueOf(fieldOf(race(), LENGTH, past(read(results()))));
    field.slow.forEach((slow, k) => expect(Math.abs(slow - runners[k]!.slow)).toBeLessThan(2e-4));
    expect(field.fitted).toEqual([{ race: 'm', csv: 'past.csv', splits: ['10K', 'Half', '35 km'], runners: 40 }]);
  });

  it('takes the hills of the course out of the splits', () => {
    const hills: Hills = { shares: Float64Array.of(0, 0.3, 0.6, 1), cost: Float64Array.of(1.3, 0.9, 1) };
    const past40 = past(read(results(hills)));
    const [with_, without] = [hills, null].map((one) => valueOf(fieldOf(race(), LENGTH, past40, one)).slow);
    with_!.forEach((slow, k) => expect(Math.abs(slow - runners[k]!.slow)).toBeLessThan(3e-4));
    expect(Math.max(...without!.map((slow, k) => Math.abs(slow - runners[k]!.slow)))).toBeGreaterThan(0.05);
  });

  it('gives a larger field the slowing of the past finisher at the same share of the field', () => {
    const { slow } = valueOf(
      fieldOf(
        race({
          waves: [
            { time: 0, entrants: 60 },
            { time: 600, entrants: 20 },
          ],
        }),
        LENGTH,
        past(read(results())),
      ),
    );
    slow.forEach((value, k) => expect(Math.abs(value - runners[Math.floor(k / 2)]!.slow)).toBeLessThan(2e-4));
  });

  it('yields to what the plan says, and leaves who has no split to the pace', () => {
    const own = valueOf(fieldOf(race({ slow: [0, 0] }), LENGTH, past(read(results()))));
    expect([Math.max(...own.slow), own.fitted]).toEqual([0, undefined]);
    const bare = read('10K,net\n40:00,3:00:00\n,4:00:00\n');
    const field = valueOf(fieldOf(race({ waves: [{ time: 0, entrants: 2 }] }), LENGTH, past(bare)));
    expect(field.slow[1]).toBe(slowByPace(14_400, LENGTH));
    expect(field.slow[0]).not.toBe(slowByPace(10_800, LENGTH));
    expect(field.fitted![0]!.runners).toBe(1);
  });

  it('is as before for results without splits', () => {
    const text = 'net\n3:00:00\n4:00:00\n';
    expect(read(text)).toEqual({ times: [10_800, 14_400], leftOut: 0 });
    const field = valueOf(fieldOf(race({ waves: [{ time: 0, entrants: 2 }] }), LENGTH, past(read(text))));
    expect([...field.slow]).toEqual([10_800, 14_400].map((time) => slowByPace(time, LENGTH)));
  });
});

describe('splits that cannot be used are told', () => {
  const said = (text: string, length = LENGTH): string[] => {
    const file = readResults(text, 'net', 'past.csv');
    const field = fieldOf(race({ waves: [{ time: 0, entrants: 4 }] }), length, past(valueOf(file)));
    return [...file.findings, ...field.findings].map(({ code, message }) => `${code}: ${message}`);
  };
  const rows = (...cells: readonly string[]): string => cells.map((cell) => `${cell}\n`).join('');

  it('where two columns name one distance, or a column holds no times', () => {
    expect(said(`10 km,10K,net\n${rows('40:00,39:00,3:00:00')}`)[0]).toContain(
      '“10 km” and “10K” name the same distance',
    );
    expect(said(`10K,net\n${rows('6:30/mi,3:00:00', '7:00/mi,3:10:00')}`)[0]).toMatch(
      /“6:30\/mi” and 1 more that are no time\. It is not used as a split\./u,
    );
    expect(said(`10K,net\n${rows('x,3:00:00', '44:00,3:10:00')}`)[0]).toContain(
      'Those runners’ splits there are left out',
    );
  });

  it('where they lie beyond the finish, or do not rise to it', () => {
    expect(said(`30 km,net\n${rows('1:20:00,1:30:00')}`, 21_097.5)[0]).toContain('not before the finish at 21.10 km');
    expect(said(`5K,10K,net\n${rows('20:00,19:00,3:00:00', '20:00,41:00,3:00:00', '21:00,43:00,3:10:00')}`)).toEqual([
      expect.stringContaining('The splits of 1 of 3 finishers do not fit'),
    ]);
    expect(
      said(`5K,10K,net\n${rows('20:00,20:10,3:00:00', '20:00,20:00,3:00:00', '21:00,43:00,3:10:00')}`)[0],
    ).toContain('so none are used');
  });
});
