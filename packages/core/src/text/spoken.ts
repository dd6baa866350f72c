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

/** What is the matter, what it should be and what to do. A finding without text or without the parameters for it keeps its message. */
export function sentenceWith(finding: Finding, voice: Omit<Voice, 'language'>, { texts, words }: Spoken): Sentence {
  const text = Object.hasOwn(texts, finding.code) ? texts[finding.code] : undefined;
  if (text === undefined || finding.params === undefined) return [finding.message];
  try {
    const sentence = text(finding.params, sayIn(voice, words));
    // A parameter that is not there leaves no fault, only this word.
    return sentence.some((part) => part?.includes('undefined')) ? [finding.message] : sentence;
  } catch (error) {
    // Findings come back from JSON and from other tools; the types of parameters are known by code only.
    throw new RangeError(`the parameters of the finding ${finding.code} are not those that its sentence is made of`, {
      cause: error,
    });
  }
}
