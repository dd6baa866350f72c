import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { readDelimited } from '../delimited.ts';
import { harmlessText, textOfCell } from '../delimited.ts';
import { csvText } from './csvText.ts';
import { tries } from '../testing/tries.ts';

// RFC 4180, section 2: rules 1, 2, 5, 6 and 7.
it('ends every row with CRLF and quotes what holds commas, quotes or line ends, quotes doubled', () => {
  expect(
    csvText([
      ['a', 'b'],
      ['1,5', 'say "x"'],
      ['two\r\nlines', ''],
      [null, true],
    ]),
  ).toBe('a,b\r\n"1,5","say ""x"""\r\n"two\r\nlines",\r\n,yes\r\n');
});

it('writes numbers as numbers: negative ones without an apostrophe, small ones without an exponent', () => {
  expect(csvText([[-12.5, 0, 1e-9, -1e-7, 180]])).toBe('-12.5,0,0.000000001,-0.0000001,180\r\n');
  expect(() => csvText([[NaN]])).toThrow(RangeError);
});

it.each([
  '=1+1',
  '+1',
  '-1',
  '@SUM(A1)',
  '\t=1',
  '\r=1',
  '\n=1',
  ' =1',
  '\uFEFF=1',
  '\u200E=1',
  "'=1",
  "' =1",
  '\uFF1D1',
  '\uFF0B1',
  '\uFF0D1',
  '\uFF201',
  "=cmd|' /C calc'!A0",
])('makes %j harmless by an apostrophe, and its text is not lost', (text) => {
  expect(harmlessText(text)).toBe(`'${text}`);
  expect(textOfCell(harmlessText(text))).toBe(text);
});

it.each(['', 'Água Point', "'s nachts", '5 = 5', 'a-b', '<script>', '1'])('leaves %j as it is', (text) => {
  expect(harmlessText(text)).toBe(text);
  expect(textOfCell(text)).toBe(text);
});

it('gives back every text, whatever it holds, and no cell begins with what starts a formula', () => {
  const sign = fc.oneof(
    fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', "'", '"', ',', ' ', ';'),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
  );
  const row = fc.array(
    fc.array(sign, { maxLength: 8 }).map((signs) => signs.join('')),
    { minLength: 1, maxLength: 5 },
  );
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 5 }), (rows) => {
      const { records, broken } = readDelimited(`first,of,all,five,columns\r\n${csvText(rows)}`);
      expect(broken).toBeNull();
      const cells = records.slice(1).map((record) => record.map(({ text }) => text));
      expect(cells.map((record) => record.map(textOfCell))).toEqual(rows);
      for (const cell of cells.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/u);
    }),
    { seed: 20260714, numRuns: tries(1000) },
  );
});
