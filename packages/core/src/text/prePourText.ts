/** How many cups stand poured before the first runner, in one sentence: the same on papers, page and terminal. */
import { type Shape, count, recordOf, want } from '../wants.ts';
import { pourText as english } from './en/pourText.ts';
import { pourText as spanish } from './es/pourText.ts';
import { sayOf } from './inWords.ts';
import { type PourWords, type PouredCups, pourWordsOf } from './pourWords.ts';
import { type Voice, isVoice, mainTag } from './voice.ts';

const TEXTS: Readonly<Record<string, (words: PourWords) => string>> = { en: english, es: spanish };

const isPoured: Shape = recordOf<PouredCups>('poured cups', { cups: count, tables: count, cupsPerLayer: count });

/**
 * So many cups, the tables they stand on and the cups of a full layer as people say it: in all, on each table, in layers.
 * English where Halfcup does not speak the voice's language.
 * @example
 * ```ts
 * import { NO_NAMES, prePourText } from '@halfcup/core/sentences';
 * const voice = { language: 'en', units: 'metric', names: NO_NAMES } as const;
 * prePourText({ cups: 470, tables: 2, cupsPerLayer: 200 }, voice); // → 'Pour 470: two tables, about 235 on each, one full layer and 35 on top'
 * ```
 */
export function prePourText(poured: PouredCups, voice: Voice): string {
  want('prePourText', 'poured', isPoured, poured);
  want('prePourText', 'voice', isVoice, voice);
  return (TEXTS[mainTag(voice.language)] ?? english)(pourWordsOf(poured, sayOf(voice).count));
}
