/** Lines along the far side of the road that say how long each stretch is, by wheel, and along the course where that differs. */
import { isTable } from '../../layout/layout.ts';
import { wheelText } from '../../export/wheeled.ts';
import { type Html, NONE, html } from '../html.ts';
import { mm, svgPath, svgText } from '../svg.ts';
import { type Hung, hangLabels, textWidth } from '../textBox.ts';
import type { Board, Out } from './frame.ts';
import { slots } from './slots.ts';
import { spanOf } from './things.ts';

interface Stop {
  readonly along: number;
  /** `null` where no wheel can run. */
  readonly wheel: number | null;
  readonly x: number;
}

interface Leg {
  readonly from: number;
  readonly to: number;
  readonly lines: readonly string[];
  readonly data: Html;
}

export interface Dimensions {
  readonly legs: readonly Leg[];
  readonly middles: readonly number[];
  readonly hung: readonly Hung[];
  /** Millimetres beyond the road. */
  readonly height: number;
}

export const NO_DIMENSIONS: Dimensions = { legs: [], middles: [], hung: [], height: 0 };

const POINTS = 9;
const LINE = 3.5;
const FIRST = 4;
/** Places tried before another row is added. */
const PATIENCE = 300;

/** The sign, both ends of the tables, both ends of the trash drop, as far as there are any. */
function stopsOf({ input: { direction }, scale }: Board): Stop[] {
  const ends = direction.items.flatMap((item) =>
    ([0, 1] as const).map((end) => ({
      table: isTable(item),
      along: item.along[end],
      wheel: item.wheel?.[end] ?? null,
      x: scale.x(spanOf(item)[end]),
    })),
  );
  const tables = ends.filter(({ table }) => table).toSorted((a, b) => a.x - b.x);
  const rest = ends.filter(({ table }) => !table);
  return [...rest, ...tables.slice(0, 1), ...tables.slice(-1)].toSorted((a, b) => a.x - b.x);
}

function legsOf(board: Board): Leg[] {
  const { units, text } = board.input;
  const stops = stopsOf(board);
  return stops.slice(1).flatMap((stop, k): Leg[] => {
    const before = stops[k]!;
    const course = Math.abs(stop.along - before.along);
    const wheel = stop.wheel === null || before.wheel === null ? null : Math.abs(stop.wheel - before.wheel);
    if (stop.x - before.x < 0.01) return [];
    const [byWheel, byCourse] = [wheel === null ? null : wheelText(wheel, units), wheelText(course, units)];
    const along = text.captain.drawing.course(byCourse);
    return [
      {
        from: before.x,
        to: stop.x,
        lines: byWheel === null ? [along] : byWheel === byCourse ? [byWheel] : [byWheel, along],
        data: html` data-leg="${wheel === null ? 'course' : 'wheel'}"`,
      },
    ];
  });
}

/** Where the lengths stand; none where there is nothing to measure, or no room for them to be told apart. */
export function dimensionsOf(board: Board): Dimensions {
  const legs = legsOf(board);
  const { width } = board.input;
  const middles = slots(
    legs.map(({ from, to }) => ({ at: (from + to) / 2, width: 2 })),
    0.4,
    width - 0.4,
  );
  if (legs.length === 0 || middles === null) return NO_DIMENSIONS;
  const hung = hangLabels(
    legs.map(({ lines }, k) => ({
      width: Math.max(...lines.map((line) => textWidth(line, POINTS))),
      anchors: [middles[k]!],
    })),
    0,
    width,
    legs.length + 1,
    PATIENCE,
  );
  if (hung === null) return NO_DIMENSIONS;
  const rows = hung.reduce((most, { row }) => Math.max(most, row + 1), 0);
  return { legs, middles, hung, height: FIRST + rows * rowOf(legs) };
}

const rowOf = (legs: readonly Leg[]): number => LINE * Math.max(...legs.map(({ lines }) => lines.length)) + 0.6;

/** Drawn beyond the far edge of the road; `beyond` places millimetres from there on. */
export function dimensionShapes({ legs, middles, hung }: Dimensions, beyond: Out): Html {
  if (legs.length === 0) return NONE;
  const above = beyond(1) < beyond(0);
  const row = rowOf(legs);
  const at = beyond(2.4);
  const ticks = [legs[0]!.from, ...legs.map(({ to }) => to)].map(
    (x) => `M${mm(x)} ${mm(beyond(0.8))}V${mm(beyond(3.2))}M${mm(x - 0.8)} ${mm(at + 0.8)}l1.6 -1.6`,
  );
  return html`${svgPath(`M${mm(legs[0]!.from)} ${mm(at)}H${mm(legs.at(-1)!.to)}${ticks.join('')}`, 'stroke="#000" stroke-width="0.3" fill="none"')}${legs.map(
    ({ from, to, lines, data }, k) => {
      const near = FIRST + hung[k]!.row * row;
      const top = above ? beyond(near) - LINE * lines.length - 0.3 : beyond(near);
      const start = Math.min(Math.max(middles[k]!, from), to);
      return html`${svgPath(`M${mm(start)} ${mm(at)}L${mm(middles[k]!)} ${mm(beyond(FIRST - 0.4))}V${mm(beyond(near))}`, 'stroke="#000" stroke-width="0.2" fill="none"')}${lines.map(
        (says, j) =>
          svgText(hung[k]!.x, top + LINE * (j + 0.82), says, {
            points: POINTS,
            data: j === lines.length - 1 ? data : NONE,
          }),
      )}`;
    },
  )}`;
}
