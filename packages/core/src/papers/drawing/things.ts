/** What a drawing names: items, points, gates and, where the road has no room for its words, the chalk mark. */
import { type ItemForm, formOf } from '../../kinds.ts';
import { type Item, isTable } from '../../layout/layout.ts';
import type { PointKind } from '../../plan/plan.ts';
import type { SheetText } from '../../text/sheetText.ts';
import { figureOf, pointFigure } from '../figures.ts';
import { shortened } from '../frame.ts';
import { type Html, html } from '../html.ts';
import { type Board, OUT } from './frame.ts';
import { crossingOf, mouthEnds } from './mouths.ts';
import { widthRoom } from './road.ts';

/** A thing with its words. */
export interface Thing {
  /** Title, and distance from the chalk mark where it has one. */
  readonly lines: readonly string[];
  readonly data: Html;
  /** Where it stands on paper, millimetres. */
  readonly span: readonly [number, number];
  /** Where its line should begin. */
  readonly prefer: number;
  /** Millimetres out from the kerb at which its line begins. */
  readonly from: number;
  /** Drawn in its slot. */
  readonly mark?: PointKind;
}

export const spanOf = (item: Item): readonly [number, number] => item.wheel ?? item.along;

/** How far from the road the line of a label begins. */
const BEGINS: Readonly<Record<ItemForm, number>> = { board: 4.6, table: 4.6, line: OUT.handOut, boxes: OUT.boxLine };

/** Tables of an item, by its length. */
export const tableCount = ({ along }: Pick<Item, 'along'>, tableLength: number): number =>
  Math.round((along[1] - along[0]) / tableLength);

function itemTitle(item: Item, { input: { tableLength, text, people } }: Board): string {
  const { frame, captain } = text;
  const name = frame.items[item.kind];
  const form = formOf(item.kind);
  if (form === 'board') return item.wording === undefined ? name : captain.drawing.sign(item.wording);
  if (form === 'boxes') return captain.drawing.boxes(name, item.boxes?.length ?? 0);
  if (form === 'line') return people === undefined ? name : captain.drawing.hands(name, people.handOut);
  return captain.drawing.tables(name, tableCount(item, tableLength));
}

/** Title of an item, and its distance from the chalk mark. */
export const itemLines = (item: Item, board: Board): readonly [string, string] => [
  itemTitle(item, board),
  figureOf(item, board.input.units, board.input.text).text,
];

/** How far another street's mouth is drawn from the kerb, millimetres. */
export const MOUTH = 2.2;
/** Half the width of a board, millimetres. */
export const BOARD = 3;

function itemThing(item: Item, board: Board): Thing {
  const [from, to] = spanOf(item).map(board.scale.x) as [number, number];
  const form = formOf(item.kind);
  const inner = Math.min(0.9, (to - from) / 3);
  const span =
    form === 'board'
      ? ([from - BOARD + 1, from + BOARD - 1] as const)
      : form === 'line'
        ? besideTables(item, board)
        : ([from + inner, to - inner] as const);
  return {
    lines: itemLines(item, board),
    data: figureOf(item, board.input.units, board.input.text).data,
    span,
    prefer: (span[0] + span[1]) / 2,
    from: BEGINS[form],
  };
}

/** The middle third of the hand-out line, of that the widest stretch with no table behind it: no doubt which of them is meant. */
function besideTables(line: Item, { input: { direction }, scale }: Board): readonly [number, number] {
  const [from, to] = spanOf(line).map(scale.x) as [number, number];
  const third = (to - from) / 3;
  const ends = direction.items
    .filter(({ kind }) => formOf(kind) === 'table')
    .map((item) => spanOf(item).map(scale.x) as [number, number])
    .toSorted((a, b) => a[0] - b[0]);
  const gaps = [from, ...ends.map(([, end]) => end)].map(
    (start, k) => [Math.max(start, from + third), Math.min(ends[k]?.[0] ?? to, to - third)] as const,
  );
  const widest = gaps.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a));
  return widest[1] - widest[0] > 0.6 ? widest : [from + third, to - third];
}

/** All that is named on the verge; items first, in their order. */
export function thingsOf(board: Board, chalk: boolean): Thing[] {
  const { input, scale } = board;
  const { direction, points, gates = [], mouths = [], units, text } = input;
  const at = (x: number): Pick<Thing, 'span' | 'prefer'> => {
    const within = Math.min(Math.max(x, 1), input.width - 1);
    return { span: [within, within], prefer: x };
  };
  return [
    ...direction.items.map((item) => itemThing(item, board)),
    ...(chalk ? [chalkThing(scale.x(0), text)] : []),
    ...gates.map(({ word, along }): Thing => {
      const [from, to] = along.map((at) => Math.min(Math.max(scale.x(at), 0), input.width)) as [number, number];
      return {
        lines: [text.captain.drawing.keepClear(shortened(word, 24))],
        data: html` data-gate="1"`,
        span: [from, to],
        prefer: (from + to) / 2,
        from: OUT.handOut,
      };
    }),
    ...mouths.map((mouth): Thing => {
      const far = mouth.kerb === 'far';
      const [from, to] = mouthEnds(mouth, scale, input.width);
      const middle = far ? crossingOf(mouth, scale, input.width, widthRoom(board)) : (from + to) / 2;
      return {
        lines: [shortened(mouth.word, 28), ...(far ? [text.frame.street.across] : [])],
        data: html` data-street="1"`,
        span: far ? [middle, middle] : [from, to],
        prefer: middle,
        from: far ? OUT.road - 0.6 : MOUTH,
      };
    }),
    ...points.map(({ kind, word, along }): Thing => ({
      lines: [word, pointFigure(along, units, text)],
      data: html` data-point="${kind}"`,
      ...at(scale.x(along)),
      from: OUT.pointEnd,
      mark: kind,
    })),
  ];
}

const chalkThing = (x: number, { captain: { drawing } }: SheetText): Thing => ({
  lines: [drawing.chalk],
  data: html` data-chalk="0"`,
  span: [x, x],
  prefer: x,
  from: 2,
});

/** What must be drawn to scale: all tables and the hand-out line as one stretch, the sign, the trash drop. */
export function toScale(items: readonly Item[]): (readonly [number, number])[] {
  const tables = items.filter(isTable).flatMap(spanOf);
  const rest = items.filter((item) => !isTable(item)).map(spanOf);
  return tables.length === 0 ? rest : [[Math.min(0, ...tables), Math.max(0, ...tables)], ...rest];
}
