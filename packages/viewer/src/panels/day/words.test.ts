import { expect, test } from 'vitest';
import { openDemo } from '../../testing.ts';
import { formatMinute } from '@halfcup/core';
import { chartText, needText, packText, packWord, pouredText } from './words.ts';

const day = openDemo().analysis.day!.stations[0]!;

test('clock minutes round down and pass midnight', () => {
  expect(formatMinute(7 * 3600 + 59)).toBe('07:00');
  expect(formatMinute(24 * 3600 + 61)).toBe('24:01');
});

test('each item of the demo’s supplies has a word of its own', () => {
  const items = openDemo().analysis.day!.stations.flatMap(({ packs }) => packs.map(({ item }) => item));
  expect(items.filter((item) => packWord(item) === item)).toEqual([]);
  expect(packWord('sign: Water ahead')).toBe('Sign “Water ahead”');
});

test('drink is told in the units chosen, pieces in pieces, and single pieces have no pack', () => {
  const jug = { item: 'waterJug', need: 37.85411784, pack: 3.785411784, count: 10 };
  expect([needText(jug, 'imperial'), packText(jug, 'imperial')]).toEqual(['10.0 gal', '1.0 gal']);
  expect(needText(jug, 'metric')).toBe('37.9 l');
  expect(packText({ item: 'table', need: 3, pack: 1, count: 3 }, 'metric')).toBe('–');
  expect([
    needText({ item: 'cups', need: 3104, pack: 100, count: 32 }, 'metric'),
    packText({ item: 'cups', need: 3104, pack: 100, count: 32 }, 'metric'),
  ]).toEqual(['3,104', '100']);
});

test('cups that stand poured are told water first, and nothing where none do', () => {
  const stock = { share: 0.5, massCurve: 1, floor: 1, room: null, tables: 1, layers: 1, pourers: 2 };
  expect(
    pouredText({ ...day, prePour: { sportsDrink: { ...stock, cups: 984 }, water: { ...stock, cups: 1968 } } }),
  ).toBe('1,968 + 984 cups poured');
  expect(pouredText({ ...day, prePour: {} })).toBeNull();
});

test('the chart’s words name the first, the busiest and the last', () => {
  const quantiles = { first: 25_800, p10: 26_000, p50: 27_000, p90: 28_000, last: 30_601 };
  expect(chartText('Strand Road', { ...day, arrivals: 2700, quantiles, peak: { count: 46, at: 27_015 } })).toBe(
    'Arrivals at Strand Road: 2,700, first at 07:10:00, busiest 46 in the minute from 07:30:15, last at 08:30:01.',
  );
  expect(chartText('Strand Road', { ...day, quantiles: null, peak: null })).toBe(
    'Arrivals at Strand Road: nobody arrives.',
  );
});
