/** The known word nearest to one that is not known: Levenshtein distance, V. I. Levenshtein, 1966. */

import { shortText } from '../text/found.ts';
import type { Unknown } from '../text/params/unknown.ts';

/** Fewest insertions, deletions and replacements that turn one text into the other. */
export function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}

/** Known words that one word is compared with. */
const COMPARED = 1000;

/** The nearest of the known words (capitals count little; of very many the first 1,000), or `undefined` where none is near. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  if (word.length > 60) return undefined;
  const limit = Math.max(1, Math.floor(word.length / 2.5));
  let best: string | undefined;
  let least = limit + 0.5;
  for (const candidate of known.slice(0, COMPARED)) {
    // No fewer steps than the lengths differ by.
    if (Math.abs(candidate.length - word.length) >= least) continue;
    // People seldom mistype the first letter: of two as near, the one that begins alike.
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase()) + (word[0] === candidate[0] ? 0 : 0.1);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

const SHOWN = 12;

/** Words for which the nearest known one is looked for, of those in one file: each costs a comparison with all known ones. */
const HELPED = 100;

/** As `unknownWord`, for the words of one file: after the first hundred none is told a near one. */
export function unknownWords(): (word: string, known: readonly string[]) => Unknown {
  let told = 0;
  return (word, known) => unknown(word, known, (told += 1) > HELPED ? undefined : nearest(word, known));
}

/** A word that is not known as the parameter of a finding: with the nearest known one, and up to twelve of them. */
export const unknownWord = (word: string, known: readonly string[]): Unknown =>
  unknown(word, known, nearest(word, known));

function unknown(word: string, known: readonly string[], near: string | undefined): Unknown {
  return {
    word: shortText(word),
    ...(near === undefined ? {} : { near: shortText(near) }),
    known: known.slice(0, SHOWN).map(shortText),
    more: Math.max(0, known.length - SHOWN),
  };
}

/** What can be said of a word that is not known: the nearest one, else all of them (at most twelve). */
export function suggestion(word: string, known: readonly string[], what: string): string {
  const near = nearest(word, known);
  if (near !== undefined) return `did you mean ${JSON.stringify(near)}?`;
  if (known.length === 0) return `there are no ${what}`;
  const shown = known
    .slice(0, 12)
    .map((name) => JSON.stringify(name))
    .join(', ');
  return `${what}: ${shown}${known.length > 12 ? ` and ${known.length - 12} more` : ''}`;
}
