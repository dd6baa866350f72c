/** The words of letters and numbers below a drawing, in columns, each broken where its column ends. */
import { type Html, NONE, html } from '../html.ts';
import { pointMark } from '../marks.ts';
import { svgText } from '../svg.ts';
import { textWidth } from '../textBox.ts';
import type { Board } from './frame.ts';
import type { Thing } from './things.ts';

export interface LegendEntry {
  readonly key: string;
  readonly thing: Thing;
}

const POINTS = 9;
const LINE = 3.5;
const GAP = 4;
const TOP = 1;
/** Room of a point's shape. */
const SHAPE = 4.2;

interface Cell {
  readonly entry: LegendEntry;
  readonly title: readonly string[];
  readonly figure: readonly string[];
  /** The figure stands on the last line of the title. */
  readonly beside: boolean;
  readonly lines: number;
}

interface Column {
  readonly x: number;
  readonly cells: readonly Cell[];
}

interface Grid {
  readonly columns: readonly Column[];
  readonly indent: number;
  readonly height: number;
}

/** A text in lines that are at most so wide; words that are longer are broken. */
export function wrapped(text: string, width: number, points: number, bold: boolean): string[] {
  const fits = (line: string): boolean => textWidth(line, points, bold) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/u).filter((one) => one !== '')) {
    const more = line === '' ? word : `${line} ${word}`;
    if (fits(more)) {
      line = more;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const sign of word) {
      if (line !== '' && !fits(line + sign)) {
        lines.push(line);
        line = '';
      }
      line += sign;
    }
  }
  return line === '' ? lines : [...lines, line];
}

const shape = ({ thing }: LegendEntry): number => (thing.mark === undefined ? 0 : SHAPE);

function cellOf(entry: LegendEntry, width: number): Cell {
  const [says = '', figure = ''] = entry.thing.lines;
  const own = width - shape(entry);
  const title = wrapped(figure === '' ? says : `${says}:`, own, POINTS, true);
  const last = textWidth(title.at(-1) ?? '', POINTS, true);
  const beside = figure === '' || last + 1.2 + textWidth(figure, POINTS) <= own;
  const below = beside ? [figure] : wrapped(figure, own, POINTS, false);
  return { entry, title, figure: below, beside, lines: title.length + (beside ? 0 : below.length) };
}

/** Room of an entry on one line, without its key. */
const natural = (entry: LegendEntry): number => {
  const [title = '', figure = ''] = entry.thing.lines;
  return shape(entry) + textWidth(`${title}:`, POINTS, true) + 1.3 + textWidth(figure, POINTS);
};

const cut = <T>(list: readonly T[], each: number): T[][] =>
  Array.from({ length: Math.ceil(list.length / each) }, (_, k) => list.slice(k * each, (k + 1) * each));

/** As many columns as fit beside each other with every entry on one line; else one column, its lines broken. */
function gridOf(entries: readonly LegendEntry[], { input: { width } }: Board): Grid {
  const indent = Math.max(0, ...entries.map(({ key }) => textWidth(key, POINTS, true))) + 1.6;
  let best: readonly LegendEntry[][] = [[...entries]];
  for (let each = entries.length; each > 0; each--) {
    const lists = cut(entries, each);
    const wide = lists.reduce((sum, list) => sum + indent + Math.max(...list.map(natural)) + GAP, -GAP);
    if (wide <= width) best = lists;
  }
  let x = 0;
  const columns = best.map((list): Column => {
    const wide = best.length === 1 ? width - indent : Math.max(...list.map(natural));
    const column = { x, cells: list.map((entry) => cellOf(entry, wide)) };
    x += indent + wide + GAP;
    return column;
  });
  const lines = Math.max(0, ...columns.map(({ cells }) => cells.reduce((sum, cell) => sum + cell.lines, 0)));
  return { columns, indent, height: lines === 0 ? 0 : TOP + lines * LINE + 0.4 };
}

/** Millimetres. */
export const legendHeight = (entries: readonly LegendEntry[], board: Board): number => gridOf(entries, board).height;

/** The legend, its top at `y`. */
export function legendOf(entries: readonly LegendEntry[], board: Board, y: number): Html {
  const { columns, indent } = gridOf(entries, board);
  return html`${columns.map(({ x, cells }) => {
    let line = 0;
    return cells.map((cell) => {
      const drawn = cellShape(cell, x, indent, y + TOP + line * LINE);
      line += cell.lines;
      return drawn;
    });
  })}`;
}

function cellShape({ entry, title, figure, beside }: Cell, x: number, indent: number, top: number): Html {
  const foot = (k: number): number => top + (k + 0.8) * LINE;
  const left = x + indent + shape(entry);
  const { mark, data } = entry.thing;
  const after = left + textWidth(title.at(-1) ?? '', POINTS, true) + 1.2;
  const figures = figure.filter((one) => one !== '');
  return html`${svgText(x, foot(0), entry.key, { points: POINTS, bold: true, data: html` data-key="${entry.key}"` })}${mark === undefined ? NONE : pointMark(mark, x + indent + 1.7, foot(0) - 1.2)}${title.map(
    (says, k) =>
      svgText(left, foot(k), says, {
        points: POINTS,
        bold: true,
        data: figures.length === 0 && k === title.length - 1 ? data : NONE,
      }),
  )}${figures.map((says, k) =>
    svgText(beside ? after : left, foot(beside ? title.length - 1 : title.length + k), says, {
      points: POINTS,
      data: k === figures.length - 1 ? data : NONE,
    }),
  )}`;
}
