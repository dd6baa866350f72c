/**
 * Words for items, the text on the advance sign, and how many boxes a trash stretch takes.
 */
import type { ItemKind, Served } from '../kinds.ts';
import { words } from '../text/en/words.ts';
import { wordsOf } from '../text/wordsOf.ts';

/** Text of the advance sign in the plan's language (BCP 47 tag): drinks by "Water" (sports drink alone by its own name), then gel. */
export const signWording = (serves: readonly Served[], language: string): string => wordsOf(language).sign(serves);

/** Boxes evenly over `length` metres, ends included, none farther than `every` from the next. */
export const boxCount = (length: number, every: number): number => Math.max(Math.ceil(length / every - 1e-9) + 1, 2);

/** The English word for a kind of item, as a sentence begins with it. */
export const itemWord = (kind: ItemKind): string => words.items[kind];
