import { words as en } from './en/words.ts';
import { words as es } from './es/words.ts';
import type { Words } from './words.ts';

const WORDS: Readonly<Record<string, Words>> = { en, es };

/** The words of a language (BCP 47 tag); English where Halfcup does not speak it. */
export const wordsOf = (language: string): Words => WORDS[language.trim().toLowerCase().split('-', 1)[0]!] ?? en;
