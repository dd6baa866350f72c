/** Whom a map of the ground credits, and what it calls the streets that meet a course: the same on papers and page. */
import { type Shape, aFlag, aText, listOf, orNull, recordOf, want } from '../wants.ts';
import { streetWords as en } from './en/streetWords.ts';
import { streetWords as es } from './es/streetWords.ts';
import { type NamedCrossing, type StreetWords, crossingInWords } from './streetWords.ts';

const WORDS: Readonly<Record<string, StreetWords>> = { en, es };
const wordsOf = (language: string): StreetWords => WORDS[language.trim().toLowerCase().split('-', 1)[0]!] ?? en;

/** What a map is, and whom it credits. */
export interface MapSource {
  readonly date: string | null;
  readonly credit: string;
  readonly licence: string | null;
}

const isSource: Shape = recordOf<MapSource>('the source of a map', {
  date: orNull(aText),
  credit: aText,
  licence: orNull(aText),
});
const isCrossing: Shape = recordOf<NamedCrossing>('a junction', {
  names: listOf(aText),
  vehicles: aFlag,
  access: aFlag,
});

/**
 * Whom a map of the ground credits, by which licence, of which day it is, in a language (BCP 47 tag; English where Halfcup does not
 * speak it): to stand under every drawing of it.
 * @example
 * ```ts
 * import { mapCreditText } from '@halfcup/core/sentences';
 * const source = { credit: '© OpenStreetMap contributors', licence: 'ODbL 1.0', date: '2026-10-02' };
 * mapCreditText(source, 'en'); // → 'Streets: © OpenStreetMap contributors, ODbL 1.0, map of 2026-10-02'
 * ```
 */
export function mapCreditText(source: MapSource, language: string): string {
  want('mapCreditText', 'source', isSource, source);
  want('mapCreditText', 'language', aText, language);
  return wordsOf(language).credit(source.credit, source.licence, source.date);
}

/**
 * What the streets are called that meet a course at a junction; of those without a name what they are.
 * @example
 * ```ts
 * import { crossingText } from '@halfcup/core/sentences';
 * crossingText({ names: ['Mill Lane', 'Quay Street'], vehicles: true, access: false }, 'en'); // → 'Mill Lane, Quay Street'
 * crossingText({ names: [], vehicles: false, access: false }, 'es'); // → 'camino'
 * ```
 */
export function crossingText(junction: NamedCrossing, language: string): string {
  want('crossingText', 'junction', isCrossing, junction);
  want('crossingText', 'language', aText, language);
  return crossingInWords(junction, wordsOf(language));
}
