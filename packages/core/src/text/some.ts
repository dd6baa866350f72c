/** Lists that a sentence can hold. */
import type { Say } from './say.ts';

/** Names one by one up to so many; of more, one less and how many are left. */
export function some(names: readonly string[], say: Say, left: (count: number) => string, most: number = 4): string {
  if (names.length <= most) return say.all(names);
  return say.all([...names.slice(0, most - 1), left(names.length - most + 1)]);
}
