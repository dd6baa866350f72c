/** What the parser keeps in silence is counted before it reads on. Limits are those of the table. */
import { SaxesParser } from 'saxes';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Finding } from '../finding.ts';
import { LIMITS } from '../limits.ts';
import { createGpxReader, readGpx } from './read.ts';

const MOST = LIMITS.gpx.characters;
const HEAD = '<gpx version="1.1" creator="c">\n <!-- a --><metadata><name>';

/** Gives a text to a reader whole, as bytes, or in pieces of a size. */
const WAYS: readonly (readonly [string, (text: string) => readonly Finding[]])[] = [
  ['whole', (text) => readGpx(text, 'a.gpx').findings],
  ['as bytes', (text) => readGpx(new TextEncoder().encode(text), 'a.gpx').findings],
  [
    'in pieces',
    (text) => {
      const reader = createGpxReader('a.gpx');
      for (let at = 0; at < text.length; at += 9973) reader.write(text.slice(at, at + 9973));
      return reader.close().findings;
    },
  ],
];

const told = (findings: readonly Finding[]): readonly unknown[] =>
  findings.map(({ code, where, params }) => [code, (params as { what?: string }).what, where.line, where.column]);

const of = (unit: string, length: number): string => unit.repeat(Math.ceil(length / unit.length)).slice(0, length);

describe.each(WAYS)('Given %s,', (_, read) => {
  it.each([
    ['a comment', '<!--', 'x-', '-->'],
    ['a comment that holds tags', '<!--', 'x-<a>', '-->'],
    ['CDATA', '<![CDATA[', 'x', ']]>'],
    ['CDATA of brackets', '<![CDATA[', ']', ']]>'],
    ['an instruction', '<?x ', '?x', '?>'],
    ['an instruction that holds tags', '<?x ', '<a>?', '?>'],
  ])('%s is read up to the limit, and refused at its beginning past it.', (_title, opens, unit, closes) => {
    // The name of an instruction is of its text too.
    const inside = MOST - (opens === '<?x ' ? 2 : 0);
    const file = (length: number): string => `${HEAD}</name>${opens}${of(unit, length - 1)}x${closes}</metadata></gpx>`;
    expect(told(read(file(inside)))).toEqual([]);
    expect(told(read(file(inside + 1)))).toEqual([
      ['past-limit', 'characters', 2, ' <!-- a --><metadata><name></name>'.length + 1],
    ]);
  });

  it.each([
    ['a comment', '<!--', 'x-'],
    ['CDATA', '<![CDATA[', ']'],
    ['an instruction', '<?x ', '?x'],
    ['a text', '', 'x\n'],
    ['a text of entities', '', '&amp;'],
    ['an attribute', '<a b="', 'x\n'],
    ['an attribute of entities', '<a b="', '&amp;>'],
  ])('%s that never ends is refused before the parser has read a million characters.', (_title, opens, unit) => {
    const written = vi.spyOn(SaxesParser.prototype, 'write');
    const findings = read(HEAD + opens + of(unit, 4 * MOST * unit.length));
    expect(findings.map(({ code }) => code)).toEqual(['past-limit']);
    const taken = written.mock.calls.reduce((sum, [chunk]) => sum + (chunk as string).length, 0);
    expect(taken).toBeLessThan(10 * MOST);
  });

  it('a DOCTYPE is refused before what it declares is read.', () => {
    const written = vi.spyOn(SaxesParser.prototype, 'write');
    const text = `<!-- a -->\n<!DOCTYPE gpx [\n${'<!ENTITY a "<!DOCTYPE b>">\n'.repeat(10_000)}`;
    expect(told(read(text))).toEqual([['gpx-doctype', undefined, 2, 1]]);
    const taken = written.mock.calls.reduce((sum, [chunk]) => sum + (chunk as string).length, 0);
    expect(taken).toBeLessThan(100);
  });
});

it('A comment, CDATA and an instruction are known wherever they are cut.', () => {
  const inside = `<!---->${of('x', 200)}<?a?><?b ?c??><![CDATA[]]]]><!--<?--><?d <!--?><![CDATA[-->]]>`;
  const opening = `${of('z', 66_000)}${inside}`;
  for (let at = 0; at <= opening.length - 66_000; at++) {
    const reader = createGpxReader('a.gpx');
    reader.write(`<gpx version="1.1" creator="c">${opening.slice(0, 66_000 + at)}`);
    reader.write(`${opening.slice(66_000 + at)}</gpx>`);
    expect([at, told(reader.close().findings)]).toEqual([at, []]);
  }
});

it('An attribute that is longer than a text may be is refused.', () => {
  const file = (length: number): string => `<gpx version="1.1" creator="${of('x', length)}"></gpx>`;
  expect(told(readGpx(file(MOST), 'a.gpx').findings)).toEqual([]);
  expect(told(readGpx(file(MOST + 1), 'a.gpx').findings)).toEqual([['past-limit', 'characters', 1, MOST + 30]]);
});

afterEach(() => vi.restoreAllMocks());
