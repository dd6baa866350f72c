/**
 * A station's layout along its kerb, drawn straight and to scale from one chalk mark, as its runners meet it:
 * they run from left to right, and what stands on their left is above the road. Empty stretches may be left
 * out, which the drawing shows by a zigzag. No text lies on another or leaves the drawing, and nothing is left out:
 * what has no room for its words has a letter or a number, and its words in the legend below.
 */
import { itemOf } from '../plan/lookups.ts';
import { type Dimensions, NO_DIMENSIONS, dimensionShapes, dimensionsOf } from './drawing/dimensions.ts';
import { type Board, type DrawingInput, INKS, OUT, type Out, SIZES } from './drawing/frame.ts';
import { type Labels, labelsOf } from './drawing/labels.ts';
import { legendHeight, legendOf, wrapped } from './drawing/legend.ts';
import { chalkMark, chalkRoom, roadOf } from './drawing/road.ts';
import { gateShape, itemShape, labelShapes, mouthShape, peopleShape } from './drawing/shapes.ts';
import { itemLines, thingsOf, toScale } from './drawing/things.ts';
import { figureOf } from './figures.ts';
import type { Html } from './html.ts';
import { type KerbScale, kerbScale } from './kerbScale.ts';
import { svgFrame, svgText } from './svg.ts';
import { textWidth } from './textBox.ts';

export type { DrawingInput, DrawingLook, DrawingSize, KerbGate, KerbPeople, KerbPoint } from './drawing/frame.ts';
export { tableCount } from './drawing/things.ts';

export interface LayoutDrawing {
  readonly svg: Html;
  /** Some distance is along the course instead of by wheel. */
  readonly folds: boolean;
  /** Some stretch is left out. */
  readonly broken: boolean;
  /** Millimetres. */
  readonly height: number;
}

const EDGE = 7;
/** Narrower than this no word stands beside another, millimetres. */
const NARROWEST = 60;
/** Of a break in a panel. */
const SHORT = 11;
const NOTE = { points: 9, line: 3.6 } as const;

/** The drawing of one direction; its items may be none, and then there is only the road. */
export function layoutDrawing(input: DrawingInput): LayoutDrawing {
  if (!(input.width >= NARROWEST))
    throw new RangeError(`expected a width of at least ${NARROWEST} mm, found ${input.width}`);
  const board = boardOf(input);
  const labels = labelsOf(thingsOf(board, chalkRoom(board) === null), board);
  const dimensions = input.dimensions === true ? dimensionsOf(board) : NO_DIMENSIONS;
  const note = noteOf(board, dimensions);
  const picture = labels.depth - OUT.road + dimensions.height;
  const legend = picture + legendHeight(labels.legend, board);
  const height = legend + (note.length === 0 ? 0 : 0.8 + note.length * NOTE.line + 0.8);
  return {
    svg: svgFrame(
      input.width,
      height,
      input.text.captain.drawing.title,
      [
        ...pieces(board, labels, dimensions),
        legendOf(labels.legend, board, picture),
        ...note.map((line, k) => svgText(0, legend + 0.8 + (k + 0.8) * NOTE.line, line, { points: NOTE.points })),
      ],
      'layout',
    ),
    folds: input.direction.items.some((item) => figureOf(item, input.units, input.text).folds),
    broken: board.scale.breaks.length > 0,
    height,
  };
}

function boardOf(input: DrawingInput): Board {
  const { size = 'half', look = 'ink', direction, width, mouths = [] } = input;
  const points = SIZES[size];
  const scaled = (first?: number, each?: number): KerbScale =>
    kerbScale(
      [[0, 0], ...toScale(direction.items), ...mouths.map(({ along }) => along)],
      EDGE,
      width - EDGE,
      first,
      each,
    );
  const board: Board = { input, scale: scaled(), inks: INKS[look], points };
  return { ...board, scale: size === 'panel' ? scaled(SHORT, SHORT) : scaled(signRoom(board)) };
}

/** A break behind the sign that leaves its words alone at the left edge, where they fit beside the rest. */
function signRoom(board: Board): number {
  const sign = itemOf(board.input.direction, 'sign');
  if (sign === undefined) return 0;
  const long = itemLines(sign, board).map((line, k) => textWidth(line, board.points, k === 0));
  return Math.min(board.input.width / 3, Math.max(...long) - EDGE + 2);
}

/** Road, what stands beside it, its words, its lengths. */
function pieces(board: Board, labels: Labels, dimensions: Dimensions): readonly Html[] {
  const { input, scale } = board;
  const above = input.direction.side === 'left';
  const kerb = above ? labels.depth : dimensions.height - OUT.road;
  const out: Out = (v) => (above ? kerb - v : kerb + v);
  return [
    roadOf(board, out),
    ...(input.mouths ?? []).map((mouth) => mouthShape(mouth, scale, input.width, board.inks.road, out)),
    ...(input.gates ?? []).map((gate) => gateShape(gate, scale, input.width, out)),
    ...input.direction.items.map((item) => itemShape(item, board, out)),
    peopleShape(board, out),
    chalkMark(board, out),
    ...labelShapes(labels, board, out),
    dimensionShapes(dimensions, (v) => out(OUT.road - v)),
  ];
}

/** What the signs of the drawing mean, in lines of its width. */
function noteOf({ input, scale }: Board, { legs }: Dimensions): string[] {
  if (input.note !== true) return [];
  const { drawing } = input.text.captain;
  const says = [
    drawing.measured,
    ...(legs.some(({ lines }) => lines.length > 1) ? [drawing.measuredTwice] : []),
    ...(input.people === undefined ? [] : [drawing.people]),
    scale.breaks.length > 0 ? drawing.notToScale : drawing.straight,
    drawing.acrossNotToScale,
  ];
  return wrapped(says.join(' '), input.width, NOTE.points, false);
}
