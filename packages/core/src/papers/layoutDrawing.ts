/**
 * A station's layout along its kerb, drawn straight and to scale from one chalk mark, as its runners meet it:
 * they run from left to right, and what stands on their left is above the road. Empty stretches may be left
 * out, which the drawing shows by a zigzag. Texts never lie on each other.
 */
import { type Item, type LaidDirection, isTable } from '../layout/layout.ts';
import { type ItemForm, formOf } from '../kinds.ts';
import { itemOf } from '../plan/lookups.ts';
import type { PointKind } from '../plan/plan.ts';
import type { UnitSystem } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { figureOf, pointFigure } from './figures.ts';
import { type Html, NONE, html } from './html.ts';
import { type KerbScale, kerbScale } from './kerbScale.ts';
import { pointMark } from './marks.ts';
import { barOf, mm, svgFrame, svgPath, svgText, through } from './svg.ts';
import { type Hanging, type Hung, hangLabels, textWidth } from './textBox.ts';

/** A point of the station near its kerb. */
export interface KerbPoint {
  readonly kind: PointKind;
  /** What it is called on paper. */
  readonly word: string;
  /** From the pin's foot along the course, metres. */
  readonly along: number;
}

export interface DrawingInput {
  readonly direction: LaidDirection;
  /** Metres. */
  readonly tableLength: number;
  readonly points: readonly KerbPoint[];
  readonly units: UnitSystem;
  readonly text: SheetText;
  /** Millimetres. */
  readonly width: number;
}

export interface LayoutDrawing {
  readonly svg: Html;
  /** Some distance is along the course instead of by wheel. */
  readonly folds: boolean;
  /** Some stretch is left out. */
  readonly broken: boolean;
  /** Millimetres. */
  readonly height: number;
}

/** A label under what it names. */
interface Label extends Hanging {
  readonly lines: readonly string[];
  readonly data: Html;
  /** Where its line begins, millimetres out from the kerb. */
  readonly from: number;
}

/** Millimetres out from the kerb, over the verge. */
const OUT = {
  road: -11,
  handOut: 1.3,
  table: 2.4,
  tableEnd: 6.6,
  box: 2.4,
  boxEnd: 5.4,
  point: 8.6,
  rows: 11.2,
} as const;
const SIZE = 10;
const ROW = 8.2;
const LINE = 3.7;
/** Beyond so many rows points go without words: their shapes stand in the list beside the map. */
const EASY_ROWS = 3;
const EDGE = 7;
/** Room for a point's shape. */
const MARK = 3.8;

const span = (item: Item): readonly [number, number] => item.wheel ?? item.along;

/** Places `v` millimetres out from the kerb on a drawing so high, whichever side the verge is on. */
type Out = (v: number) => number;

/** The drawing of one direction; its items may be none, and then there is only the road. */
export function layoutDrawing(input: DrawingInput): LayoutDrawing {
  const { direction, width } = input;
  const { items } = direction;
  const scale = kerbScale([[0, 0], ...spansOf(items)], EDGE, width - EDGE, signRoom(input));
  const figures = items.map((item) => figureOf(item, input.units, input.text));
  const spots = apart(input.points.map(({ along }) => scale.x(along)));
  const { labels, hung } = labelsOf(input, scale, spots);
  const rows = hung.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const height = OUT.rows + rows * ROW - OUT.road;
  const above = direction.side === 'left';
  const out: Out = (v) => (above ? height + OUT.road - v : v - OUT.road);
  const content = [
    roadOf(input, scale, out, width),
    ...items.map((item) => itemShape(item, input.tableLength, scale, out)),
    ...input.points.map(({ kind }, k) => pointMark(kind, spots[k]!, out(OUT.point))),
    chalkMark(input, scale, out),
    ...labels.map((label, k) => labelShape(label, hung[k]!, out, above)),
  ];
  const title = input.text.captain.drawing.title;
  return {
    svg: svgFrame(width, height, title, content, 'layout'),
    folds: figures.some(({ folds }) => folds),
    broken: scale.breaks.length > 0,
    height,
  };
}

