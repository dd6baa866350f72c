/**
 * Rows in columns, two spaces apart, that fit a screen: texts and headings break at spaces, numbers never. A table
 * that is still too wide becomes several, one under the other, each with the first column.
 */
import { max } from 'd3-array';
import { glued, oneLine, solid, unglued } from './breaks.ts';
import { brokenLines, widestWord, widthOf } from './lineBreaks.ts';
import type { Screen } from './screen.ts';

interface Column {
  readonly head: string;
  readonly cells: readonly string[];
  /** Set to the right: numbers. */
  readonly right: boolean;
  /** Narrowest that breaks no word, and no text into very short lines. */
  readonly least: number;
  /** Widest that a cell takes. */
  readonly most: number;
}

const APART = 2;
/** A column of texts is not made narrower than this for another's sake. */
const READABLE = 12;

/** Columns whose heading begins with a space are numbers, set to the right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[], screen: Screen): string {
  const columns = head.map((one, k) =>
    columnOf(
      one,
      rows.map((row) => row[k] ?? ''),
    ),
  );
  return blocksOf(columns, screen.width)
    .map((block) => drawn(block, screen))
    .join('\n\n');
}

function columnOf(heading: string, texts: readonly string[]): Column {
  const right = heading.startsWith(' ');
  const head = heading.trim();
  const cells = texts.map((text) => (right ? solid(oneLine(text)) : glued(oneLine(text))));
  const most = max(cells, widthOf) ?? 0;
  const narrow = max(cells, widestWord) ?? 0;
  const least = Math.max(widestWord(head), right ? narrow : Math.max(narrow, Math.min(most, READABLE)));
  return { head, cells, right, least, most };
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
const widthAt = (widths: readonly number[]): number => sum(widths) + APART * (widths.length - 1);

/** As few blocks of columns as fit, about equally wide, so that none has a column by itself. */
function blocksOf(columns: readonly Column[], width: number): readonly (readonly Column[])[] {
  let blocks = packed(columns, width);
  for (let narrower = width - 1; narrower > 0 && blocks.length > 1; narrower--) {
    const tried = packed(columns, narrower);
    if (tried.length > blocks.length) break;
    blocks = tried;
  }
  return blocks;
}

/** Columns in order, each block led by the first column and filled as far as fits. */
function packed([first, ...rest]: readonly Column[], width: number): readonly (readonly Column[])[] {
  const blocks: Column[][] = [];
  let block = [first!];
  for (const column of rest) {
    if (block.length > 1 && widthAt([...block, column].map(({ least }) => least)) > width) {
      blocks.push(block);
      block = [first!];
    }
    block.push(column);
  }
  return [...blocks, block];
}

/** Every column at its least, and what is left over given to cells, those that need little first, then to headings. */
function widthsOf(columns: readonly Column[], width: number): number[] {
  const widths = columns.map(({ least }) => least);
  const wants = (wanted: (column: Column) => number): number[] =>
    columns.map((column, k) => Math.max(0, wanted(column) - widths[k]!));
  const cells = wants(({ most }) => most);
  for (const k of cells.map((_, index) => index).sort((a, b) => cells[a]! - cells[b]!))
    widths[k]! += Math.max(0, Math.min(cells[k]!, width - widthAt(widths)));
  // A heading that cannot stand in one line is as high at its least width as at any other.
  const heads = wants(({ head }) => widthOf(head));
  for (const want of [...new Set(heads)].sort((a, b) => a - b)) {
    const alike = heads.flatMap((one, k) => (one === want ? [k] : []));
    // Headings of the same length, such as "10 % have passed" and "90 % have passed", are broken alike.
    if (want * alike.length <= width - widthAt(widths)) for (const k of alike) widths[k]! += want;
  }
  return widths;
}

function drawn(columns: readonly Column[], { width, paint }: Screen): string {
  const widths = widthsOf(columns, width);
  const lines = (cells: readonly string[]): readonly string[] => rowLines(cells, columns, widths);
  const heads = columns.map(({ head }) => head);
  const headLines = heads.every((head) => head === '') ? [] : lines(heads).map((line) => paint('heading', line));
  const count = columns[0]!.cells.length;
  const rows = Array.from({ length: count }, (_, row) => lines(columns.map(({ cells }) => cells[row]!)));
  return [...headLines, ...rows.flat()].join('\n');
}

/** One row, as high as its highest cell. */
function rowLines(cells: readonly string[], columns: readonly Column[], widths: readonly number[]): readonly string[] {
  const broken = cells.map((cell, k) => brokenLines(cell, widths[k]!));
  const height = Math.max(...broken.map(({ length }) => length));
  return Array.from({ length: height }, (_, row) =>
    broken
      .map((lines, k) => padded(lines[row] ?? '', widths[k]!, columns[k]!.right))
      .join(' '.repeat(APART))
      .trimEnd(),
  ).map(unglued);
}

function padded(text: string, width: number, right: boolean): string {
  const space = ' '.repeat(Math.max(0, width - widthOf(text)));
  return right ? space + text : text + space;
}
