/** Pieces of the papers' drawings: one unit is one millimetre on paper, texts have sizes in points. */
import { type Html, html } from './html.ts';
import { type UnitSystem, lengthIn, metres } from '../units.ts';
import { POINT } from './textBox.ts';

/** A coordinate on paper, to a hundredth of a millimetre. */
export const mm = (value: number): number => Math.round(value * 100) / 100 + 0;

export interface TextLook {
  readonly points: number;
  readonly bold?: boolean;
  readonly anchor?: 'middle' | 'end';
  /** White round the letters, for what is written over lines. */
  readonly halo?: boolean;
  /** More attributes, escaped by whoever made them. */
  readonly data?: Html;
}

/** A line of text; `y` is its foot. Whatever it says is escaped. */
export const svgText = (
  x: number,
  y: number,
  content: string,
  { points, bold = false, anchor, halo = false, data = html`` }: TextLook,
): Html =>
  html`<text x="${mm(x)}" y="${mm(y)}" font-size="${Math.round(points * POINT * 1000) / 1000}"${bold ? html` font-weight="bold"` : ''}${anchor === undefined ? '' : html` text-anchor="${anchor}"`}${halo ? html` stroke="#fff" stroke-width="0.9" stroke-linejoin="round" paint-order="stroke"` : ''}${data}>${content}</text>`;

/** A path, millimetres, by its commands and its look. */
export const svgPath = (d: string, look: string): Html => html`<path d="${d}" ${{ html: look }}/>`;

/** A drawing of so many millimetres, with what it shows in words. */
export const svgFrame = (width: number, height: number, label: string, content: readonly Html[], kind: string): Html =>
  html`<svg class="${kind}" role="img" aria-label="${label}" xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}">${content}</svg>`;

/** Nearer than this to the point before it, a point of a line shows nothing, millimetres. */
const FINE = 0.05;

/** Commands of an open line through points, less those that would not show: a course may have a hundred thousand. */
export function through(points: readonly (readonly [number, number])[]): string {
  let [atX, atY] = [Infinity, Infinity];
  return points
    .filter(([x, y], k) => {
      if (k < points.length - 1 && Math.abs(x - atX) < FINE && Math.abs(y - atY) < FINE) return false;
      [atX, atY] = [x, y];
      return true;
    })
    .map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`)
    .join('');
}

/** A scale bar of a round length of at most so many metres: its metres and what it says; feet under 30 yards. */
export function barOf(most: number, units: UnitSystem): { readonly length: number; readonly says: string } {
  const unit = units === 'metric' ? 'm' : niceLength(lengthIn(most, 'yd')) < 30 ? 'ft' : 'yd';
  const count = niceLength(lengthIn(most, unit));
  return { length: metres(count, unit), says: `${count} ${unit}` };
}

/** Lengths of scale bars in their unit: the longest of 1, 2 or 5 times a power of ten that is at most so long. */
export function niceLength(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  return [5, 2, 1].map((digit) => digit * power).find((length) => length <= most * (1 + 1e-9))!;
}
