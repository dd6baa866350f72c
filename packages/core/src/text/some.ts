/** Lists that a sentence can hold, and words by key. */
import type { Say } from './say.ts';

/** Names one by one up to so many; of more, one less and how many are left. */
export function some(names: readonly string[], say: Say, left: (count: number) => string, most: number = 4): string {
  if (names.length <= most) return say.all(names);
  return say.all([...names.slice(0, most - 1), left(names.length - most + 1)]);
}

/** The word for a key; throws where there is none, as findings come back from JSON with anything in them. */
export function wordOf<K extends string>(words: Readonly<Record<K, string>>, key: K): string {
  if (!Object.hasOwn(words, key)) throw new RangeError(`no word for ${key}`);
  return words[key];
}
