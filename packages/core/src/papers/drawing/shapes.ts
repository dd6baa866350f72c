/** What stands at the kerb as it is drawn: sign, tables, hand-out line, boxes, people, ground to keep clear. */
import { formOf } from '../../kinds.ts';
import type { Item } from '../../layout/layout.ts';
import { type Html, NONE, html } from '../html.ts';
import type { KerbScale } from '../kerbScale.ts';
import { pointMark } from '../marks.ts';
import { mm, svgPath, svgText } from '../svg.ts';
import { type Board, type KerbGate, type KerbMouth, OUT, type Out } from './frame.ts';
import { mouthEnds } from './mouths.ts';
import { KEY_HEIGHT, KEY_POINTS, LETTER_HEIGHT, type Labels, type Named, boxRoom, lineOf, rowOf } from './labels.ts';
import { BOARD, MOUTH, type Thing, spanOf, tableCount } from './things.ts';

type Rect = (left: number, right: number, near: number, far: number, look: string) => Html;

const rectOn =
  (out: Out): Rect =>
  (left, right, near, far, look) =>
    html`<rect x="${mm(left)}" y="${mm(Math.min(out(near), out(far)))}" width="${mm(right - left)}" height="${mm(far - near)}" ${{ html: look }}/>`;

const inked = (fill: string): string => `fill="${fill}" stroke="#000" stroke-width="0.4"`;

export function itemShape(item: Item, { input: { tableLength }, inks, scale: { x } }: Board, out: Out): Html {
  const [from, to] = spanOf(item).map(x) as [number, number];
  const rect = rectOn(out);
  const form = formOf(item.kind);
  if (form === 'board')
    return html`${svgPath(`M${mm(from)} ${mm(out(0.4))}V${mm(out(3))}`, 'stroke="#000" stroke-width="0.7"')}${rect(from - BOARD, from + BOARD, 2.6, OUT.tableEnd, `fill="${inks.sign}"`)}`;
  if (form === 'line')
    return svgPath(
      `M${mm(from)} ${mm(out(OUT.handOut))}H${mm(to)}`,
      `stroke="${inks.hands}" stroke-width="0.9" stroke-dasharray="1.8 1"`,
    );
  if (form === 'boxes') {
    const [a, b] = [item.from, item.to];
    const places = (item.boxes ?? []).map(({ measure }) =>
      b === a ? from : from + ((measure - a) / (b - a)) * (to - from),
    );
    return html`${svgPath(`M${mm(from)} ${mm(out(OUT.boxLine))}H${mm(to)}`, 'stroke="#000" stroke-width="0.25" fill="none"')}${places.map((at) => html`${rect(at - 1.1, at + 1.1, OUT.box, OUT.boxEnd, inked(inks.boxes))}${svgPath(`M${mm(at - 1.1)} ${mm(out(OUT.box))}L${mm(at + 1.1)} ${mm(out(OUT.boxEnd))}`, 'stroke="#000" stroke-width="0.3"')}`)}`;
  }
  const count = Math.max(1, tableCount(item, tableLength));
  const step = (to - from) / count;
  const fill = item.kind === 'water' ? inks.water : item.kind === 'gel' ? inks.gel : inks.sportsDrink;
  return html`${Array.from({ length: count }, (_, k) => rect(from + k * step, from + (k + 1) * step, OUT.table, OUT.tableEnd, inked(fill)))}`;
}

/** Persons in a row from one place to another, spread evenly, smaller where they are many. */
function row(from: number, to: number, count: number, at: number, fill: string, out: Out): Html {
  const step = (to - from) / Math.max(1, count);
  const radius = Math.min(0.75, step * 0.42);
  return html`${Array.from(
    { length: count },
    (_, k) =>
      html`<circle cx="${mm(from + (k + 0.5) * step)}" cy="${mm(out(at))}" r="${mm(radius)}" fill="${fill}" stroke="#000" stroke-width="0.3"/>`,
  )}`;
}

/** Who hands out along the line, who pours behind the drink tables by their length, who is at the gel. */
export function peopleShape({ input: { direction, people }, inks, scale }: Board, out: Out): Html {
  if (people === undefined) return NONE;
  const drinks = direction.items.filter(({ kind }) => kind === 'sportsDrink' || kind === 'water');
  const long = drinks.reduce((sum, { from, to }) => sum + to - from, 0);
  let left = people.pour;
  return html`${direction.items.map((item) => {
    const [from, to] = spanOf(item).map(scale.x) as [number, number];
    if (item.kind === 'handOut') return row(from, to, people.handOut, OUT.handOut, inks.hands, out);
    if (item.kind === 'gel') return row(from, to, people.gel, OUT.people, inks.people, out);
    if (!drinks.includes(item)) return NONE;
    const share =
      item === drinks.at(-1) ? left : Math.min(left, Math.round((people.pour * (item.to - item.from)) / long));
    left -= share;
    return row(from, to, share, OUT.people, inks.people, out);
  })}`;
}

/** Ground to keep clear: hatched beside the kerb. */
export function gateShape({ along }: KerbGate, { x }: KerbScale, width: number, out: Out): Html {
  const [from, to] = along.map((at) => Math.min(Math.max(x(at), 0), width)) as [number, number];
  const count = Math.max(2, Math.round((to - from) / 1.5));
  const strokes = Array.from({ length: count }, (_, k) => {
    const at = from + ((to - from) * (k + 0.5)) / count;
    return `M${mm(at - 0.5)} ${mm(out(0.5))}L${mm(at + 0.5)} ${mm(out(2))}`;
  });
  return svgPath(
    `M${mm(from)} ${mm(out(0))}V${mm(out(2.2))}M${mm(to)} ${mm(out(0))}V${mm(out(2.2))}${strokes.join('')}`,
    'stroke="#000" stroke-width="0.4" fill="none"',
  );
}

