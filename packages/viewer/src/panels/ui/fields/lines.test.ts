import { expect, test } from 'vitest';
import { SEVERAL, SINGLE } from './LinesField.tsx';

test('shares with times, and places, are read line by line and shown again the same', () => {
  const raw = [
    [0, '1:08:00'],
    [1, '3:25:00'],
  ];
  expect(SEVERAL.write(SEVERAL.show(raw), undefined)).toEqual(raw);
  for (const typed of ['-17.4, -33.2', '-17.4 -33.2', ' −17.4;−33.2 \n'])
    expect(SEVERAL.write(typed, undefined)).toEqual([[-17.4, -33.2]]);
});

test('one value a line, blank lines left out', () => {
  expect(SINGLE.write(' 3:59:10 \n\n4:00:00', undefined)).toEqual(['3:59:10', '4:00:00']);
});

test('what is no number stays as it was typed, for the schema to judge', () => {
  expect(SEVERAL.write('west, -33.2', undefined)).toEqual([['west', -33.2]]);
});
