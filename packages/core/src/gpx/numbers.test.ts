import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseNumber } from './numbers.ts';
import { tries } from '../testing/tries.ts';

// XML Schema 1.1 part 2, 3.3.3 (decimal) and 3.3.5 (double): the lexical forms, white space collapsed.
test.each([
  ['12.5', 12.5],
  ['-12.5', -12.5],
  ['+12.5', 12.5],
  ['12.', 12],
  ['.5', 0.5],
  ['0012', 12],
  ['1e2', 100],
  ['1.5E-3', 0.0015],
  [' \n7\t', 7],
  ['123456789012345678901234567890', 1.2345678901234568e29],
])('%j is a number', (text, value) => {
  expect(parseNumber(text)).toBe(value);
});

test.each([
  '',
  ' ',
  '.',
  '-',
  '+',
  '-.',
  '12abc',
  '0x10',
  '1,5',
  '1 2',
  '1.2.3',
  '--1',
  'NaN',
  'INF',
  'Infinity',
  '1e',
  'e5',
  '1e999',
  '١٢',
  '12°30′',
])('%j is no number', (text) => {
  expect(parseNumber(text)).toBeNull();
});

test('A negative zero becomes zero, so that no direction turns round on its sign.', () => {
  expect(parseNumber('-0')).toBe(0);
  expect(parseNumber('-0.000')).toBe(0);
  expect(parseNumber('-0e5')).toBe(0);
});

// ECMAScript's Number() rounds to the nearest double (ECMA-262, StringToNumber).
test('Every decimal is the double nearest to it, as Number gives it.', () => {
  const digits = fc.string({
    unit: fc.constantFrom('0', '1', '2', '3', '4', '5', '6', '7', '8', '9'),
    minLength: 1,
    maxLength: 12,
  });
  const decimal = fc
    .tuple(fc.constantFrom('', '-', '+'), digits, fc.option(digits))
    .map(([sign, whole, part]) => sign + whole + (part === null ? '' : `.${part}`));
  fc.assert(
    fc.property(decimal, (text) => {
      expect(parseNumber(text)).toBe(Number(text) + 0);
    }),
    { seed: 20_240_611, numRuns: tries(5000) },
  );
});

test('A number printed by the language is read back exactly.', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(parseNumber(String(value))).toBe(value + 0);
    }),
    { seed: 7, numRuns: tries(5000) },
  );
});
