/** Rows of the placement list where something has no side, no place, or was placed by hand. */
import { expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import { AT_1500, STRAIGHT, analysisOf } from '../testing/analyses.ts';
import { ORIGIN, from } from '../testing/courses.ts';
import { en } from '../text/en.ts';
import { placementListBody } from './placementList.ts';
import { pegsOf } from '../layout/pegs.ts';
import { sideWord } from './sheet.ts';

const rowsOf = (analysis: Analysis): string[][] =>
  placementListBody(analysis, { text: en, paper: 'a4', printedAt: '' })
    .html.split('<tr>')
    .slice(2)
    .map((row) => [...row.matchAll(/<td[^>]*>(.*?)<\/td>/gu)].map(([, cell]) => cell!));
const words = en.lists.placement;

it('a side that is unclear is a question mark in each row and said in the heading', () => {
  const analysis = analysisOf(STRAIGHT, [{ at: from(ORIGIN, 90, 1500), serves: ['water'] }]);
  expect(rowsOf(analysis).map(([, , side]) => side)).toEqual(['?', '', '?', '?', '?', '?']);
  expect(placementListBody(analysis, { text: en, paper: 'a4', printedAt: '' }).html).toContain(
    `<b>${en.frame.sideUnclear}.</b>`,
  );
  expect([sideWord('unclear', en), sideWord('left', en), sideWord('right', en)]).toEqual([
    en.frame.sideUnclear,
    en.frame.left,
    en.frame.right,
  ]);
});

it('what has no place on the course says so instead of a position', () => {
  const [sign] = rowsOf(analysisOf(STRAIGHT, [{ on: { course: 'c', measure: 50, side: 'right', offset: 5 } }]));
  expect(sign!.slice(1, 6)).toEqual([
    '-0.041 km',
    'right',
    '',
    `${en.captain.drawing.before('91.4 m')} <i>${en.captain.drawing.along}</i>`,
    words.noPlace,
  ]);
});

it('an item placed by hand says so, and one table is one', () => {
  const sign = from(from(ORIGIN, 90, 1400), 180, 5);
  const rows = rowsOf(analysisOf(STRAIGHT, [{ ...AT_1500, serves: ['water'], items: { sign: { at: sign } } }]));
  expect(rows[0]![0]).toBe(`Sign “Water ahead” (${words.byHand})`);
  expect(rows[2]![0]).toBe(words.begins(en.captain.drawing.tables(en.frame.items.water, 1)));
  expect(en.captain.drawing.tables(en.frame.items.water, 1)).toMatch(/1 table$/u);
});

it('the reason that a plan gives for a station’s place stands above its rows', () => {
  expect(
    placementListBody(analysisOf(STRAIGHT, [{ ...AT_1500, why: 'a ditch' }]), { text: en, paper: 'a4', printedAt: '' })
      .html,
  ).toContain('Why: <bdi>a ditch</bdi>.');
});

it('the chalk mark stands before what begins where it is, and ends stand before beginnings', () => {
  const { stations, courses } = analysisOf(STRAIGHT, [
    { ...AT_1500, serves: ['sportsDrink', 'water'], practice: { tableGap: 0 } },
  ]);
  const pegs = pegsOf(stations[0]!, stations[0]!.directions[0]!, courses[0]!);
  expect(pegs.map(({ item, end }) => `${item?.kind ?? 'mark'} ${end}`)).toEqual([
    'sign whole',
    'mark whole',
    'sportsDrink first',
    'sportsDrink last',
    'water first',
    'water last',
    'trash first',
    'trash last',
  ]);
});
