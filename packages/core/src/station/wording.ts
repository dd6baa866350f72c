/**
 * Words for items, the text on the advance sign, and how many boxes a trash stretch takes.
 */
import type { ItemKind, Served } from '../plan/plan.ts';

/** Text of the advance sign: drinks by "Water" (sports drink alone by its own name), then gel. */
export function signWording(serves: readonly Served[]): string {
  const drink = serves.includes('water') ? 'Water' : serves.includes('sportsDrink') ? 'Sports drink' : '';
  const gel = serves.includes('gel') ? (drink === '' ? 'Gel' : ' and gel') : '';
  return `${drink}${gel} ahead`;
}

/** Boxes evenly over `length` metres, ends included, none farther than `every` from the next. */
export const boxCount = (length: number, every: number): number => Math.max(Math.ceil(length / every - 1e-9) + 1, 2);

const WORDS: { readonly [kind in ItemKind]: string } = {
  sign: 'Sign',
  gel: 'Gel',
  sportsDrink: 'Sports drink',
  water: 'Water',
  handOut: 'Hand-out line',
  trash: 'Trash',
};

/** The word for a kind of item, as a sentence begins with it. */
export const itemWord = (kind: ItemKind): string => WORDS[kind];
