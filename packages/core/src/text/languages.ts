/** The languages that the papers are printed in. Another language: one more file, and one more name here. */
import { en } from './en.ts';
import { es } from './es.ts';
import type { SheetText } from './sheetText.ts';
import { aText, want } from '../wants.ts';

/** A language that the papers can be printed in. */
export interface Language {
  /** BCP 47 tag. */
  readonly language: string;
  /** Its own name for itself. */
  readonly name: string;
}

/** Every sentence of every language. */
export const SHEET_TEXTS: readonly SheetText[] = [en, es];

/** The languages that the papers can be printed in, the one that stands in for all others first. */
export const LANGUAGES: readonly Language[] = SHEET_TEXTS;

/** A language's sentences, and what to tell the reader where they are not in the language asked for. */
export interface ChosenText {
  readonly text: SheetText;
  /** `null` where the language asked for is there. */
  readonly note: string | null;
}

/** The sentences for a BCP 47 tag: the same tag, else the same language ("es-MX" takes "es"), else English with a note that says so. */
export function textOf(language: string): ChosenText {
  const asked = language.trim().toLowerCase();
  const main = asked.split('-', 1)[0]!;
  const found = SHEET_TEXTS.find((one) => one.language === asked) ?? SHEET_TEXTS.find((one) => one.language === main);
  if (found !== undefined) return { text: found, note: null };
  const known = SHEET_TEXTS.map((one) => `"${one.language}" (${one.name})`).join(', ');
  return {
    text: en,
    note: `No papers in the language "${language}": printed in English. Languages there are: ${known}.`,
  };
}

/**
 * What to tell the reader where papers in a language (BCP 47 tag) come out in English, with the languages that there are;
 * `null` where they come out in it. "es-MX" takes "es".
 * @example
 * ```ts
 * import { languageNote } from '@halfcup/core/papers';
 * languageNote('es-MX'); // → null
 * languageNote('tlh')?.slice(0, 31); // → 'No papers in the language "tlh"'
 * ```
 */
export function languageNote(language: string): string | null {
  want('languageNote', 'language', aText, language);
  return textOf(language).note;
}
