/** The languages that the papers are printed in. Another language: one more file, and one more name here. */
import { en } from './en.ts';
import { es } from './es.ts';
import type { SheetText } from './text.ts';

export const LANGUAGES: readonly SheetText[] = [en, es];

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
  const found = LANGUAGES.find((one) => one.language === asked) ?? LANGUAGES.find((one) => one.language === main);
  if (found !== undefined) return { text: found, note: null };
  const known = LANGUAGES.map((one) => `"${one.language}" (${one.name})`).join(', ');
  return { text: en, note: `No papers in the language "${language}": printed in English. Languages there are: ${known}.` };
}
