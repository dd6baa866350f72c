import { expect, it } from 'vitest';
import { typedCount } from './count.ts';

it.each([
  ['1000', 1000],
  [' 1,000 ', 1000],
  ['1 000', 1000],
  ['1\u202f000', 1000],
  ['1.000', 1000],
  ['1’000', 1000],
  ["12'345", 12_345],
  ['1,234,567', 1_234_567],
  ['0', 0],
])('%s is a count, grouped or not', (text, count) => expect(typedCount(text)).toBe(count));

it.each(['', '1,00', '1.5', '1,000.5', '1,000.000', '1000,000', ',100', '-1', '12345678', '10 km'])(
  '“%s” is none, so that no decimal is taken for one',
  (text) => expect(typedCount(text)).toBeNull(),
);