/** A break behind the sign that leaves its words alone at the left edge, where they fit beside the rest. */
function signRoom(input: DrawingInput): number {
  const sign = itemOf(input.direction, 'sign');
  return sign === undefined
    ? 0
    : Math.min(
        input.width / 3,
        Math.max(...labelLines(sign, input).map((line, k) => textWidth(line, SIZE, k === 0))) - EDGE + 2,
      );
}

/** Title, and distance from the chalk mark. */
const labelLines = (item: Item, { tableLength, units, text }: DrawingInput): readonly [string, string] => [
  itemTitle(item, tableLength, text),
  figureOf(item, units, text).text,
];

/** Places of shapes moved on so far that none lies on another; their order stays. */
function apart(places: readonly number[]): number[] {
  const moved = [...places];
  const order = places.map((_, k) => k).sort((a, b) => places[a]! - places[b]!);
  order.slice(1).forEach((k, i) => {
    moved[k] = Math.max(moved[k]!, moved[order[i]!]! + MARK);
  });
  return moved;
}

/** What must be drawn to scale: all tables and the hand-out line as one stretch, the sign, the trash drop. */
function spansOf(items: readonly Item[]): (readonly [number, number])[] {
  const tables = items.filter(isTable).flatMap(span);
  const rest = items.filter((item) => !isTable(item)).map(span);
  return tables.length === 0 ? rest : [[Math.min(0, ...tables), Math.max(0, ...tables)], ...rest];
}

/** Labels of items, chalk mark and points with their places; points go without where that would take many rows. */
function labelsOf(
  input: DrawingInput,
  scale: KerbScale,
  spots: readonly number[],
): { labels: readonly Label[]; hung: readonly Hung[] } {
  const { direction, text, points, width } = input;
  const chalk =
    chalkRoom(input, scale) === null
      ? [labelled([text.captain.drawing.chalk], [scale.x(0)], 2, html` data-chalk="0"`)]
      : [];
  const items = direction.items.map((item) => itemLabel(item, input, scale));
  const marks = points.map(({ kind, word, along }, k) =>
    labelled([word, pointFigure(along, input.units, text)], [spots[k]!], OUT.point + 1.8, html` data-point="${kind}"`),
  );
  const named = [...items, ...chalk, ...marks];
  const all = hangLabels(named, 0, width, EASY_ROWS);
  if (all !== null) return { labels: named, hung: all };
  const labels = [...items, ...chalk];
  const hung = hangLabels(labels, 0, width) ?? hangLabels(labels.map(spread), 0, width);
  if (hung !== null) return { labels, hung };
  throw new RangeError(`expected room for ${items.length} labels on ${width} mm, found none`);
}

/** Millimetres by which leaders of things that stand in one place begin beside each other. */
const BESIDE = [0, 2, -2, 4, -4, 6, -6, 8, -8, 10, 12];

const spread = (label: Label): Label => ({
  ...label,
  anchors: label.anchors.flatMap((anchor) => BESIDE.map((by) => Math.max(anchor + by, 0))),
});

const labelled = (lines: readonly string[], anchors: readonly number[], from: number, data: Html): Label => ({
  lines,
  anchors,
  from,
  data,
  width: Math.max(...lines.map((line, k) => textWidth(line, SIZE, k === 0))),
});

/** How far from the road the leader of a label begins. */
const BEGINS: Readonly<Record<ItemForm, number>> = {
  board: OUT.tableEnd,
  table: OUT.tableEnd,
  line: OUT.handOut,
  boxes: OUT.boxEnd,
};

function itemLabel(item: Item, input: DrawingInput, scale: KerbScale): Label {
  const [from, to] = span(item).map(scale.x) as [number, number];
  const middle = (from + to) / 2;
  const inner = Math.min(0.9, (to - from) / 3);
  const anchors =
    item.kind === 'handOut'
      ? [to, from]
      : from === to
        ? [from]
        : [middle, from + inner, to - inner, (from + middle) / 2, (middle + to) / 2];
  const begins = BEGINS[formOf(item.kind)];
  return labelled(labelLines(item, input), anchors, begins, figureOf(item, input.units, input.text).data);
}

