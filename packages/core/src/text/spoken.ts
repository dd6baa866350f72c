/** Findings with the texts and words of one language. */
import type { Finding } from '../finding.ts';
import { sayIn, type Say } from './say.ts';
import type { Sentence } from './sentence.ts';
import type { Voice } from './voice.ts';
import type { Words } from './words.ts';

/** Texts by code, whatever their parameters. */
export type AnyTexts = Readonly<Record<string, (params: Readonly<Record<string, unknown>>, say: Say) => Sentence>>;

/** What a language speaks with. */
export interface Spoken {
  readonly texts: AnyTexts;
  readonly words: Words;
}

/** What is the matter, what it should be and what to do. A finding without parameters or text keeps its message. */
export function sentenceWith(finding: Finding, voice: Omit<Voice, 'language'>, { texts, words }: Spoken): Sentence {
  const text = Object.hasOwn(texts, finding.code) ? texts[finding.code] : undefined;
  return text === undefined || finding.params === undefined
    ? [finding.message]
    : text(finding.params, sayIn(voice, words));
}
