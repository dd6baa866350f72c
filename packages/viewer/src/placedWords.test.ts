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
  expect(moveText(verdict, 'metric')).toBe('20.0 upstream');
  expect(moveText({ ...verdict, move: 9.144 }, 'imperial')).toBe('10.0 downstream');
  expect(moveText({ ...verdict, move: 0 }, 'metric')).toBe('');
  expect(moveText({ ...verdict, move: 0.004 }, 'metric')).toBe('');
});

test('a trash drop says which of its ends was recorded', () => {
  expect(placedItem(verdict)).toBe('Ahead');
  expect(placedItem({ ...verdict, item: 'trash', end: 'from' })).toBe('Trash, near end');
  expect(placedItem({ ...verdict, item: 'trash', end: 'to' })).toBe('Trash, far end');
});

test('verdicts are counted in their own words', () => {
  const of = (one: PlacedVerdict['verdict']): PlacedVerdict => ({ ...verdict, verdict: one });
  expect(verdictCounts([of('holds'), of('fails'), of('fails'), of('cannot tell')])).toBe(
    '1 holds, 2 fail, 1 cannot tell',
  );
  expect(verdictCounts([])).toBe('0 hold, 0 fail, 0 cannot tell');
});
