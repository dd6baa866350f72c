/** Numbers by a fixed seed, and what odd values there are. Not part of the package. */

/** A whole number from 0, below another. */
export type Random = (below: number) => number;

/** xorshift32 (Marsaglia 2003, doi:10.18637/jss.v008.i14). */
export function randomOf(seed: number): Random {
  let state = seed;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

export const pick = <T>(random: Random, list: readonly T[]): T => list[random(list.length)]!;

/** So many of something, up to a number, few more often than many. */
export const some = <T>(random: Random, most: number, one: (k: number) => T): T[] =>
  Array.from({ length: random(random(most) + 1) }, (_, k) => one(k));

/** Texts that a person, a program or nobody would write into a field. */
export const ODD_TEXTS: readonly string[] = [
  '',
  ' ',
  '0',
  '-1',
  '1e999',
  'NaN',
  'Infinity',
  'undefined',
  'null',
  'true',
  '1,5',
  '1.234.567,8',
  '99:99:99',
  '-0:00',
  '=1+1',
  '[object Object]',
  '__proto__',
  'constructor',
  'toString',
  'A'.repeat(300),
  'é\u0301\u202e\u0000',
  '\uD800',
  '🏃🏽‍♀️',
  '"',
  '<![CDATA[',
  '&amp;',
  '\r\n',
  ';',
];

/** A text changed at one place: a stretch out, doubled, moved, or the end cut off. */
export function tornText(text: string, random: Random): string {
  const at = random(text.length + 1);
  const end = at + random(pick(random, [3, 40, 300]));
  const stretch = text.slice(at, end);
  const kind = random(4);
  if (kind === 0) return text.slice(0, at) + text.slice(end);
  if (kind === 1) return text.slice(0, end) + stretch + text.slice(end);
  if (kind === 2) return text.slice(0, at);
  return text.slice(0, at) + pick(random, ODD_TEXTS) + text.slice(at);
}