/** Another street's mouth: the kerb is open there, and turns into it. */
export function mouthShape(mouth: KerbMouth, scale: KerbScale, width: number, road: string, out: Out): Html {
  const { kerb } = mouth;
  const [from, to] = mouthEnds(mouth, scale, width);
  const opening = (edge: number, end: number): Html => {
    const [inner, outer] = [out(edge - Math.sign(end - edge) * 0.5), out(end)];
    return html`<rect x="${mm(from)}" y="${mm(Math.min(inner, outer))}" width="${mm(to - from)}" height="${mm(Math.abs(outer - inner))}" fill="${road}"/>${svgPath(`M${mm(from)} ${mm(out(edge))}V${mm(outer)}M${mm(to)} ${mm(out(edge))}V${mm(outer)}`, 'stroke="#000" stroke-width="0.6" fill="none"')}`;
  };
  return html`${kerb === 'far' ? NONE : opening(0, MOUTH)}${kerb === 'near' ? NONE : opening(OUT.road, OUT.road - 1.6)}`;
}

const LEADER = 'stroke="#000" stroke-width="0.25" fill="none"';

/** The line from a thing to its slot, with a dot where it begins, so that it is clear what it belongs to. */
function lineTo({ span, from }: Thing, slot: number, end: number, out: Out): Html {
  const anchor = Math.min(Math.max(slot, span[0]), span[1]);
  const start =
    Math.abs(slot - anchor) < 0.02
      ? `M${mm(slot)} ${mm(out(from))}`
      : `M${mm(anchor)} ${mm(out(from))}V${mm(out(Math.max(from, OUT.tableEnd)))}L${mm(slot)} ${mm(out(OUT.bend))}`;
  return html`${svgPath(`${start}V${mm(out(end))}`, LEADER)}<circle cx="${mm(anchor)}" cy="${mm(out(from))}" r="0.55" fill="#000" stroke="#fff" stroke-width="0.25"/>`;
}

/** The line from a thing to its words; that of a point begins under its shape, and where that had to move, leads to it. */
function leader(thing: Thing, slot: number, end: number, out: Out): Html {
  if (thing.mark === undefined) return lineTo(thing, slot, end, out);
  const at = thing.span[0];
  const way = Math.abs(slot - at) > 1.5 ? `M${mm(at)} ${mm(out(OUT.verge))}L${mm(slot)} ${mm(out(OUT.bend))}` : '';
  const on = Math.abs(end - OUT.pointEnd) > 0.4 ? `M${mm(slot)} ${mm(out(OUT.pointEnd))}V${mm(out(end))}` : '';
  return way === '' && on === '' ? NONE : svgPath(`${way}${on}`, LEADER);
}

/** A text set so that its middle is at a depth. */
const across = (x: number, at: number, says: string, points: number, out: Out): Html =>
  svgText(x, out(at) + points * 0.125, says, { points, bold: true, anchor: 'middle' });

function namedShape(named: Named, { depth, rows }: Labels, board: Board, out: Out): Html {
  const { things, slot, key, hung } = named;
  const [first] = things;
  const mark = things.length === 1 && first!.mark !== undefined ? pointMark(first!.mark, slot, out(OUT.point)) : NONE;
  if (hung === undefined && rows > 0)
    return html`${leader(first!, slot, OUT.pointEnd, out)}${mark}${across(slot, OUT.pointEnd + LETTER_HEIGHT / 2 - 0.1, key!, KEY_POINTS, out)}`;
  if (hung === undefined) return keyShape(named, depth, out);
  return html`${mark}${wordsShape(first!, named, depth - (rows - hung.row) * rowOf(board), board, out)}`;
}

/** A number in a box, with its shape beside it if it is a point's, and lines to all that it names. */
function keyShape({ things, slot, key }: Named, depth: number, out: Out): Html {
  const [first] = things;
  const mark = things.length === 1 ? first!.mark : undefined;
  const top = depth - KEY_HEIGHT;
  const half = (boxRoom(key!, mark !== undefined) - 0.4) / 2;
  const shift = mark === undefined ? 0 : 1.7;
  return html`${things.map((thing) => lineTo(thing.mark === undefined ? thing : { ...thing, from: OUT.verge }, slot, top + 0.4, out))}${rectOn(out)(slot - half, slot + half, top + 0.2, depth - 0.2, 'fill="#fff" stroke="#000" stroke-width="0.3" rx="0.8"')}${mark === undefined ? NONE : pointMark(mark, slot - half + 2.2, out(top + KEY_HEIGHT / 2))}${across(slot + shift, top + KEY_HEIGHT / 2, key!, KEY_POINTS, out)}`;
}

/** Words of a thing, their near edge `near` from the kerb. */
function wordsShape(thing: Thing, { slot, hung }: Named, near: number, board: Board, out: Out): Html {
  const [row, line] = [rowOf(board), lineOf(board)];
  const above = out(1) < out(0);
  const top = above ? out(near + row) : out(near);
  const end = near + (above ? row - line * thing.lines.length - 0.9 : 0.5);
  return html`${leader(thing, slot, end, out)}${thing.lines.map((says, k) =>
    svgText(hung!.x, top + line * (k + 1), says, {
      points: board.points,
      bold: k === 0,
      data: k === thing.lines.length - 1 ? thing.data : NONE,
    }),
  )}`;
}

/** All words, letters and numbers of the verge, with the shapes of points in their slots. */
export const labelShapes = (labels: Labels, board: Board, out: Out): readonly Html[] =>
  labels.named.map((named) => namedShape(named, labels, board, out));
