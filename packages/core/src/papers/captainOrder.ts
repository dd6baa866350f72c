/** The order of the day on the captain's sheet, and the picture of how a station is left, for the cards. Common practice, no source. */
import type { SheetText } from '../text/sheetText.ts';
import { type Html, html } from './html.ts';
import { svgFrame, svgPath, svgText } from './svg.ts';

const list = (lines: readonly string[]): Html => html`<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>`;

/** Set up, while open, after release, side by side. */
export const orderBlock = (text: SheetText): Html => {
  const { order } = text.captain;
  return html`<div class="block order">
<div><h3>${order.setUpTitle}</h3>${list(order.setUp)}</div>
<div><h3>${order.openTitle}</h3>${list(order.open)}</div>
<div><h3>${order.afterTitle}</h3>${list(order.after)}</div>
</div>`;
};

const INK = 'fill="#fff" stroke="#000" stroke-width="0.4" stroke-linejoin="round"';

/** A tied bag: a pear with a knot. */
const bag = (x: number, y: number): Html =>
  svgPath(`M${x} ${y}c-3 0 -3.2 -3.4 -0.6 -5.2l-0.5 -1.2h2.2l-0.5 1.2c2.6 1.8 2.4 5.2 -0.6 5.2z`, INK);
const crate = (x: number, y: number): Html => svgPath(`M${x} ${y}v-4h5v4zm0 -1.4h5`, INK);
const jug = (x: number, y: number): Html => svgPath(`M${x} ${y}v-3.4l1 -1.2h1l1 1.2v3.4z`, INK);
const folded = (x: number, y: number): Html => svgPath(`M${x} ${y}l1.6 -6h1l-1.6 6z`, INK);

/** Two piles and the tables beside them, behind the kerb, so many millimetres wide. */
export function pilesPicture(text: SheetText, width: number): Html {
  const { order } = text.captain;
  const ground = 9;
  const [a, b, c, d] = [0.1, 0.37, 0.63, 0.88].map((share) => share * width) as [number, number, number, number];
  const look = { points: 9, anchor: 'middle' } as const;
  const content = [
    bag(a - 3, ground),
    bag(a + 2.2, ground),
    bag(a - 0.4, ground - 3.4),
    crate(b - 5, ground),
    crate(b + 0.4, ground),
    crate(b - 2.4, ground - 4),
    ...[-6, -2.4, 1.2].map((at) => jug(c + at, ground)),
    ...[-2, 0.2, 2.4].map((at) => folded(d + at, ground)),
    svgText(0.5, 12.4, order.bags, { points: 9 }),
    svgText(b, 15.8, order.leftovers, look),
    svgText(c + 4, 12.4, order.jugs, look),
    svgText(d + 1, 15.8, order.folded, look),
    svgPath(`M0 16.8H${width}`, 'stroke="#000" stroke-width="0.9"'),
  ];
  return svgFrame(width, 17.3, order.afterTitle, content, 'piles');
}
