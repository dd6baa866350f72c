/** Pieces of the role cards' drawings, lines only: people, tables, cups, jugs, bags. Millimetres; `y` is the foot. */
import { type Html } from './html.ts';
import { mm, svgPath } from './svg.ts';

export const INK = 'fill="#fff" stroke="#000" stroke-width="0.45" stroke-linejoin="round" stroke-linecap="round"';
const LIMB = 'fill="none" stroke="#000" stroke-width="0.9" stroke-linejoin="round" stroke-linecap="round"';
const SOLID = 'fill="#000" stroke="#000" stroke-width="0.3"';
/** What is in a cup or a jug. */
const DRINK = 'fill="#bbb" stroke="none"';
const THIN = 'fill="none" stroke="#000" stroke-width="0.45" stroke-linecap="round" stroke-linejoin="round"';

/** A point from the shoulder: right and down. */
type Reach = readonly [x: number, y: number];

const disc = (x: number, y: number, r: number, look: string): Html =>
  svgPath(`M${mm(x - r)} ${mm(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`, look);

/** A person of 13 mm, upright, whose hands are where they are said to be from the shoulders. */
export const person = (x: number, y: number, hands: readonly Reach[]): Html[] => [
  svgPath(
    `M${mm(x)} ${mm(y - 9.6)}V${mm(y - 5)}M${mm(x - 1.5)} ${mm(y)}L${mm(x)} ${mm(y - 5)}L${mm(x + 1.5)} ${mm(y)}${hands.map(([right, down]) => `M${mm(x)} ${mm(y - 9)}l${right} ${down}`).join('')}`,
    LIMB,
  ),
  disc(x, y - 11.4, 1.6, INK),
];

/** A runner who comes from the left. */
export const runner = (x: number, y: number): Html[] => [
  svgPath(
    `M${mm(x + 0.8)} ${mm(y - 9.4)}L${mm(x)} ${mm(y - 5)}l2.4 1.6l-0.8 3.2M${mm(x)} ${mm(y - 5)}l-1.6 2.4l-3 0.4M${mm(x + 0.7)} ${mm(y - 8.8)}l2.2 1.8l2.2 -1.6M${mm(x + 0.7)} ${mm(y - 8.8)}l-2.6 1.2l-0.8 2`,
    LIMB,
  ),
  disc(x + 1.4, y - 11.2, 1.6, INK),
];

/** A folding table seen from the side, its top so wide and `y - high`. */
export const tableOf = (x: number, y: number, width: number, high: number = 7): Html =>
  svgPath(
    `M${mm(x)} ${mm(y - high)}h${width}v0.9h${-width}zM${mm(x + 1.2)} ${mm(y - high + 0.9)}V${mm(y)}M${mm(x + width - 1.2)} ${mm(y - high + 0.9)}V${mm(y)}`,
    INK,
  );

/** A cup `high` mm high, filled to a share, 0 to 1. */
export const cupOf = (x: number, y: number, high: number, share: number = 0.5): readonly Html[] => {
  const [foot, rim] = [high * 0.27, high * 0.38];
  const half = foot + (rim - foot) * share;
  return [
    svgPath(
      `M${mm(x - foot)} ${mm(y)}h${mm(2 * foot)}l${mm(half - foot)} ${mm(-high * share)}h${mm(-2 * half)}z`,
      DRINK,
    ),
    svgPath(
      `M${mm(x - rim)} ${mm(y - high)}L${mm(x - foot)} ${mm(y)}h${mm(2 * foot)}L${mm(x + rim)} ${mm(y - high)}zM${mm(x - half)} ${mm(y - high * share)}h${mm(2 * half)}`,
      THIN,
    ),
  ];
};

/** A jug so many mm high; a sealed one has a cap. */
export const jugOf = (x: number, y: number, high: number, sealed: boolean): Html =>
  svgPath(jugPath(x, y, high, sealed), INK);

/** A jug tipped to the left about the middle of its foot. */
export const pouring = (x: number, y: number, high: number): Html =>
  svgPath(
    `${jugPath(x, y, high, false)}m${mm(high * 0.6)} ${mm(-high * 0.14)}h${mm(high * 0.2)}v${mm(-high * 0.4)}h${mm(-high * 0.2)}`,
    `${INK} transform="rotate(-105 ${mm(x + high * 0.3)} ${mm(y - high * 0.45)})"`,
  );

const jugPath = (x: number, y: number, high: number, sealed: boolean): string =>
  `M${mm(x)} ${mm(y)}v${mm(-high * 0.66)}l${mm(high * 0.2)} ${mm(-high * 0.22)}h${mm(high * 0.2)}l${mm(high * 0.2)} ${mm(high * 0.22)}v${mm(high * 0.66)}z${sealed ? `m${mm(high * 0.18)} ${mm(-high * 0.88)}v${mm(-high * 0.12)}h${mm(high * 0.24)}v${mm(high * 0.12)}z` : ''}`;

/** A tied bag. */
export const bagOf = (x: number, y: number): Html =>
  svgPath(
    `M${mm(x)} ${mm(y)}c-4.4 0 -4.7 -5 -0.9 -7.6l-0.9 -1.8h3.6l-0.9 1.8c3.8 2.6 3.5 7.6 -0.9 7.6zM${mm(x - 1)} ${mm(y - 7.6)}h2`,
    INK,
  );

/** A packet of gel, upright, its tear edge on top. */
export const packet = (x: number, y: number, high: number): Html =>
  svgPath(
    `M${mm(x - high * 0.22)} ${mm(y)}c${mm(-high * 0.12)} ${mm(-high * 0.4)} ${mm(high * 0.02)} ${mm(-high * 0.6)} ${mm(high * 0.06)} ${mm(-high)}h${mm(high * 0.32)}c${mm(high * 0.04)} ${mm(high * 0.4)} ${mm(high * 0.18)} ${mm(high * 0.6)} ${mm(high * 0.06)} ${mm(high)}zM${mm(x - high * 0.18)} ${mm(y - high * 0.84)}h${mm(high * 0.36)}`,
    INK,
  );

/** A cup that lies on the ground. */
export const fallenCup = (x: number, y: number): Html => svgPath(`M${mm(x)} ${mm(y)}l2.8 -0.4v-1.4l-2.8 -0.4z`, INK);

export const line = (d: string): Html => svgPath(d, THIN);
export const thick = (d: string): Html => svgPath(d, LIMB);
export const shape = (d: string): Html => svgPath(d, INK);
/** A person from above: black is the reader. */
export const fromAbove = (x: number, y: number, reader: boolean): Html => disc(x, y, 1.25, reader ? SOLID : INK);