/** Tables of an item, by its length. */
export const tableCount = ({ along }: Pick<Item, 'along'>, tableLength: number): number =>
  Math.round((along[1] - along[0]) / tableLength);

function itemTitle(item: Item, tableLength: number, { frame, captain: { drawing } }: SheetText): string {
  const name = frame.items[item.kind];
  const form = formOf(item.kind);
  if (form === 'board') return item.wording === undefined ? name : drawing.sign(item.wording);
  if (form === 'boxes') return drawing.boxes(name, item.boxes?.length ?? 0);
  return form === 'line' ? name : drawing.tables(name, tableCount(item, tableLength));
}

function labelShape({ lines, from, data }: Label, { x, row, anchor }: Hung, out: Out, above: boolean): Html {
  const near = OUT.rows + row * ROW;
  const top = above ? out(near + ROW) : out(near);
  const first = top + LINE;
  return html`${svgPath(`M${mm(anchor)} ${mm(out(from))}V${mm(out(near + (above ? ROW - LINE * lines.length - 0.9 : 0.5)))}`, 'stroke="#000" stroke-width="0.25" fill="none"')}${lines.map(
    (line, k) =>
      svgText(x, first + k * LINE, line, { points: SIZE, bold: k === 0, data: k === lines.length - 1 ? data : NONE }),
  )}`;
}

function roadOf({ text, units, direction }: DrawingInput, scale: KerbScale, out: Out, width: number): Html {
  const [kerb, far] = [out(0), out(OUT.road)];
  const top = Math.min(kerb, far);
  const says =
    direction.side === 'unclear'
      ? `${text.captain.drawing.runners} (${text.frame.sideUnclear})`
      : text.captain.drawing.runners;
  const arrow = textWidth(says, 11, true) + 2.5;
  const y = out(-8.2);
  const free = freeRoad(scale, width);
  const [first] = free
    .filter(([from, to]) => to - from > arrow + 15)
    .concat([free.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a))]);
  return html`<rect x="0" y="${mm(top)}" width="${mm(width)}" height="${mm(-OUT.road)}" fill="#ececec"/>${svgPath(`M0 ${mm(kerb)}H${mm(width)}`, 'stroke="#000" stroke-width="0.8"')}
${scale.breaks.map((one) => zigzag(one.from, one.to, out))}
${svgText(first![0], y + 1.4, says, { points: 11, bold: true })}${svgPath(`M${mm(first![0] + arrow)} ${mm(y)}h11m-3 -1.8l3 1.8l-3 1.8`, 'stroke="#000" stroke-width="0.9" fill="none"')}${scaleBar(
    scale,
    units,
    free.filter((one) => one !== first),
    [first![0] + arrow + 14, first![1]],
    y,
  )}`;
}

/** Stretches of road on paper, clear of zigzags and edges. */
function freeRoad({ breaks }: KerbScale, width: number): (readonly [number, number])[] {
  const stops = breaks.map(({ from, to }) => (from + to) / 2);
  return [...stops, width].map((stop, k) => [(stops[k - 1] ?? -2) + 4, stop - 4] as const);
}

/** Where the words for the chalk mark start on the road beside it, millimetres; `null` where a zigzag or an edge is too near. */
function chalkRoom({ text, width }: DrawingInput, scale: KerbScale): number | null {
  const long = textWidth(text.captain.drawing.chalk, SIZE, true);
  const at = scale.x(0);
  const fits = (from: number): boolean =>
    freeRoad(scale, width).some(([a, b]) => from >= a - 2.4 && from + long <= b + 2.4);
  return [at + 1.6, at - 1.6 - long].find(fits) ?? null;
}

function chalkMark(input: DrawingInput, scale: KerbScale, out: Out): Html {
  const room = chalkRoom(input, scale);
  const x = scale.x(0);
  const says =
    room === null
      ? NONE
      : svgText(room, out(-2.9) + 1.3, input.text.captain.drawing.chalk, {
          points: SIZE,
          bold: true,
          data: html` data-chalk="0"`,
        });
  return html`${svgPath(`M${mm(x)} ${mm(out(-5))}V${mm(out(2))}`, 'stroke="#000" stroke-width="0.9" fill="none"')}${says}`;
}

