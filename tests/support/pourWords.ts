/** Reads a pre-pour told in English words back into figures, apart from the code that told it. */

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const numberIn = (word: string): number => (NUMBERS.includes(word) ? NUMBERS.indexOf(word) : Number(word));
const grouped = (text: string): number => Number(text.replaceAll(',', ''));

export interface ToldPour {
  readonly cups: number;
  readonly tables: number;
  readonly each: number;
  readonly layers: number;
}

/** Of "Pour 470: two tables, about 235 on each, one full layer and 35 on top". */
export function pourWordsIn(told: string): ToldPour {
  const found = /^Pour ([\d,]+): (\w+) tables?(?:, about ([\d,]+) on each)?, (.+)$/u.exec(told);
  if (found === null) throw new Error(`no pour in "${told}"`);
  const [, cups, tables, each, layers] = found;
  const full = /^(\w+) full layers?(?: and (\d+) on top)?$/u.exec(layers!);
  const count = full === null ? 1 : numberIn(full[1]!) + (full[2] === undefined ? 0 : 1);
  return { cups: grouped(cups!), tables: numberIn(tables!), each: grouped(each ?? cups!), layers: count };
}
