/** Numbers as spreadsheets write them. Reference for the marks of a language: Unicode CLDR, by `Intl.NumberFormat`. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { real } from '../../testing/numbers.ts';
import { tries } from '../../testing/tries.ts';
import { commasOf, digitsOf } from './numbers.ts';

/** Each text of a column, read as the column has it. */
const column = (...texts: string[]): unknown[] =>
  texts.map((text) => {
    const read = digitsOf(text, commasOf(texts));
    return typeof read === 'string' ? read : Number(read.digits);
  });

describe('the numbers of a column', () => {
  it.each(['en-US', 'de-DE'])('are those that %s wrote, with marks of thousands and decimals', (language) => {
    const written = new Intl.NumberFormat(language, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
    fc.assert(
      fc.property(fc.array(real(-5e7, 5e7), { minLength: 1, maxLength: 5 }), (values) => {
        const rounded = values.map((value) => Number(value.toFixed(2)));
        expect(column(...rounded.map((value) => written.format(value)))).toEqual(rounded.map((value) => value + 0));
      }),
      { numRuns: tries(300) },
    );
  });

  it('may have a sign, and several marks of thousands without a decimal one', () => {
    expect(column('+5', '-12', '1,250,000', '-2,000,000')).toEqual([5, -12, 1_250_000, -2_000_000]);
    expect(column('0,125', '12,5')).toEqual([0.125, 12.5]);
  });

  it('are unclear where one comma and three digits could be either, until another number of the column tells', () => {
    expect(column('1,250')).toEqual(['unclear']);
    expect(column('1,250', '5.5')).toEqual([1250, 5.5]);
    expect(column('1,250', '1.250,5')).toEqual([1.25, 1250.5]);
    expect(column('1,250', '5,5', '5.5')[0]).toBe('unclear');
    expect(column('1.250', '5,5')[0]).toBe('unclear');
  });

  it('are none where marks stand as no language sets them', () => {
    for (const text of [
      '1,25,000.5',
      '1.25.000,5',
      '12,50,1',
      '1,2,3',
      '1.2.3',
      '5,',
      '5.',
      '1,000.',
      '5 km',
      '',
      '--5',
    ])
      expect(column(text), text).toEqual(['none']);
  });
});
