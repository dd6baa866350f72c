/** What lists of checks say of each: how it should be, why it could not run, where its rule comes from, in a language. */
import * as english from './en/checks.ts';
import * as spanish from './es/checks.ts';
import { mainTag } from './voice.ts';
import { aText, want } from '../wants.ts';

interface CheckTexts {
  readonly titles: Readonly<Record<string, string>>;
  readonly reasons: Readonly<Record<string, string>>;
  readonly themes: Readonly<Record<string, string>>;
  readonly sources: typeof english.sources;
}

const TEXTS: Readonly<Record<string, CheckTexts>> = { en: english, es: spanish };

/** English where Halfcup does not speak the language, a BCP 47 tag. */
const textsIn = (language: string): CheckTexts => TEXTS[mainTag(language)] ?? english;

const named = (texts: Readonly<Record<string, string>>, key: string): string =>
  Object.hasOwn(texts, key) ? texts[key]! : key;

/** How it should be, as a short statement; the code itself for a check that is not known here. */
export const checkTitle = (code: string, language: string): string => named(textsIn(language).titles, code);

/** Why a check could not run; the key itself where it is not known here. */
export const reasonText = (key: string, language: string): string => named(textsIn(language).reasons, key);

/**
 * The name of a theme of checks, the key itself for one that is not known here. `language`: a BCP 47 tag.
 * @example
 * ```ts
 * import { themeText } from '@halfcup/core/sentences';
 * themeText('time', 'es'); // → 'Horarios y cierres'
 * ```
 */
export function themeText(theme: string, language: string): string {
  want('themeText', 'theme', aText, theme);
  want('themeText', 'language', aText, language);
  return named(textsIn(language).themes, theme);
}

/**
 * Where a rule comes from, as people read it. `language`: a BCP 47 tag.
 * @example
 * ```ts
 * import { sourceText } from '@halfcup/core/sentences';
 * sourceText('common practice, no source', 'en'); // → 'common practice'
 * ```
 */
export function sourceText(source: string, language: string): string {
  want('sourceText', 'source', aText, source);
  want('sourceText', 'language', aText, language);
  return textsIn(language).sources.reduce((text, [written, shown]) => text.replaceAll(written, shown), source);
}
