/** Whole numbers of people as they are typed. */
import { aText, want } from '../../wants.ts';

/** Digits in groups of three with one mark between them: comma, point, apostrophe or a blank, narrow and unbroken ones too. */
const GROUPED = /^\d{1,3}(?:([.,'’ \u00a0\u202f])\d{3})(?:\1\d{3})*$/u;

/**
 * A whole number of people from text, its thousands grouped or not: "1000", "1,000", "1.000", "1 000", "1’000". `null`: it is
 * none, has over seven digits, or its groups are not of three digits. For counts alone: elsewhere "1.000" may be one.
 * @example
 * ```ts
 * import { typedCount } from '@halfcup/core/plan';
 * typedCount('1,000'); // → 1000
 * typedCount('1.5'); // → null
 * ```
 */
export function typedCount(text: string): number | null {
  want('typedCount', 'text', aText, text);
  const typed = text.trim();
  const digits = GROUPED.test(typed) ? typed.replaceAll(/\D/gu, '') : typed;
  return /^\d{1,7}$/u.test(digits) ? Number(digits) : null;
}
