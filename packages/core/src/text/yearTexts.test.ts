/** Sentences on counts, rosters and tables, in every language: each problem at least once. */
import { describe, expect, it } from 'vitest';
import { LEFT_KEYS } from '../kinds.ts';
import { year as english } from './en/findings/year.ts';
import { words as englishWords } from './en/words.ts';
import { year as spanish } from './es/findings/year.ts';
import { words as spanishWords } from './es/words.ts';
import type { YearParams } from './params/year.ts';
import { sayIn } from './say.ts';
import { type Sentence, joined } from './sentence.ts';

const known = { known: ['s1 (Pier)', 's2'], more: 3 };

const SAMPLES: { readonly [C in keyof YearParams]: readonly YearParams[C][] } = {
  'table-unread': [
    ...(['openQuote', 'afterQuote', 'noLine', 'noRows'] as const).map((problem) => ({ problem })),
    { problem: 'tooMany', fields: 7, header: 6 },
    { problem: 'twice', column: 'id' },
    { problem: 'none', column: 'station', header: ['a', 'b'], more: 0 },
    { problem: 'none', column: 'station', header: ['a', 'b'], more: 4 },
    { problem: 'more', rows: 1 },
    { problem: 'more', rows: 12 },
  ],
  'table-column-unknown': [
    { columns: ['shirt'], more: 0 },
    { columns: ['shirt', 'shoe'], more: 1 },
  ],
  'leftovers-unread': [
    { problem: 'noStation' },
    { problem: 'unknownStation', found: 's9', ...known },
    { problem: 'unknownStation', found: 's9', known: [], more: 0 },
    { problem: 'twice', station: 's1', line: 4 },
    ...LEFT_KEYS.map((count) => ({ problem: 'notNumber' as const, count, found: 'seven' })),
    { problem: 'tooMany', item: 'waterJug', left: 20.5, sent: 12 },
    { problem: 'tooMany', item: 'cups', left: 1701, sent: 1700, pieces: true },
    { problem: 'tooMany', item: 'gels', left: 241, sent: 240, pieces: true },
    { problem: 'notSent', item: 'gels' },
    { problem: 'whichDrink', drink: 'sportsDrink' },
    { problem: 'noDrink', cups: 300 },
    { problem: 'noCounts' },
  ],
  'roster-unread': [
    ...(['noName', 'noStation', 'nobody'] as const).map((problem) => ({ problem })),
    { problem: 'unknownStation', found: 's9', ...known },
    { problem: 'unknownStation', found: 's9', known: [], more: 0 },
    { problem: 'notTime', found: 'soon' },
    { problem: 'backwards', from: 36_000, until: 30_000 },
    { problem: 'twice', line: 2 },
  ],
};

const names = { station: () => 'Pier', race: () => 'Ten', course: () => 'Shore' };
const sentencesIn = (
  texts: typeof english,
  words: typeof englishWords,
): readonly { readonly code: string; readonly parts: Sentence }[] =>
  (Object.keys(SAMPLES) as (keyof YearParams)[]).flatMap((code) =>
    SAMPLES[code].map((params) => ({
      code,
      parts: (texts[code] as (params: unknown, say: unknown) => Sentence)(
        params,
        sayIn({ units: 'metric', names }, words),
      ),
    })),
  );
const VOICES = [
  ['en', sentencesIn(english, englishWords)],
  ['es', sentencesIn(spanish, spanishWords)],
] as const;

describe.each(VOICES)('sentences on counts and rosters in %s', (_, sentences) => {
  it('are short, whole, and hold nothing that only a program knows', () => {
    for (const { code, parts } of sentences) {
      for (const part of parts.filter((one) => one !== null && one !== undefined)) {
        expect(part, code).toMatch(/^[\p{Lu}\d“«].*\.$/u);
        expect(part.split(/\s+/u).length, `${code}: ${part}`).toBeLessThanOrEqual(30);
      }
      expect(joined(parts), code).not.toMatch(/undefined|null|NaN|–|\[object|\.\.|\s{2}|\p{Ll}\p{Lu}/u);
    }
  });

  it('differ from one problem to the next', () => {
    const texts = sentences.map(({ parts }) => joined(parts));
    const shared = texts.length - new Set(texts).size;
    expect(shared).toBe(0);
  });
});

it('no sentence of one language is that of the other, and each has as many parts', () => {
  const [[, en], [, es]] = VOICES;
  en.forEach(({ code, parts }, k) => {
    expect(joined(es[k]!.parts), code).not.toBe(joined(parts));
    expect(es[k]!.parts.filter(Boolean).length, code).toBe(parts.filter(Boolean).length);
  });
});
