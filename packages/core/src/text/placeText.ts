import { type Shape, aText, orNull, recordOf, want } from '../wants.ts';
import { streetWords as en } from './en/streetWords.ts';
import { streetWords as es } from './es/streetWords.ts';
import { type NamedPlace, type StreetWords, placeInWords } from './streetWords.ts';

const WORDS: Readonly<Record<string, StreetWords>> = { en, es };

const isPlace: Shape = recordOf<NamedPlace>('a place by its street', {
  street: orNull(aText),
  after: orNull(aText),
  before: orNull(aText),
});

/**
 * A place by its street in the words that people use, in a language (BCP 47 tag; English where Halfcup does not speak it); `null`
 * where the street is not known.
 * @example
 * ```ts
 * import { placeText } from '@halfcup/core/sentences';
 * placeText({ street: 'Harbour Road', after: 'Mill Lane', before: 'Quay Street' }, 'en'); // → 'Harbour Road, between Mill Lane and Quay Street'
 * placeText({ street: 'Harbour Road', after: null, before: 'Quay Street' }, 'es'); // → 'Harbour Road, antes de Quay Street'
 * ```
 */
export function placeText(place: NamedPlace, language: string): string | null {
  want('placeText', 'place', isPlace, place);
  want('placeText', 'language', aText, language);
  return placeInWords(place, WORDS[language.trim().toLowerCase().split('-', 1)[0]!] ?? en);
}
