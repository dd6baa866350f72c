/** Race day of a whole plan: past results that several waves name, waves with finish times of their own, and what is said once. */
import { describe, expect, it } from 'vitest';
import { type Analysis, analyse, dayStage, passStage } from '../analyse.ts';
import type { Plan, PlanRace } from '../plan/plan.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { valueOf } from '../testing/courses.ts';

const H = 3600;
const { plan, courses } = analysisOf(STRAIGHT, [AT_1500]);
const withRace = (keys: Partial<PlanRace>): Plan => ({ ...plan, races: [runners(4, keys)] });
const analysed = (keys: Partial<PlanRace>, texts: Readonly<Record<string, string>>): Analysis =>
  valueOf(analyse(withRace(keys), { gpx: new Map(), results: new Map(Object.entries(texts)) }));
const codesOf = ({ findings }: Analysis): string[] =>
  findings.map(({ code }) => code).filter((code) => code.startsWith('results') || code.startsWith('race'));

const finish = { csv: 'past.csv', column: 'net' } as const;
const waves = [
  { time: 8 * H, entrants: 2, finish },
  { time: 9 * H, entrants: 2 },
];

describe('past results', () => {
  it('are read once, however many waves name them, and say what they left out once', () => {
    const analysis = analysed({ waves, finish }, { 'past.csv': 'net\n0:20:00\n0:30:00\nDNF\n' });
    expect(codesOf(analysis)).toEqual(['results-left-out']);
    expect(analysis.day!.stations[0]!.arrivals).toBe(4);
  });

  it('that cannot be read are said once, and then that the race has no times', () => {
    const analysis = analysed({ waves, finish }, { 'past.csv': 'net\nabc\n' });
    expect(codesOf(analysis)).toEqual(['results-unread', 'results-missing']);
    expect(analysis.day!.stations[0]!.arrivals).toBe(0);
  });

  it('that nobody gave are asked for', () => {
    expect(codesOf(analysed({ waves, finish }, {}))).toEqual(['results-missing']);
  });

  it('count by column: another column of the same file is read too', () => {
    const other = [{ ...waves[0]!, finish: { csv: 'past.csv', column: 'gun' } }, waves[1]!];
    expect(codesOf(analysed({ waves: other, finish }, { 'past.csv': 'net,gun\n0:20:00,\n0:30:00,0:31:00\n' }))).toEqual(
      ['results-left-out'],
    );
  });
});

describe('waves', () => {
  it('each with finish times of its own need none of the race', () => {
    const { finish: _, ...race } = runners(4, {
      waves: [
        { time: 8 * H, entrants: 2, finish: { times: [1800] } },
        { time: 9 * H, entrants: 2, finish: { times: [2400] } },
      ],
    });
    const analysis = valueOf(analyse({ ...plan, races: [race] }, { gpx: new Map() }));
    const { first, last } = analysis.day!.stations[0]!.quantiles!;
    // 1.5 of 4 km within the first half: the second wave starts an hour later and is slower.
    expect(last - first).toBeGreaterThan(H);
  });

  it('of which none has starters make no field', () => {
    const said = (keys: Partial<PlanRace>): string =>
      analysed(keys, {}).findings.find(({ code }) => code === 'race-without-starters')!.message;
    expect(said({ waves: [{ time: 8 * H, entrants: 0 }] })).toContain('Nobody starts: the waves have no entrants');
    expect(
      said({
        waves: [
          { time: 8 * H, entrants: 0 },
          { time: 9 * H, entrants: 3 },
        ],
        show: 0,
      }),
    ).toContain('too few for the 0 % who start.');
  });
});

describe('the third stage', () => {
  it('is null where no race has waves, and else the day that the whole analysis has', () => {
    const seen = valueOf(passStage(plan, courses));
    expect(dayStage(plan, courses, seen)).toBeNull();
    const running = withRace({});
    expect(dayStage(running, courses, seen)).toEqual(analysed({}, {}).day);
  });
});
