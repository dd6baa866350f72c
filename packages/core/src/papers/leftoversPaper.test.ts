import { describe, expect, it } from 'vitest';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { learnRates } from '../raceday/learn.ts';
import { papersOf } from './papers.ts';

const two = [AT_1500, { on: { course: 'c', measure: 3000, side: 'right', offset: 5 } }] as const;
const analysis = (used: readonly (number | null)[]): ReturnType<typeof analysisOf> =>
  analysisOf(
    STRAIGHT,
    two.map((station, k) => ({ ...station, ...(used[k] === null ? {} : { used: { water: used[k]! } }) })),
    { races: [runners(1000)] },
  );
const paper = (used: readonly (number | null)[], language?: string): string =>
  papersOf(analysis(used), {
    paper: 'a4',
    printedAt: '2027-09-01 18:30',
    ...(language === undefined ? {} : { language }),
  }).find(({ name }) => name === 'leftovers.html')!.html;
const cells = (html: string, of: string): string[][] =>
  [...new RegExp(`<table class="${of}">(.*?)</table>`, 'su').exec(html)![1]!.matchAll(/<tr>(.*?)<\/tr>/gsu)]
    .map(([, row]) => [...row!.matchAll(/<td[^>]*>(.*?)<\/td>/gsu)].map(([, cell]) => cell!))
    .filter((row) => row.length > 0);

describe('the paper of what is left', () => {
  it('has a form for each station with what was sent, and nothing learnt before anybody has counted', () => {
    const html = paper([null, null]);
    expect(html.match(/<section class="block" data-station=/gu)).toHaveLength(2);
    expect(html).toContain('Water jugs full');
    expect(html).not.toContain('What the day teaches');
  });

  it('shows used beside expected, and next year’s rates with the spread that learning has', () => {
    const html = paper([1500, 1100]);
    const { plan, day } = analysis([1500, 1100]);
    const { basis, take } = learnRates(plan, day!.stations);
    const [{ factor, spread, reckoned }] = basis as [(typeof basis)[0]];
    expect(cells(html, 'kinds')).toEqual([
      [
        'Water',
        '2,600',
        Math.round(reckoned).toLocaleString('en'),
        `${factor.toFixed(2)} ± ${spread!.error.toFixed(2)}`,
        `${spread!.low.toFixed(2)} to ${spread!.high.toFixed(2)}`,
        's1, s2',
      ],
    ]);
    expect(cells(html, 'rates')[0]!.slice(0, 2)).toEqual(['Runners', 'Water']);
    expect(cells(html, 'rates')[0]![3]).toMatch(new RegExp(`^${take.run!.water!.toFixed(2)} ± \\d\\.\\d\\d$`, 'u'));
    expect(cells(html, 'stations').map(([station, , used]) => [station, used])).toEqual([
      ['s1', '1,500'],
      ['s2', '1,100'],
    ]);
  });

  it('says that one station has no spread, in Spanish too', () => {
    expect(cells(paper([1500, null]), 'kinds')[0]![4]).toBe('one station: no spread');
    expect(cells(paper([1500, null], 'es'), 'kinds')[0]![4]).toBe('un solo puesto: sin dispersión');
  });
});
