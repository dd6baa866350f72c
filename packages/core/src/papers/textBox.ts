/**
 * How much room a text takes in a drawing, and where to put texts so that none lies on another: drawings are
 * made without a browser that could measure. Widths are those of the papers' own font, and drawings are set without
 * kerning: no text is drawn wider, and none by more than 0.02 mm a letter narrower (`tests/papersFit.test.ts`).
 */
import { emsOf } from './font/font.ts';

/** Millimetres, y downwards. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Millimetres in a point. */
export const POINT: number = 25.4 / 72;

/** Millimetres that a text takes at a size in points. */
export const textWidth = (text: string, points: number, bold: boolean = false): number =>
  emsOf(text, bold) * points * POINT;

/** Whether two boxes share ground. */
export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** A label to be hung under a thing by a plumb line from one of its `anchors`. */
export interface Hanging {
  readonly width: number;
  /** Where on the thing the line may start, millimetres, best first. */
  readonly anchors: readonly number[];
}

/** Where a label hangs: its left edge, its row from 0, and where its line comes down. */
export interface Hung {
  readonly x: number;
  readonly row: number;
  readonly anchor: number;
}

/** Room between neighbours, and between a line and a label that it passes. */
const GAP = 1.6;
const MOST_ROWS = 12;
const ALIGNMENTS = [0.5, 0.15, 0.85, 0, 1];

/** Places tried before another row is added. */
const PATIENCE = 4000;

/**
 * Rows of labels in which no label lies on another and no line runs through a label, in as few rows as found;
 * each label within `left` to `right`. `null` where not even `most` rows do, or `patience` places a number of rows are not enough to see it.
 */
export function hangLabels(
  labels: readonly Hanging[],
  left: number,
  right: number,
  most: number = MOST_ROWS,
  patience: number = PATIENCE,
): Hung[] | null {
  const long = labels.reduce((sum, { width }) => sum + width + GAP, 0);
  // Fewer rows are too short for all of them in a line.
  const least = Math.max(1, Math.ceil(long / (right - left + GAP)));
  for (let rows = least; rows <= most; rows++) {
    const open = labels.map((label, k) => ({ k, places: placesOf(label, rows, left, right) }));
    const found = hang(open, [], { left: patience });
    if (found !== null) return labels.map((_, k) => found.find((one) => one.k === k)!.place);
  }
  return null;
}

interface Placed extends Hung {
  readonly width: number;
}

interface Open {
  readonly k: number;
  /** Where it may still hang, best first. */
  readonly places: readonly Placed[];
}

interface Settled {
  readonly k: number;
  readonly place: Placed;
}

/** The label with the fewest places left goes first; every place that it takes from the others is struck out at once. */
function hang(open: readonly Open[], settled: readonly Settled[], search: { left: number }): readonly Settled[] | null {
  if (open.length === 0) return settled;
  const next = open.reduce((least, one) => (one.places.length < least.places.length ? one : least));
  for (const place of next.places) {
    if (search.left-- <= 0) return null;
    const rest = open
      .filter((one) => one !== next)
      .map(({ k, places }) => ({ k, places: places.filter((other) => !clash(place, other)) }));
    if (rest.some(({ places }) => places.length === 0)) continue;
    const whole = hang(rest, [...settled, { k: next.k, place }], search);
    if (whole !== null) return whole;
  }
  return null;
}

/** Every row, anchor and left edge under which the anchor's line still meets the label. */
const placesOf = ({ width, anchors }: Hanging, rows: number, left: number, right: number): Placed[] =>
  Array.from({ length: rows }, (_, row) => row).flatMap((row) =>
    anchors.flatMap((anchor) =>
      [...new Set(ALIGNMENTS.map((share) => Math.min(Math.max(anchor - width * share, left), right - width)))].map(
        (x) => ({ x, row, anchor, width }),
      ),
    ),
  );

function clash(a: Placed, b: Placed): boolean {
  if (Math.abs(a.anchor - b.anchor) < GAP / 2) return true;
  if (a.row === b.row) return a.x < b.x + b.width + GAP && b.x < a.x + a.width + GAP;
  const [upper, lower] = a.row < b.row ? [a, b] : [b, a];
  return lower.anchor > upper.x - GAP / 2 && lower.anchor < upper.x + upper.width + GAP / 2;
}
