import { expect, test } from 'vitest';
import { openDemo } from '../../testing.ts';
import { formatMinute } from '@halfcup/core/units';
import { chartText, needText, packText, packWord, pouredText } from './words.ts';

const day = openDemo().analysis.day!.stations[0]!;

test('clock minutes round down and pass midnight', () => {
  expect(formatMinute(7 * 3600 + 59)).toBe('07:00');
  expect(formatMinute(24 * 3600 + 61)).toBe('24:01');
});

test('each of the demo’s supplies has a word of its own, and so has what comes back', () => {
  const packs = openDemo().analysis.day!.stations.flatMap((station) => station.packs);
  const kinds = new Set(packs.map(({ kind }) => kind));
  expect(kinds.size).toBeGreaterThan(5);
  for (const { kind } of packs) expect(packWord({ kind })).not.toBe(kind);
  expect(new Set([...kinds].map((kind) => packWord({ kind }))).size).toBe(kinds.size);
  expect(packWord({ kind: 'sign', wording: 'Water ahead' })).toBe('Sign “Water ahead”');
  expect(packWord({ kind: 'waterJug', empty: true })).toBe('Water jugs, empty');
});

test('drink is told in the units chosen, pieces in pieces, and single pieces have no pack', () => {
  const jug = { kind: 'waterJug', need: 37.85411784, pack: 3.785411784, count: 10 } as const;
  expect([needText(jug, 'imperial'), packText(jug, 'imperial')]).toEqual(['10.0 gal', '1.0 gal']);
  expect(needText(jug, 'metric')).toBe('37.9 l');
  expect(packText({ kind: 'table', need: 3, pack: 1, count: 3 }, 'metric')).toBe('–');
  expect([
    needText({ kind: 'cups', need: 3104, pack: 100, count: 32 }, 'metric'),
    packText({ kind: 'cups', need: 3104, pack: 100, count: 32 }, 'metric'),
  ]).toEqual(['3,104', '100']);
});

test('cups that stand poured are told water first, and nothing where none do', () => {
  const stock = { share: 0.5, massCurve: 1, floor: 1, room: null, tables: 1, layers: 1, pourers: 2 };
  expect(
    pouredText({ ...day, prePour: { sportsDrink: { ...stock, cups: 984 }, water: { ...stock, cups: 1968 } } }),
  ).toBe('poured: 1,968 water, 984 sports drink');
  expect(pouredText({ ...day, prePour: {} })).toBeNull();
});

test('the chart’s words name the first, the busiest and the last', () => {
  const quantiles = { first: 25_800, p10: 26_000, p50: 27_000, p90: 28_000, last: 30_601 };
  expect(chartText('Strand Road', { ...day, arrivals: 2700, quantiles, peak: { count: 46, at: 27_015 } })).toBe(
    'Arrivals at Strand Road: 2,700, first at 07:10:00, busiest minute from 07:30:15 with 46, last at 08:30:01.',
  );
  expect(chartText('Strand Road', { ...day, quantiles: null, peak: null })).toBe('Arrivals at Strand Road: none.');
});
