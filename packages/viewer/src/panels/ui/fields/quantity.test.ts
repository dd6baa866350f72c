import { parseLength } from '@halfcup/core/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tries } from '../../../testing.ts';
import { besideOf, DURATION, figureIn, LENGTH, showQuantity, VOLUME, writeQuantity } from './quantity.ts';

describe('a quantity in a field', () => {
  test('is shown as the file has it, bare only in the unit beside the field', () => {
    expect(showQuantity(LENGTH, '100 yd', 'yd')).toBe('100');
    expect(showQuantity(LENGTH, '100 yd', 'm')).toBe('100 yd');
    expect(showQuantity(LENGTH, 80, 'm')).toBe('80');
    expect(showQuantity(LENGTH, 80, 'yd')).toBe('80 m');
    expect(showQuantity(DURATION, '4:25:00', 'min')).toBe('4:25:00');
    expect(showQuantity(VOLUME, '7 fl oz', 'fl oz')).toBe('7');
  });

  test('has beside it the unit of a bare number, and its worth where the file has another unit', () => {
    expect(besideOf(LENGTH, undefined, 'm')).toBe('m');
    expect(besideOf(LENGTH, '100 yd', 'yd')).toBe('yd');
    expect(besideOf(LENGTH, '100 yd', 'm')).toBe('= 91.44 m');
    expect(besideOf(LENGTH, 91.44, 'yd')).toBe('= 100 yd');
  });

  test('is written in the form the file has where that agrees, else as a number of metres or a text with its unit', () => {
    expect(writeQuantity(LENGTH, '120', '100 yd', 'yd')).toBe('120 yd');
    expect(writeQuantity(LENGTH, '120', '100yd', 'yd')).toBe('120yd');
    expect(writeQuantity(LENGTH, '120', '100 yd', 'm')).toBe(120);
    expect(writeQuantity(LENGTH, '120', undefined, 'm')).toBe(120);
    expect(writeQuantity(LENGTH, '120', undefined, 'yd')).toBe('120 yd');
    expect(writeQuantity(LENGTH, '5.5', '5 km', 'km')).toBe('5.5 km');
    expect(writeQuantity(LENGTH, '90 m', 80, 'yd')).toBe(90);
    expect(writeQuantity(DURATION, '45', 1800, 'min')).toBe('45 min');
  });

  test('that cannot be read stays the text that was typed', () => {
    for (const text of ['100 furlongs', '1,5', '-3', 'about 5', '4:25'])
      expect(writeQuantity(LENGTH, text, 80, 'm')).toBe(text);
  });

  test('typed as it is shown, means what the file had', () => {
    const unit = fc.constantFrom('m', 'yd', 'km', 'mi');
    const raw = fc.oneof(
      fc.integer({ min: 0, max: 50_000 }),
      fc
        .tuple(fc.integer({ min: 0, max: 9999 }), unit, fc.constantFrom('', ' '))
        .map(([count, of, space]) => `${count}${space}${of}`),
    );
    fc.assert(
      fc.property(raw, unit, (value, shown) => {
        const again = writeQuantity(LENGTH, showQuantity(LENGTH, value, shown), value, shown);
        expect(parseLength(again)).toEqual(parseLength(value));
      }),
      { seed: 6, numRuns: tries(300) },
    );
  });

  test('a default is told in the unit shown, to a thousandth', () => {
    expect(figureIn(LENGTH, 91.44, 'yd')).toBe('100');
    expect(figureIn(LENGTH, 91.44, 'm')).toBe('91.44');
  });
});
