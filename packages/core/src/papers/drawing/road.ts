/** The road of a drawing: its kerb, which way runners go, the chalk mark, a scale bar, its width, and where it is broken. */
import type { UnitSystem } from '../../units.ts';
import { wheelText } from '../../export/wheeled.ts';
import { type Html, NONE, html } from '../html.ts';
import type { KerbScale } from '../kerbScale.ts';
import { barOf, mm, svgPath, svgText, through } from '../svg.ts';
import { textWidth } from '../textBox.ts';
import { type Board, OUT, type Out } from './frame.ts';
import { crossingOf } from './mouths.ts';

type Stretch = readonly [from: number, to: number];

const widest = (all: readonly Stretch[]): Stretch => all.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a));

const widthWords = ({ input: { roadWidth, units } }: Board): string | null =>
  roadWidth === undefined ? null : wheelText(roadWidth, units);

/** Millimetres at the right edge that the road's width takes. */
export function widthRoom(board: Board): number {
  const says = widthWords(board);
  return says === null ? 0 : textWidth(says, 9) + 4;
}

/** Where lines from streets on the far side cross the road. */
const crossedAt = (board: Board): number[] =>
  (board.input.mouths ?? []).flatMap((mouth) =>
    mouth.kerb === 'far' ? [crossingOf(mouth, board.scale, board.input.width, widthRoom(board))] : [],
  );

/** Stretches of road on paper, clear of zigzags, lines, edges and what stands at the right. */
function freeRoad(board: Board): Stretch[] {
  const { scale, input } = board;
  const stops = [...scale.breaks.map(({ from, to }) => (from + to) / 2), ...crossedAt(board)].toSorted((a, b) => a - b);
  return [...stops, input.width - widthRoom(board)].map((stop, k) => [(stops[k - 1] ?? -2) + 4, stop - 4] as const);
}

/** Where the words for the chalk mark start on the road beside it, millimetres; `null` where a zigzag or an edge is too near. */
export function chalkRoom(board: Board): number | null {
  const { scale, points, input } = board;
  const long = textWidth(input.text.captain.drawing.chalk, points, true);
  const at = scale.x(0);
  const free = freeRoad(board);
  return (
    [at + 1.6, at - 1.6 - long].find((from) => free.some(([a, b]) => from >= a - 2.4 && from + long <= b + 2.4)) ?? null
  );
}

export function chalkMark(board: Board, out: Out): Html {
  const from = chalkRoom(board);
  const x = board.scale.x(0);
  const says =
    from === null
      ? NONE
      : svgText(from, out(-2.9) + 1.3, board.input.text.captain.drawing.chalk, {
          points: board.points,
          bold: true,
          data: html` data-chalk="0"`,
        });
  return html`${svgPath(`M${mm(x)} ${mm(out(-5))}V${mm(out(2))}`, 'stroke="#000" stroke-width="0.9" fill="none"')}${says}`;
}

/** What is said of the runners: their direction, and where it is not clear on which side the tables are. */
function runnersWords({ input: { text, direction } }: Board): string {
  const { runners } = text.captain.drawing;
  return direction.side === 'unclear' ? `${runners} (${text.frame.sideUnclear})` : runners;
}

export function roadOf(board: Board, out: Out): Html {
  const { input, scale, inks, points } = board;
  const { width, units } = input;
  const [kerb, far] = [out(0), out(OUT.road)];
  const says = runnersWords(board);
  const size = points + 1;
  const arrow = textWidth(says, size, true) + 2.5;
  const y = out(-8.2);
  const free = freeRoad(board);
  const first = free.find(([from, to]) => to - from > arrow + 15) ?? widest(free);
  // Between many streets there is room for the arrow alone.
  const said = crossedAt(board).length === 0 || first[1] - first[0] > arrow + 3;
  const from = Math.max(0.5, Math.min(first[0], width - widthRoom(board) - arrow - 12));
  return html`<rect x="0" y="${mm(Math.min(kerb, far))}" width="${mm(width)}" height="${mm(-OUT.road)}" fill="${inks.road}"/>${svgPath(`M0 ${mm(kerb)}H${mm(width)}`, 'stroke="#000" stroke-width="0.8"')}${svgPath(`M0 ${mm(far)}H${mm(width)}`, 'stroke="#777" stroke-width="0.4"')}
${scale.breaks.map((one) => zigzag(one.from, one.to, out))}
${said ? svgText(from, y + 1.4, says, { points: size, bold: true, halo: from !== first[0] }) : NONE}${svgPath(`M${mm(from + (said ? arrow : 0))} ${mm(y)}h${mm(Math.min(11, Math.max(5, first[1] + 1 - from - arrow)))}m-3 -1.8l3 1.8l-3 1.8`, 'stroke="#000" stroke-width="0.9" fill="none"')}${scaleBar(
    scale,
    units,
    free.filter((one) => one !== first),
    [from + arrow + 14, first[1]],
    y,
  )}${widthShape(board, out)}`;
}

/** The road's width as on a site plan: a line across it with its length. */
function widthShape(board: Board, out: Out): Html {
  const says = widthWords(board);
  if (says === null) return NONE;
  const x = board.input.width - 1.6;
  const ends = ([-0.6, -10.4] as const).map((at) => `M${mm(x - 0.8)} ${mm(out(at))}h1.6`);
  return html`${svgPath(`${ends.join('')}M${mm(x)} ${mm(out(-0.6))}V${mm(out(-10.4))}`, 'stroke="#000" stroke-width="0.3" fill="none"')}${svgText(x - 1.2, out(-5.5) + 1.1, says, { points: 9, anchor: 'end', data: html` data-road="1"` })}`;
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
function scaleBar({ scale }: KerbScale, units: UnitSystem, others: readonly Stretch[], rest: Stretch, y: number): Html {
  const [from, to] = widest([rest, ...others]);
  if (!(to - from - 16 > 3)) return NONE;
  const { length, says } = barOf(Math.min(26, to - from - 16) / scale, units);
  const long = length * scale;
  return html`${svgPath(`M${mm(to - long)} ${mm(y - 1)}v2m0 -1h${mm(long)}m0 -1v2`, 'stroke="#000" stroke-width="0.5" fill="none"')}${svgText(to - long - 1.5, y + 1.2, says, { points: 9, anchor: 'end' })}`;
}
