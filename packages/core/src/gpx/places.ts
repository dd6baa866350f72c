/** Lines and columns of a text that a parser reads in pieces, counted from 1, a column being one code point. */

import type { SaxesParser } from 'saxes';
import type { Place } from './trouble.ts';

/** How far a parser has read. */
export type Reached = Pick<SaxesParser, 'line' | 'column' | 'position'>;

export interface Cursor {
  readonly parser: Reached;
  /** The text in the parser, the number of characters before it, and the column before it. */
  piece: string;
  pieceStart: number;
  columnBefore: number;
  /** The text up to and with the piece in which the root element begins, at most about one piece. */
  head: string;
}

const PLAIN = /^[\x20-\x7E]*$/;
const LINE_BREAK = /\r\n|\n|\r/g;

/** The place of the next character. */
export const here = ({ parser }: Cursor): Place => ({ line: parser.line, column: parser.column + 1 });

/** The place of the character that the parser has just read. */
export const justRead = ({ parser }: Cursor): Place => ({ line: parser.line, column: Math.max(1, parser.column) });

/** The place of the tag that has just been read to its `>`, `name` being as written. */
export function placeOfTag(cursor: Cursor, name: string): Place {
  const { parser, piece, pieceStart } = cursor;
  const bare = name.length + 2;
  if (piece.charCodeAt(parser.position - pieceStart - bare) !== 0x3c) return placeOfLast(cursor, '<');
  return { line: parser.line, column: parser.column - bare + 1 };
}

/** The place of the last `mark` before the parser's position, within the piece it is reading. */
export function placeOfLast(cursor: Cursor, mark: string): Place {
  const { parser, piece } = cursor;
  const now = parser.position - cursor.pieceStart;
  const at = piece.lastIndexOf(mark, now - 1);
  if (at === -1) return justRead(cursor);
  const between = piece.slice(at, now);
  if (PLAIN.test(between)) return { line: parser.line, column: parser.column - between.length + 1 };
  const lineStart = Math.max(piece.lastIndexOf('\n', at), piece.lastIndexOf('\r', at)) + 1;
  const column = Array.from(piece.slice(lineStart, at)).length + 1;
  return {
    line: parser.line - (between.match(LINE_BREAK)?.length ?? 0),
    column: lineStart === 0 ? cursor.columnBefore + column : column,
  };
}

/** The place of a character of the head, by its index; -1 stands for where the parser is. */
export function placeInHead(cursor: Cursor, at: number): Place {
  if (at === -1) return justRead(cursor);
  const lines = cursor.head.slice(0, at).split(/\r\n|\n|\r/);
  return { line: lines.length, column: Array.from(lines.at(-1) ?? '').length + 1 };
}
