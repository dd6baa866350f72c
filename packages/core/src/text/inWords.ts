/** Findings in a voice: the same sentence on the page, in the report, on the terminal and in JSON. */
import type { Finding } from '../finding.ts';
import { findings as english } from './en/findings.ts';
import { words as englishWords } from './en/words.ts';
import { findings as spanish } from './es/findings.ts';
import { words as spanishWords } from './es/words.ts';
import { sayIn, type Say } from './say.ts';
import { joined, type Sentence } from './sentence.ts';
import type { Voice } from './voice.ts';
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

const spokenIn = (language: string): Spoken => SPOKEN[language.trim().toLowerCase().split('-', 1)[0]!] ?? SPOKEN['en']!;

/**
 * The formats in which a voice says lengths, volumes, times, counts and names; SI in, text out. A language that Halfcup
 * does not speak says them as English does; what is not finite is a dash.
 * @example
 * ```ts
 * import { NO_NAMES, sayOf } from '@halfcup/core';
 * const say = sayOf({ language: 'en', units: 'imperial', names: NO_NAMES });
 * say.length(91.44); // → '100 yd'
 * say.length(5.4864); // → '18 ft'
 * say.far(41393.4); // → '25.72 mi'
 * ```
 */
export const sayOf = (voice: Voice): Say => sayIn(voice, spokenIn(voice.language).words);

/**
 * A finding's sentence in a voice, in up to three parts: what is the matter, what it should be, what to do. A finding
 * whose code has no text, such as a caller's own, has its message as the only part. `inWords` makes one text of them.
 * @example
 * ```ts
 * import { NO_NAMES, sentenceOf } from '@halfcup/core';
 * const own = { code: 'own-check', severity: 'note' as const, message: 'A cone is missing.', where: {} };
 * sentenceOf(own, { language: 'en', units: 'metric', names: NO_NAMES }); // → ['A cone is missing.']
 * ```
 */
export function sentenceOf(finding: Finding, voice: Voice): Sentence {
  const { texts, words } = spokenIn(voice.language);
  const text = Object.hasOwn(texts, finding.code) ? texts[finding.code] : undefined;
  return text === undefined || finding.params === undefined
    ? [finding.message]
    : text(finding.params, sayIn(voice, words));
}

/**
 * The same finding with its message in a voice: language, units and names. A finding whose code has no text keeps its message.
 * @example
 * ```ts
 * import { NO_NAMES, inWords } from '@halfcup/core';
 * const own = { code: 'own-check', severity: 'note' as const, message: 'A cone is missing.', where: {} };
 * inWords(own, { language: 'en', units: 'imperial', names: NO_NAMES }).message; // → 'A cone is missing.'
 * ```
 */
export const inWords = (finding: Finding, voice: Voice): Finding => ({
  ...finding,
  message: joined(sentenceOf(finding, voice)),
});

/**
 * What a finding is about, by name: its station, else its race, else its course; empty where it is about none.
 * @example
 * ```ts
 * import { NO_NAMES, subjectOf } from '@halfcup/core';
 * const found = { code: 'own-check', severity: 'note' as const, message: 'A cone is missing.', where: { station: 's3' } };
 * subjectOf(found, { names: { ...NO_NAMES, station: () => 'Wrack Fork' } }); // → 'Wrack Fork'
 * ```
 */
export function subjectOf({ where }: Finding, { names }: Pick<Voice, 'names'>): string {
  if (where.station !== undefined) return names.station(where.station);
  if (where.race !== undefined) return names.race(where.race);
  return where.course === undefined ? '' : names.course(where.course);
}
