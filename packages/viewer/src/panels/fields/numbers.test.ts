import { expect, test } from 'vitest';
import { COLUMN, LINE, LINES } from './NumbersField.tsx';

test('a place is two numbers with a comma or a space between', () => {
  for (const typed of ['-17.4, -33.2', '-17.4 -33.2', '−17.4;−33.2']) expect(LINE.write(typed, undefined)).toEqual([-17.4, -33.2]);
  expect(LINE.show([-17.4, -33.2])).toBe('-17.4, -33.2');
});

test('what is no number stays as it was typed, for the schema to judge', () => {
  expect(LINE.write('west, -33.2', undefined)).toEqual(['west', -33.2]);
});

test('shares with times are read line by line and shown again the same', () => {
  const raw = [[0, '1:08:00'], [1, '3:25:00']];
  expect(LINES.write(LINES.show(raw), undefined)).toEqual(raw);
  expect(COLUMN.write(' 3:59:10 \n\n4:00:00', undefined)).toEqual(['3:59:10', '4:00:00']);
});
