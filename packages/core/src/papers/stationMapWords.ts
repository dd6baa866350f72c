/** Words of a station's map: beside their marks, along roads, and a corner for the north arrow; none lies on another. */
import { shortened } from './frame.ts';
import { type Html, html } from './html.ts';
import { svgText } from './svg.ts';
import { type Box, POINT, overlap, textWidth } from './textBox.ts';

/** A place on paper. */
export type Place = readonly [x: number, y: number];

/** A mark on the map, and the word beside it; "" where it has none. */
export interface Sign {
  readonly at: Place;
  readonly word: string;
  readonly mark: Html;
}

export const SIZE = 9;

/** Words beside their marks, each where it lies on no mark and no other word; one that finds no room is left out: the mark stands. */
export function wordsBeside(
  signs: readonly Sign[],
  lines: readonly Box[],
  corner: Corner,
  width: number,
  height: number,
): { readonly words: Html[]; readonly taken: Box[] } {
  const taken: Box[] = [
    ...lines,
    barBox(height),
    corner.box,
    ...signs.map(({ at: [x, y] }) => ({ x: x - 1.5, y: y - 1.5, width: 3, height: 3 })),
  ];
  const words = signs.flatMap(({ at: [x, y], word }) => {
    const size = { width: textWidth(word, SIZE), height: SIZE * POINT };
    const box = BESIDE.map(([right, down]) => ({
      x: x + (right > 0 ? 2.2 : right < 0 ? -2.2 - size.width : -size.width / 2),
      y: y - size.height / 2 + down * (2 + size.height / 2),
      ...size,
    })).find((one) => within(one, width, height) && !taken.some((other) => overlap(apart(one), other)));
    if (word === '' || box === undefined) return [];
    taken.push(box);
    return [svgText(box.x, box.y + size.height * 0.8, word, { points: SIZE, halo: true })];
  });
  return { words, taken };
}

/** A word with room beside it, so that two in a row do not read as one. */
const apart = (box: Box): Box => ({ ...box, x: box.x - 0.5, width: box.width + 1 });

const within = ({ x, y, width: wide, height: high }: Box, width: number, height: number): boolean =>
  x > 0.6 && y > 0.6 && x + wide < width - 0.6 && y + high < height - 0.6;

/** A line with a name, as places on paper. */
export interface Named {
  readonly name: string;
  readonly places: readonly Place[];
}

/** Each named road once, upright, beside its line where nothing else stands; roads without room go without. */
export function streetNames(
  streets: readonly Named[],
  { width, height }: { readonly width: number; readonly height: number },
  taken: Box[],
): Html[] {
  const named = new Map<string, Place[]>();
  for (const { name, places } of streets) named.set(name, [...(named.get(name) ?? []), ...stepsAlong(places)]);
  return [...named].flatMap(([name, places]) => {
    const word = shortened(name, 20);
    // A line's box is higher than its letters.
    const size = { width: textWidth(word, STREET), height: STREET * POINT * 1.25 };
    const box = places
      .flatMap(([x, y]) => [
        { x: x - size.width / 2, y: y - size.height - 0.7, ...size },
        { x: x - size.width / 2, y: y + 0.7, ...size },
        { x: x + 1, y: y - size.height / 2, ...size },
        { x: x - size.width - 1, y: y - size.height / 2, ...size },
      ])
      .find((one) => within(one, width, height) && !taken.some((other) => overlap(apart(one), other)));
    if (box === undefined) return [];
    taken.push(box);
    return [svgText(box.x, box.y + size.height * 0.76, word, { points: STREET, halo: true, data: html` fill="#333"` })];
  });
}

/** Points of a street's name. */
export const STREET = 8;

/** Places every few millimetres along a line on paper. */
export const stepsAlong = (places: readonly Place[], step: number = 3): Place[] =>
  places.slice(1).flatMap(([x, y], k) => {
    const [x0, y0] = places[k]!;
    const steps = Math.min(400, Math.max(1, Math.ceil(Math.hypot(x - x0, y - y0) / step)));
    return Array.from({ length: steps }, (_, i): Place => [x0 + ((x - x0) * i) / steps, y0 + ((y - y0) * i) / steps]);
  });

/** Where the north arrow stands. */
export interface Corner {
  /** Its middle. */
  readonly x: number;
  /** Its top. */
  readonly y: number;
  readonly box: Box;
}

const barBox = (height: number): Box => ({ x: 0, y: height - 10, width: 30, height: 10 });

/** The corner, or the place on the right or upper edge, on which fewest of a course's pieces lie. */
export function cornerOf(lines: readonly Box[], width: number, height: number): Corner {
  const places = [
    [width - 9, 0],
    [0, 0],
    [width - 9, height - 13],
    [width - 9, (height - 13) / 2],
    [0, (height - 23) / 2],
    [(width - 9) / 2, 0],
    [(width + 30) / 2, height - 13],
  ] as const;
  const all = places.map(([x, y]): Corner => {
    const box = { x, y, width: 9, height: 13 };
    return { x: x + 4.5, y: y + 1, box };
  });
  const count = ({ box }: Corner): number => lines.filter((line) => overlap(line, box)).length;
  return all.reduce((best, one) => (count(one) < count(best) ? one : best));
}

const BESIDE: readonly (readonly [right: number, down: number])[] = [
  [1, 0],
  [-1, 0],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
  [0, -1.4],
  [0, 1.4],
  [1, -2.4],
  [1, 2.4],
  [-1, -2.4],
  [-1, 2.4],
];
