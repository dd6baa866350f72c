/**
 * Delimited text as records that know their place. RFC 4180: quoted fields, quotes doubled inside them, line ends and
 * delimiters inside quotes; also LF or CR alone, a byte order mark, and `;` or tab for the comma, as the header has it.
 */
import { LIMITS, type LimitTable, type TableCount } from './limits.ts';
import { aText, want } from './wants.ts';

/** A field with the place where it begins, counted from 1. */
export interface Cell {
  readonly text: string;
  readonly quoted: boolean;
  readonly line: number;
  readonly column: number;
}

/** Why the text ends early: a quote that is never closed, or text after a closing quote. */
export interface Broken {
  readonly what: 'quote-open' | 'after-quote';
  readonly line: number;
  readonly column: number;
}

export interface Records {
  readonly delimiter: string;
  readonly records: readonly (readonly Cell[])[];
  readonly broken: Broken | null;
  /** More than there may be of something; nothing is read then. */
  readonly past: PastTable | null;
}

/** A limit that a table passes, where, and with how many if that is known. */
export interface PastTable {
  readonly what: TableCount;
  readonly found?: number;
  readonly line: number;
  readonly column: number;
}

/** The most that a table may hold. */
export type TableLimits = LimitTable['results'];

const DELIMITERS = [',', ';', '\t'] as const;

/** The delimiter that stands most often outside quotes in the first line, or the beginning of a very long one; a comma where none does. */
function delimiterOf(text: string, from: number, most: number): string {
  const end = Math.min(text.length, from + most);
  const counts = [0, 0, 0];
  let quoted = false;
  for (let i = from; i < end; i++) {
    const char = text[i]!;
    if (char === '"') quoted = !quoted;
    else if (!quoted && (char === '\n' || char === '\r')) break;
    else if (!quoted) DELIMITERS.forEach((delimiter, k) => (counts[k]! += char === delimiter ? 1 : 0));
  }
  return DELIMITERS[counts.indexOf(Math.max(...counts))]!;
}

/** Where the reader stands. */
interface Cursor {
  at: number;
  line: number;
  /** Index at which the line begins. */
  lineStart: number;
}

/** Records of a text, up to what breaks it; empty lines are left out. None where it holds more than `most` (absent: the widest table there is). */
export function readDelimited(text: string, most: TableLimits = LIMITS.results): Records {
  const past = (what: TableCount, line: number, column: number, found?: number): Records => ({
    delimiter: ',',
    records: [],
    broken: null,
    past: { what, line, column, ...(found === undefined ? {} : { found }) },
  });
  if (text.length > most.bytes) return past('bytes', 1, 1, text.length);
  const from = text.startsWith('\uFEFF') ? 1 : 0;
  const delimiter = delimiterOf(text, from, most.characters);
  const cursor: Cursor = { at: from, line: 1, lineStart: from };
  const records: Cell[][] = [];
  let record: Cell[] = [];
  let cells = 0;
  while (cursor.at < text.length || record.length > 0) {
    const cell = readCell(text, cursor, delimiter, most.characters);
    if ('most' in cell) return past('characters', cell.line, cell.column);
    if ('what' in cell) return { delimiter, records, broken: cell, past: null };
    record.push(cell);
    if (record.length > most.columns) return past('columns', cell.line, cell.column);
    if ((cells += 1) > most.cells) return past('cells', cell.line, cell.column);
    if (text[cursor.at] === delimiter) {
      cursor.at += 1;
      continue;
    }
    if (record.length > 1 || cell.text !== '' || cell.quoted) records.push(record);
    // The header is no row.
    if (records.length > most.rows + 1) return past('rows', record[0]!.line, 1);
    record = [];
    passLineEnd(text, cursor);
  }
  return { delimiter, records, broken: null, past: null };
}

function passLineEnd(text: string, cursor: Cursor): void {
  if (cursor.at >= text.length) return;
  cursor.at += text.startsWith('\r\n', cursor.at) ? 2 : 1;
  cursor.line += 1;
  cursor.lineStart = cursor.at;
}

const ends = (char: string | undefined, delimiter: string): boolean =>
  char === undefined || char === delimiter || char === '\n' || char === '\r';

/** A cell with more characters than it may have; those that double a quote count too. */
interface TooLong {
  readonly most: number;
  readonly line: number;
  readonly column: number;
}

function readCell(text: string, cursor: Cursor, delimiter: string, most: number): Cell | Broken | TooLong {
  const place = { line: cursor.line, column: cursor.at - cursor.lineStart + 1 };
  if (text[cursor.at] === '"') return readQuoted(text, cursor, delimiter, most, place);
  const from = cursor.at;
  while (!ends(text[cursor.at], delimiter)) {
    cursor.at += 1;
    if (cursor.at - from > most) return { most, ...place };
  }
  return { text: text.slice(from, cursor.at), quoted: false, ...place };
}

function readQuoted(
  text: string,
  cursor: Cursor,
  delimiter: string,
  most: number,
  place: { readonly line: number; readonly column: number },
): Cell | Broken | TooLong {
  const from = cursor.at + 1;
  let to = text.indexOf('"', from);
  while (to >= 0 && to - from <= most && text[to + 1] === '"') to = text.indexOf('"', to + 2);
  if (to < 0) return { what: 'quote-open', ...place };
  if (to - from > most) return { most, ...place };
  for (let i = from; i < to; i++) {
    const char = text[i];
    if (char !== '\n' && (char !== '\r' || text[i + 1] === '\n')) continue;
    cursor.line += 1;
    cursor.lineStart = i + 1;
  }
  cursor.at = to + 1;
  if (!ends(text[cursor.at], delimiter))
    return { what: 'after-quote', line: cursor.line, column: cursor.at - cursor.lineStart + 1 };
  return { text: text.slice(from, to).replaceAll('""', '"'), quoted: true, ...place };
}

/**
 * Begins like a formula: one of = + - @, or their full-width forms, behind any apostrophes, white space and
 * invisible signs; or a tab or line end, behind which some programs look for one.
 */
const FORMULA = /^(?:'*[\t\r\n]|['\s\p{Cf}]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20])/u;

/** A text that no spreadsheet takes for a formula: an apostrophe goes before one that it would. See `textOfCell`. */
export const harmlessText = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

/**
 * The text behind a cell that `csvText` has made harmless; any other text as it is. Text that a spreadsheet might take for
 * a formula is written with an apostrophe before it.
 * @example
 * ```ts
 * import { textOfCell } from '@halfcup/core/schemas';
 * textOfCell("'=2+3"); // → '=2+3'
 * textOfCell("'tis"); // → "'tis"
 * ```
 */
export function textOfCell(cell: string): string {
  want('textOfCell', 'cell', aText, cell);
  return cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell;
}
