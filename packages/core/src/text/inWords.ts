/** Findings in a voice: the same sentence on the page, in the report, on the terminal and in JSON. */
import type { Finding } from '../finding.ts';
import { findings as english } from './en/findings.ts';
import { words as englishWords } from './en/words.ts';
import { findings as spanish } from './es/findings.ts';
import { words as spanishWords } from './es/words.ts';
import { sayIn, type Say } from './say.ts';
import { joined, type Sentence } from './sentence.ts';
import { mainTag, type Voice } from './voice.ts';
import type { Words } from './words.ts';

type AnyTexts = Readonly<Record<string, (params: Readonly<Record<string, unknown>>, say: Say) => Sentence>>;

interface Spoken {
  readonly texts: AnyTexts;
  readonly words: Words;
}

const SPOKEN: Readonly<Record<string, Spoken>> = {
  en: { texts: english as unknown as AnyTexts, words: englishWords },
  es: { texts: spanish as unknown as AnyTexts, words: spanishWords },
};

const spokenIn = (language: string): Spoken => SPOKEN[mainTag(language)] ?? SPOKEN['en']!;

/**
 * What is the matter, what it should be and what to do, in a voice. A finding whose code has no text, such as a
 * caller's own, keeps its message.
 */
export function sentenceOf(finding: Finding, voice: Voice): Sentence {
  const { texts, words } = spokenIn(voice.language);
  const text = Object.hasOwn(texts, finding.code) ? texts[finding.code] : undefined;
  return text === undefined || finding.params === undefined
    ? [finding.message]
    : text(finding.params, sayIn(voice, words));
}

/** The same finding, its message in that voice. */
export const inWords = (finding: Finding, voice: Voice): Finding => ({
  ...finding,
  message: joined(sentenceOf(finding, voice)),
});

/** What a finding is about, by name: its station, else its race, else its course; empty where it is about none. */
export function subjectOf({ where }: Finding, { names }: Pick<Voice, 'names'>): string {
  if (where.station !== undefined) return names.station(where.station);
  if (where.race !== undefined) return names.race(where.race);
  return where.course === undefined ? '' : names.course(where.course);
}
