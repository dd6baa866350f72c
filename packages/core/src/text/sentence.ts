/**
 * The one builder of findings. A finding is data (code and named parameters); a language has one text for each code,
 * which makes up to three short sentences of them. `findingMaker` makes findings with the English sentence in metric units
 * and without names; `inWords` (languages.ts) says them again in a plan's units, names and language.
 */
import type { Finding } from '../finding.ts';
import { words } from './en/words.ts';
import { sayIn, type Say } from './say.ts';
import { NO_NAMES } from './voice.ts';

/** What is the matter; what it should be; what to do. Each one short sentence, or left out. */
export type Sentence = readonly [matter: string, should?: string | null, action?: string | null];

/** A language's text for each code of a theme, from that code's named parameters. */
export type TextsOf<P> = { readonly [C in keyof P]: (params: P[C], say: Say) => Sentence };

/** All of a finding but what the maker adds. */
export type Facts = Omit<Finding, 'code' | 'message' | 'params'>;

/** The parts as one text. */
export const joined = (sentence: Sentence): string =>
  sentence.filter((part) => part !== undefined && part !== null && part !== '').join(' ');

/** English, metric, nobody's names: what a message says where no plan is known. */
export const PLAIN_SAY: Say = sayIn({ units: 'metric', names: NO_NAMES }, words);

/** Makes the findings of a theme: code and parameters go together by type. */
export type Maker<P> = <C extends keyof P & string>(code: C, params: P[C], facts: Facts) => Finding;

/** The maker of a theme's findings, with the sentences of these texts. */
export const findingMaker =
  <P>(texts: TextsOf<P>): Maker<P> =>
  (code, params, { severity, ...facts }) => ({
    code,
    severity,
    message: joined(texts[code](params, PLAIN_SAY)),
    params: params as Readonly<Record<string, unknown>>,
    ...facts,
  });
