/** Findings in a voice: the same sentence on the page, in the report, on the terminal and in JSON. */
import type { Finding } from '../finding.ts';
import { findings as spanish } from './es/findings.ts';
import { words as spanishWords } from './es/words.ts';
import { ENGLISH } from './inEnglish.ts';
import { sayIn, type Say } from './say.ts';
import { joined, type Sentence } from './sentence.ts';
import { type AnyTexts, type Spoken, sentenceWith } from './spoken.ts';
import { mainTag, type Voice, isVoice } from './voice.ts';
import { want } from '../wants.ts';
import { isFinding } from '../finding.ts';

const SPOKEN: Readonly<Record<string, Spoken>> = {
  en: ENGLISH,
  es: { texts: spanish as unknown as AnyTexts, words: spanishWords },
};

/** The languages that findings are spoken in. */
export const SPOKEN_LANGUAGES: readonly string[] = Object.keys(SPOKEN);

/** A language's texts and words; English where Halfcup does not speak it. */
export const spokenIn = (language: string): Spoken => SPOKEN[mainTag(language)] ?? ENGLISH;

/**
 * The formats in which a voice says lengths, volumes, times, counts and names; SI in, text out. A language that Halfcup
 * does not speak says them as English does; a length that is not finite is a dash.
 * @example
 * ```ts
 * import { NO_NAMES, sayOf } from '@halfcup/core/sentences';
 * const say = sayOf({ language: 'en', units: 'imperial', names: NO_NAMES });
 * say.length(91.44); // → '100 yd'
 * say.length(5.4864); // → '18 ft'
 * say.far(41393.4); // → '25.72 mi'
 * ```
 */
export function sayOf(voice: Voice): Say {
  want('sayOf', 'voice', isVoice, voice);
  return sayIn(voice, spokenIn(voice.language).words);
}

/**
 * What is the matter, what it should be and what to do, in a voice (`voiceOf` makes a plan's). A finding whose code has no
 * text, such as a caller's own, keeps its message.
 * @example
 * ```ts
 * import { findingSentence, readPlan } from '@halfcup/core';
 * import { voiceOf } from '@halfcup/core/sentences';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }], "stations": [] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const own = { code: 'own-rule', severity: 'note', message: 'The café is shut.', where: {} } as const;
 * findingSentence(own, voiceOf(read.value.plan)); // → ['The café is shut.']
 * ```
 */
export function findingSentence(finding: Finding, voice: Voice): Sentence {
  want('findingSentence', 'finding', isFinding, finding);
  want('findingSentence', 'voice', isVoice, voice);
  return sentenceWith(finding, voice, spokenIn(voice.language));
}

/**
 * The same finding, its message in that voice.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { findingInWords, voiceOf } from '@halfcup/core/sentences';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }], "stations": [] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const own = { code: 'own-rule', severity: 'note', message: 'The café is shut.', where: {} } as const;
 * findingInWords(own, voiceOf(read.value.plan, { language: 'es' })).message; // → 'The café is shut.'
 * ```
 */
export function findingInWords(finding: Finding, voice: Voice): Finding {
  want('findingInWords', 'finding', isFinding, finding);
  want('findingInWords', 'voice', isVoice, voice);
  return {
    ...finding,
    message: joined(findingSentence(finding, voice)),
  };
}
