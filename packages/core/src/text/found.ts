/** A value that stands where another is expected, as the parameters of a finding hold it: small, and the same after JSON. */
import type { Words } from './words.ts';

/** A finite number, a short text or a truth value as it is; of anything else what kind of thing it is. */
export type Found =
  | string
  | number
  | boolean
  | null
  | { readonly kind: 'nothing' | 'notNumber' | 'tooLarge' | 'object' | 'other' }
  | { readonly kind: 'list'; readonly count: number };

const LONGEST = 40;

/** A text of at most 40 characters, the last an ellipsis where it is cut. */
export const shortText = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text);

/** What a value is found to be; a text is cut after 40 characters. */
export function foundOf(value: unknown): Found {
  if (typeof value === 'string') return shortText(value);
  if (typeof value === 'number' && !Number.isFinite(value))
    return { kind: Number.isNaN(value) ? 'notNumber' : 'tooLarge' };
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return value;
  if (value === undefined) return { kind: 'nothing' };
  if (Array.isArray(value)) return { kind: 'list', count: value.length };
  return { kind: typeof value === 'object' ? 'object' : 'other' };
}

/** A found value in words: texts in quotation marks, numbers as they are. */
export function foundText(found: Found, { found: words, quotes: [open, close] }: Words): string {
  if (typeof found === 'string') return found === '' ? words.emptyText : `${open}${oneLine(found)}${close}`;
  if (typeof found === 'number') return numberText(found, words);
  if (typeof found !== 'object' || found === null) return String(found);
  return found.kind === 'list' ? words.list(found.count) : words[found.kind];
}

/** Above this many digits before the point a number is no longer read, and one with so many noughts after it neither. */
const MOST_DIGITS = 15;
const NEAR_ZERO = 1e-6;

/** A number as it is, where people can read it; never with an exponent. */
function numberText(value: number, words: Words['found']): string {
  const size = Math.abs(value);
  if (size >= 10 ** MOST_DIGITS) return words.digits(String(BigInt(Math.trunc(size))).length);
  return size > 0 && size < NEAR_ZERO ? words.nearZero : String(value);
}

/** What would break a line of a terminal or of a table becomes a space. */
const oneLine = (text: string): string => text.replaceAll(/[\s\p{Cc}\p{Cs}\u{FFFD}]+/gu, ' ');