/** A gap in road and kerb, with a broken line at each side of it. */
function zigzag(from: number, to: number, out: Out): Html {
  const middle = (from + to) / 2;
  const [kerb, far] = [out(2.2), out(OUT.road)];
  const side = (x: number): string =>
    through([0, 1, 2, 3, 4, 5, 6].map((k) => [x + (k % 2 === 0 ? -0.8 : 0.8), far + ((kerb - far) * k) / 6] as const));
  return html`<rect x="${mm(middle - 1.6)}" y="${mm(Math.min(kerb, far))}" width="3.2" height="${mm(Math.abs(kerb - far))}" fill="#fff"/>${svgPath(side(middle - 1.6) + side(middle + 1.6), 'stroke="#000" stroke-width="0.4" fill="none"')}`;
}

/** The bar with its length, in the widest stretch of road that is left; none where that is too short for a legible bar. */
function scaleBar(
  { scale }: KerbScale,
  units: UnitSystem,
  others: readonly (readonly [number, number])[],
  rest: readonly [number, number],
  y: number,
): Html {
  const [from, to] = others.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a), rest);
  if (!(to - from - 16 > 3)) return NONE;
  const { length, says } = barOf(Math.min(26, to - from - 16) / scale, units);
  const long = length * scale;
  return html`${svgPath(`M${mm(to - long)} ${mm(y - 1)}v2m0 -1h${mm(long)}m0 -1v2`, 'stroke="#000" stroke-width="0.5" fill="none"')}${svgText(to - long - 1.5, y + 1.2, says, { points: 9, anchor: 'end' })}`;
}

function itemShape(item: Item, tableLength: number, { x }: KerbScale, out: Out): Html {
  const [from, to] = span(item).map(x) as [number, number];
  const rect = (left: number, right: number, near: number, far: number, look: string): Html =>
    html`<rect x="${mm(left)}" y="${mm(Math.min(out(near), out(far)))}" width="${mm(right - left)}" height="${mm(far - near)}" ${{ html: look }}/>`;
  const ink = 'fill="#fff" stroke="#000" stroke-width="0.4"';
  const form = formOf(item.kind);
  if (form === 'board')
    return html`${svgPath(`M${mm(from)} ${mm(out(0.4))}V${mm(out(3))}`, 'stroke="#000" stroke-width="0.7"')}${rect(from - 3, from + 3, 3, OUT.tableEnd, 'fill="#000"')}`;
  if (form === 'line')
    return svgPath(
      `M${mm(from)} ${mm(out(OUT.handOut))}H${mm(to)}`,
      'stroke="#000" stroke-width="0.9" stroke-dasharray="1.8 1"',
    );
  if (form === 'boxes') {
    const [a, b] = [item.from, item.to];
    const places = (item.boxes ?? []).map(({ measure }) =>
      b === a ? from : from + ((measure - a) / (b - a)) * (to - from),
    );
    return html`${places.map((at) => html`${rect(at - 1.1, at + 1.1, OUT.box, OUT.boxEnd, ink)}${svgPath(`M${mm(at - 1.1)} ${mm(out(OUT.box))}L${mm(at + 1.1)} ${mm(out(OUT.boxEnd))}`, 'stroke="#000" stroke-width="0.3"')}`)}`;
  }
  const count = Math.max(1, tableCount(item, tableLength));
  const step = (to - from) / count;
  const fill =
    item.kind === 'water'
      ? ink
      : item.kind === 'gel'
        ? 'fill="#000" stroke="#000" stroke-width="0.4"'
        : 'fill="#bbb" stroke="#000" stroke-width="0.4"';
  return html`${Array.from({ length: count }, (_, k) => rect(from + k * step, from + (k + 1) * step, OUT.table, OUT.tableEnd, fill))}`;
}
