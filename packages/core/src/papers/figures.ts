/**
 * Distances as the crew reads them off the wheel: how far before or past the chalk mark, with the margin, to the
 * decimal that `formatLength` prints. A margin is rounded up, so that it never says less than was reckoned.
 */
import type { Item } from '../layout/layout.ts';
import { formatLength } from '../format.ts';
import type { UnitSystem } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { toMicro } from '../export/rounding.ts';
import { NO_MARGIN, marginText } from '../export/wheeled.ts';
import { type Html, html } from './html.ts';

export interface Figure {
  readonly text: string;
  /** `data-` attributes with the exact metres, for tests and tools. */
  readonly data: Html;
  /** No wheel distance: what is printed runs along the course. */
  readonly folds: boolean;
}

const rangeText = (
  [from, to]: readonly [number, number],
  units: UnitSystem,
  { captain: { drawing } }: SheetText,
): string => {
  const [a, b] = [formatLength(Math.abs(from), units, 'wheel'), formatLength(Math.abs(to), units, 'wheel')];
  const zero = formatLength(0, units, 'wheel');
  if (a === zero && b === zero) return drawing.at;
  if (from < 0 && to > 0 && a !== zero && b !== zero) return drawing.between(drawing.before(a), drawing.past(b));
  const range = a === b ? a : drawing.between(a.slice(0, a.lastIndexOf(' ')), b);
  return from < 0 && a !== zero ? drawing.before(range) : drawing.past(range);
};

/** Where an item stands from the chalk mark: by wheel, else along the course, which is then said. */
export function figureOf(
  item: Pick<Item, 'kind' | 'wheel' | 'along' | 'wheelMargin'>,
  units: UnitSystem,
  text: SheetText,
): Figure {
  const { kind, wheel, along, wheelMargin } = item;
  const exact = (pair: readonly [number, number]): string => pair.map(toMicro).join(' ');
  if (wheel === null) {
    return {
      text: `${rangeText(along, units, text)} ${text.captain.drawing.along}`,
      data: html` data-item="${kind}" data-along="${exact(along)}"`,
      folds: true,
    };
  }
  const margin = wheelMargin > NO_MARGIN ? ` ${marginText(wheelMargin, units)}` : '';
  return {
    text: `${rangeText(wheel, units, text)}${margin}`,
    data: html` data-item="${kind}" data-wheel="${exact(wheel)}" data-margin="${toMicro(wheelMargin)}"`,
    folds: false,
  };
}

/** Where a point stands, along the course from the chalk mark. */
export const pointFigure = (along: number, units: UnitSystem, text: SheetText): string =>
  `≈ ${rangeText([Math.round(along), Math.round(along)], units, text)}`;
