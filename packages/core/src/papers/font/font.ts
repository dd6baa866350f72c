/**
 * The papers' own font, so that they measure and break the same on every machine: it is inlined in each paper, and
 * drawings are laid out by the widths of its letters. What it does not hold falls back to a font of the system.
 */
import { BOLD, COPYRIGHT, REGULAR } from './bytes.ts';
import * as widths from './widths.ts';

/** A `font-family`: ours first. */
export const FONT = 'Arimo, "Liberation Sans", Arial, Helvetica, sans-serif';

const face = (weight: number, base64: string): string =>
  `@font-face { font-family: Arimo; font-weight: ${weight}; src: url(data:font/woff2;base64,${base64}) format("woff2"); }`;

/** The rules that give a document the font, with whose it is: the licence asks that this travels with it. */
export const FONT_FACE: string = `
/* Arimo, a subset. ${COPYRIGHT}. SIL Open Font License 1.1, https://openfontlicense.org */
${face(400, REGULAR)}
${face(700, BOLD)}
`;

/** Last in a document's style: letters where their advance widths put them, not where a screen's pixels would. */
export const FONT_RULES: string = `
html { font-family: ${FONT}; text-rendering: geometricPrecision; }
svg { font-kerning: none; font-variant-ligatures: none; }
`;

const tableOf = (list: string): ReadonlyMap<string, number> => {
  const each = list.split(' ').map(Number);
  return new Map(Array.from(widths.SIGNS, (sign, k) => [sign, each[k]! / widths.EM]));
};
const REGULAR_WIDTHS = tableOf(widths.REGULAR);
const BOLD_WIDTHS = tableOf(widths.BOLD);

/** Of a sign from another font: few are wider. */
const FOREIGN = 1;

/** Ems that a text takes set in a row: to the sum of the font's advance widths, marks that combine taking none. */
export function emsOf(text: string, bold: boolean): number {
  const table = bold ? BOLD_WIDTHS : REGULAR_WIDTHS;
  let ems = 0;
  for (const sign of text.normalize('NFC')) {
    ems += table.get(sign) ?? (/\p{M}|\p{Cf}/u.test(sign) ? 0 : (table.get(sign.normalize('NFD')[0]!) ?? FOREIGN));
  }
  return ems;
}
