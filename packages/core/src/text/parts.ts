/** Parts of sentences that need no words, and so are the same in every language. */
import { type Metres, lengthIn } from '../units.ts';
import type { Compared, Say } from './say.ts';

/** A length of many kilometres or miles, whole: "12,040 km". */
export function wholeFar(metres: Metres, { units, count }: Say): string {
  const unit = units === 'metric' ? 'km' : 'mi';
  return `${count(lengthIn(metres, unit))} ${unit}`;
}

/** Two lengths of any size side by side: short ones as lengths, else as course distances. */
export const sideBySide = (one: Metres, other: Metres, say: Say): Compared =>
  Math.max(one, other) < 1000 ? say.compare(one, other) : say.compareFar(one, other);
