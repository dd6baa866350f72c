import type { PlacedVerdict } from '@halfcup/core';
import { expect, test } from 'vitest';
import { moveText, placedItem, verdictCounts } from './placedWords.ts';

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
