/**
 * Numbers of a column as spreadsheets write them. A comma is a decimal comma or a thousands mark: a number that can be read
 * both ways is read as the rest of its column is, and refused where the column does not say.
 */

/** How the numbers of a column are written, as far as they show it. */
export interface Commas {
  readonly decimalComma: boolean;
  readonly decimalPoint: boolean;
}

type Read = { readonly digits: string } | 'unclear' | 'none';

const DIGITS = /^[+-]?\d[\d.,]*$/u;

/** A number that shows its decimal mark by itself, as one with a point; `unclear` where it could be read two ways. */
function alone(text: string): Read {
  if (!DIGITS.test(text)) return 'none';
  if (!text.includes(',')) return /^[+-]?\d+(\.\d+)?$/u.test(text) ? { digits: text } : 'none';
  if (text.includes('.')) {
    const decimal = text.lastIndexOf(',') > text.lastIndexOf('.') ? ',' : '.';
    const groups = decimal === ',' ? /^[+-]?\d{1,3}(\.\d{3})+,\d+$/u : /^[+-]?\d{1,3}(,\d{3})+\.\d+$/u;
    if (!groups.test(text)) return 'none';
    return { digits: decimal === ',' ? text.replaceAll('.', '').replace(',', '.') : text.replaceAll(',', '') };
  }
  if (/^[+-]?\d{1,3}(,\d{3}){2,}$/u.test(text)) return { digits: text.replaceAll(',', '') };
  if (!/^[+-]?\d+,\d+$/u.test(text)) return 'none';
  return /^[+-]?[1-9]\d{0,2},\d{3}$/u.test(text) ? 'unclear' : { digits: text.replace(',', '.') };
}

/** What the numbers of a column show of its decimal mark. */
export function commasOf(texts: readonly string[]): Commas {
  const clear = texts.filter((text) => typeof alone(text) === 'object');
  return {
    decimalComma: clear.some((text) => text.includes(',') && text.lastIndexOf(',') > text.lastIndexOf('.')),
    decimalPoint: clear.some((text) => text.includes('.') && text.lastIndexOf('.') > text.lastIndexOf(',')),
  };
}

/** Digits with a decimal point; `unclear` where the column does not say what its comma or point is. */
export function digitsOf(text: string, { decimalComma, decimalPoint }: Commas): Read {
  const found = alone(text);
  if (found === 'unclear') {
    if (decimalComma === decimalPoint) return 'unclear';
    return { digits: decimalComma ? text.replace(',', '.') : text.replace(',', '') };
  }
  // "1.200" in a column of decimal commas may be 1200.
  if (decimalComma && !text.includes(',') && /^[+-]?[1-9]\d{0,2}\.\d{3}$/u.test(text)) return 'unclear';
  return found;
}
