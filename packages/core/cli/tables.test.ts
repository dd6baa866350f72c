import * as fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { paragraph } from './lineBreaks.ts';
import type { Screen } from './screen.ts';
import { table } from './tables.ts';

const screen = (width: number): Screen => ({ width, coloured: false, paint: (_, text) => text });
const HEAD = ['Station', ' Full marathon', ' Half marathon', 'Sign'];
const ROWS = [
  ['Quillet Park', '35.719 km, 37.563 km', '16.466 km', 'Water and gel ahead'],
  ['', '2.62 km', '–', 'Water ahead'],
];

describe('a table', () => {
  it('stands in one piece where there is room, texts to the left and numbers to the right', () => {
    expect(table(HEAD, ROWS, screen(100)).split('\n')).toEqual([
      'Station              Full marathon  Half marathon  Sign',
      'Quillet Park  35.719 km, 37.563 km      16.466 km  Water and gel ahead',
      '                           2.62 km              –  Water ahead',
    ]);
  });

  it('breaks headings and texts at spaces and lists after commas, but no number', () => {
    expect(table(HEAD, ROWS, screen(55)).split('\n')).toEqual([
      'Station             Full       Half  Sign',
      '                marathon   marathon',
      'Quillet Park  35.719 km,  16.466 km  Water and gel',
      '               37.563 km             ahead',
      '                 2.62 km          –  Water ahead',
    ]);
  });

  it('becomes several where it is still too wide, each with the first column', () => {
    const lines = table(HEAD, ROWS, screen(40)).split('\n');
    expect(lines.filter((line) => line.startsWith('Station'))).toHaveLength(2);
    expect(lines.filter((line) => line.startsWith('Quillet Park'))).toHaveLength(2);
  });

  it('leaves no column by itself where two tables can share them', () => {
    const head = ['Id', ...Array.from({ length: 7 }, (_, k) => ` Column${k}`)];
    const blocks = table(head, [head.map(() => '1')], screen(50)).split('\n\n');
    expect(blocks.map((block) => block.split('\n')[0]!.trim().split(/\s+/u).length)).toEqual([5, 4]);
  });

  it('counts what a terminal shows: wide characters take two columns, marks none', () => {
    const [, first, second] = table(
      ['Name', ' n'],
      [
        ['日本', '1'],
        ['é́x', '2'],
      ],
      screen(40),
    ).split('\n');
    expect([stringWidth(first!), stringWidth(second!)]).toEqual([7, 7]);
  });

  it('takes the breaks out of cells, and what would turn the reading order', () => {
    expect(table(['A'], [['x\ny\u202Ez\u001B[2J']], screen(40))).toBe('A\nx y z [2J');
  });

  it('fits any width that its words fit, and loses none of them', () => {
    const cell = fc
      .array(fc.constantFrom('12.3 km', 'Ridge', 'ahead,', '–', 'of', '日本'), { maxLength: 4 })
      .map((words) => words.join(' '));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(cell, cell, cell, cell), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 70, max: 160 }),
        (rows, width) => {
          const text = table(['One', ' Two', 'Three', ' Four'], rows, screen(width));
          for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
          const words = new Set(text.split(/\s+/u));
          const lost = rows
            .flat()
            .flatMap((one) => one.split(' '))
            .filter((word) => word !== '' && !words.has(word));
          expect(lost).toEqual([]);
          // A number is never parted from its unit.
          expect(text).not.toMatch(/12\.3(?! km)/u);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe('a paragraph', () => {
  it('breaks between words, keeps a number with its unit, and hangs', () => {
    expect(paragraph('It should be within 12 m of the mark', 24, '  ')).toBe('It should be within\n  12 m of the mark');
  });

  it('leaves a word that is too long whole', () => {
    expect(paragraph('see fixtures/demo/plan.json now', 10)).toBe('see\nfixtures/demo/plan.json\nnow');
  });
});
