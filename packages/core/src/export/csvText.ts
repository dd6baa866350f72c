/**
 * Rows as comma-separated text: RFC 4180 with CRLF at every line's end, UTF-8 without a byte order mark.
 * Spreadsheets run a cell that begins like a formula, quoted or not; the usual way is taken: such a text gets
 * an apostrophe before it (OWASP, CSV Injection; from memory). Numbers are written as numbers, also negative ones.
 */
import { harmlessText } from '../delimited.ts';
import { type Shape, listOf, want } from '../wants.ts';

/** What a cell holds; `null` is an empty one, `true` and `false` are "yes" and "no". */
export type CsvCell = string | number | boolean | null;

const isCell: Shape = (value) =>
  value === null || typeof value === 'boolean' || typeof value === 'string'
    ? null
    : typeof value === 'number'
      ? null
      : { path: '', expected: 'a text, a number, true, false or null', found: value };

/** Controls that no text needs, and halves of surrogate pairs, which UTF-8 cannot hold. */
const UNHELD = /[^\t\n\r\P{Cc}]|\p{Cs}/gu;

function cellText(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  if (typeof cell === 'string') return quoted(harmlessText(cell.replaceAll(UNHELD, '\uFFFD')));
  if (!Number.isFinite(cell)) throw new RangeError(`expected a finite number for a cell, got ${cell}`);
  // A decimal without an exponent, which some readers do not know.
  return /e/u.test(String(cell)) ? cell.toFixed(12).replace(/0+$/u, '').replace(/\.$/u, '') : String(cell);
}

/** In quotes where it holds what would end a cell, or white space at an end, which some readers trim. */
const quoted = (text: string): string => (/[",\r\n]|^\s|\s$/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/**
 * The text of all rows, in order (RFC 4180, CRLF). Texts that a spreadsheet might take for a formula get an apostrophe first
 * (see `textOfCell`); a row of one empty cell is written `""`, since an empty line is no row. Throws a RangeError on a number
 * that is not finite.
 * @example
 * ```ts
 * import { csvText } from '@halfcup/core/schemas';
 * csvText([['name', 'offset'], ['=A1, "north"', -2.5]]); // → `name,offset\r\n"'=A1, ""north""",-2.5\r\n`
 * ```
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  want('csvText', 'rows', listOf(listOf(isCell)), rows);
  return rows
    .map((row) => `${row.length === 1 && cellText(row[0]!) === '' ? '""' : row.map(cellText).join(',')}\r\n`)
    .join('');
}
