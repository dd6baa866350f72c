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

/** The nearest of the known words (capitals count little), or `undefined` where none is near. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  if (word.length > 60) return undefined;
  const limit = Math.max(1, Math.floor(word.length / 2.5));
  let best: string | undefined;
  let least = limit + 0.5;
  for (const candidate of known) {
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

/** A word that is not known as the parameter of a finding: with the nearest known one, and up to twelve of them. */
export function unknownWord(word: string, known: readonly string[]): Unknown {
  const near = nearest(word, known);
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
