import type { PlacedStation, PlacedVerdict } from '@halfcup/core';
import { expect, test } from 'vitest';
import { moveText, placedItem, stationMove, verdictCounts } from './placedWords.ts';

const verdict: PlacedVerdict = {
  station: 's1',
  item: 'sign',
  course: 'c',
  verdict: 'fails',
  measured: 71.44,
  limit: [82.296, 100.584],
  margin: 1,
  move: -20,
  at: [0, 0],
  by: 'position',
  reference: 'placed',
  side: 'right',
  confidence: 1,
};

test('how far to move it is told by the way the runners go, and not at all where it stands well', () => {
  expect(moveText(verdict, 'metric')).toBe('20 m back');
  expect(moveText({ ...verdict, move: 91.44 }, 'imperial')).toBe('100 yd forward');
  expect(moveText({ ...verdict, move: 0 }, 'metric')).toBe('');
  expect(moveText({ ...verdict, move: 0.004 }, 'metric')).toBe('');
});

test('a station says how far along the course it stands from its plan, where most of the way is along it', () => {
  const station: PlacedStation = {
    station: 's1',
    course: 'c',
    item: 'water',
    planned: [0, 0],
    recorded: [0, 0],
    distance: 120,
    margin: 3,
    limit: 20,
    verdict: 'fails',
    along: 119,
    measures: [1500, 1619],
  };
  expect(stationMove(station, 'metric')).toBe('119 m too far forward');
  expect(stationMove({ ...station, along: -119 }, 'metric')).toBe('119 m too far back');
  expect(stationMove({ ...station, along: 50 }, 'metric')).toBe('');
  expect(stationMove({ ...station, along: null }, 'metric')).toBe('');
  expect(stationMove({ ...station, verdict: 'holds' }, 'metric')).toBe('');
});

test('a trash drop says which of its ends was recorded', () => {
  expect(placedItem(verdict)).toBe('Sign');
  expect(placedItem({ ...verdict, item: 'trash', end: 'from' })).toBe('Trash, first box');
  expect(placedItem({ ...verdict, item: 'trash', end: 'to' })).toBe('Trash, last box');
});

test('verdicts are counted in their own words', () => {
  const of = (one: PlacedVerdict['verdict']): PlacedVerdict => ({ ...verdict, verdict: one });
  expect(verdictCounts([of('holds'), of('fails'), of('fails'), of('cannot tell')])).toBe(
    '1 OK, 2 out of place, 1 unclear',
  );
  expect(verdictCounts([])).toBe('0 OK, 0 out of place, 0 unclear');
});
