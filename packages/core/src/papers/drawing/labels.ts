/**
 * Words of a drawing where they cannot lie on each other or leave it: each thing has a slot of its own under the verge,
 * its words hang under the slot; where that takes too many rows the points go by letters, then all by numbers, with
 * their words in a legend below, in the order of the slots.
 */
import { type Hung, hangLabels, textWidth } from '../textBox.ts';
import { type Board, OUT } from './frame.ts';
import { type LegendEntry, legendHeight } from './legend.ts';
import { slots } from './slots.ts';
import type { Thing } from './things.ts';

/** A thing, or several by one key, with the place of what names it. */
export interface Named {
  readonly things: readonly Thing[];
  /** Of its line, and of its shape if it is a point. */
  readonly slot: number;
  /** A letter or a number instead of words; "5–9" for several. */
  readonly key?: string;
  readonly hung?: Hung;
}

export interface Labels {
  /** Items first, in their order. */
  readonly named: readonly Named[];
  readonly legend: readonly LegendEntry[];
  /** Rows of words. */
  readonly rows: number;
  /** Millimetres from the kerb to the outer edge of the words. */
  readonly depth: number;
}

/** Room of a line, of a point's shape, and of a key beside the next. */
const LINE_ROOM = 2.2;
const MARK_ROOM = 3.8;
const KEY_ROOM = 1.6;
/** Of a key in a box, and of a letter under its shape. */
export const KEY_HEIGHT = 4.6;
export const LETTER_HEIGHT = 3.4;
export const KEY_POINTS = 9;

/** Of one line of text, and of the two of a label. */
export const lineOf = ({ points }: Board): number => points * 0.37;
export const rowOf = (board: Board): number => lineOf(board) * 2 + 0.8;

/** So many rows of words are easy to follow; more than the most are not. */
const EASY_ROWS = 2;
const MOST_ROWS = 3;
const EDGE = 0.4;

function slotsOf(things: readonly Thing[], widths: readonly number[], { input: { width } }: Board): number[] | null {
  return slots(
    things.map(({ prefer }, k) => ({ at: prefer, width: widths[k]! })),
    EDGE,
    width - EDGE,
  );
}

/** Room of what names one thing by its number, with its shape beside it if it is a point. */
export const boxRoom = (key: string, mark: boolean): number =>
  textWidth(key, KEY_POINTS, true) + (mark ? MARK_ROOM : 0) + KEY_ROOM;

const room = ({ mark }: Thing, key?: string): number =>
  Math.max(
    mark === undefined ? LINE_ROOM : MARK_ROOM,
    key === undefined ? 0 : textWidth(key, KEY_POINTS, true) + KEY_ROOM,
  );

/** Where the line of a thing may come down: its slot, or over the thing itself as far as half the room to its neighbours. */
function anchorsOf(k: number, places: readonly number[], widths: readonly number[], { span, mark }: Thing): number[] {
  const at = places[k]!;
  if (mark !== undefined) return [at];
  const free = (j: number): number => Math.max(0, (Math.abs(places[j]! - at) - (widths[j]! + widths[k]!) / 2) / 2);
  const others = places.map((_, j) => j).filter((j) => j !== k);
  const left = Math.min(...others.filter((j) => places[j]! <= at).map(free), Infinity);
  const right = Math.min(...others.filter((j) => places[j]! > at).map(free), Infinity);
  const low = Math.max(at - left, Math.min(span[0], at));
  const high = Math.min(at + right, Math.max(span[1], at));
  return [...new Set([at, low, high])];
}

/** Everything in words; `null` where that takes more rows than `most`. */
function inWords(things: readonly Thing[], lettered: readonly Thing[], board: Board, most: number): Labels | null {
  const all = [...things, ...lettered];
  const letters = inOrder(lettered).map((thing, k) => [thing, letterOf(k)] as const);
  const keys = new Map(letters);
  const widths = all.map((thing) => room(thing, keys.get(thing)));
  const places = slotsOf(all, widths, board);
  if (places === null) return null;
  const hung = hangLabels(
    things.map(({ lines }, k) => ({
      width: Math.max(...lines.map((line, j) => textWidth(line, board.points, j === 0))),
      anchors: anchorsOf(k, places, widths, things[k]!),
    })),
    0,
    board.input.width,
    most,
    PATIENCE,
  );
  if (hung === null) return null;
  const rows = hung.reduce((deepest, { row }) => Math.max(deepest, row + 1), 0);
  return {
    named: all.map((thing, k) => ({
      things: [thing],
      slot: hung[k]?.anchor ?? places[k]!,
      ...(k < things.length ? { hung: hung[k]! } : { key: keys.get(thing)! }),
    })),
    legend: letters.map(([thing, key]) => ({ key, thing })),
    rows,
    depth: OUT.rows + (lettered.length > 0 ? LETTER_HEIGHT : 0) + rows * rowOf(board),
  };
}

/** Places tried before another row is added. */
const PATIENCE = 120;

/** A, B … Z, AA … */
const letterOf = (k: number): string =>
  (k < 26 ? '' : letterOf(Math.floor(k / 26) - 1)) + String.fromCodePoint(65 + (k % 26));

const inOrder = (things: readonly Thing[]): Thing[] => things.toSorted((a, b) => a.prefer - b.prefer);

/** Everything by number, neighbours together where there is no room for each: this always succeeds. */
function inNumbers(things: readonly Thing[], board: Board): Labels {
  const order = inOrder(things);
  let groups = order.map((_, k): readonly [number, number] => [k, k]);
  const keyOf = ([a, b]: readonly [number, number]): string => (a === b ? String(a + 1) : `${a + 1}–${b + 1}`);
  const middle = ([a, b]: readonly [number, number]): number => (order[a]!.prefer + order[b]!.prefer) / 2;
  for (;;) {
    const places = slots(
      groups.map((group) => ({
        at: middle(group),
        width: boxRoom(keyOf(group), group[0] === group[1] && order[group[0]]!.mark !== undefined),
      })),
      EDGE,
      board.input.width - EDGE,
    );
    if (places !== null || groups.length === 1) {
      return {
        named: groups.map((group, k) => ({
          things: order.slice(group[0], group[1] + 1),
          slot: places?.[k] ?? board.input.width / 2,
          key: keyOf(group),
        })),
        legend: order.map((thing, k) => ({ key: String(k + 1), thing })),
        rows: 0,
        depth: OUT.keys + KEY_HEIGHT,
      };
    }
    const gaps = groups.slice(1).map((group, k) => middle(group) - middle(groups[k]!));
    const least = gaps.indexOf(Math.min(...gaps));
    groups = groups.flatMap((group, k) =>
      k === least ? [[group[0], groups[k + 1]![1]] as const] : k === least + 1 ? [] : [group],
    );
  }
}

/** The first way that is easy to read, else the one that takes the least height. */
export function labelsOf(things: readonly Thing[], board: Board): Labels {
  const items = things.filter(({ mark }) => mark === undefined);
  const points = things.filter(({ mark }) => mark !== undefined);
  const words = inWords(things, [], board, MOST_ROWS);
  if (words !== null && words.rows <= EASY_ROWS) return words;
  const mixed = points.length === 0 ? null : inWords(items, points, board, MOST_ROWS);
  const ways = [words, mixed, inNumbers(things, board)].filter((way) => way !== null);
  const heights = ways.map((way) => way.depth + legendHeight(way.legend, board));
  return ways[heights.indexOf(Math.min(...heights))]!;
}
