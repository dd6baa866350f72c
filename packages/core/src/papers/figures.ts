/**
 * Distances as the crew reads them off the wheel: how far before or past the chalk mark, with the margin. A margin is
 * rounded up, so that it never says less than was computed.
 */
import type { Item } from '../layout/layout.ts';
import { type UnitSystem, lengthIn, metres } from '../units.ts';
import type { SheetText } from '../text/sheetText.ts';
import { toMicro } from '../export/rounding.ts';
import { NO_MARGIN, type WheelUnit, marginText, wheelDigits, wheelUnit } from '../export/wheeled.ts';
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
  unit: WheelUnit,
  { captain: { drawing } }: SheetText,
): string => {
  const [a, b] = [wheelDigits(Math.abs(from), unit), wheelDigits(Math.abs(to), unit)];
  if (a === '0' && b === '0') return drawing.at;
  if (from < 0 && to > 0 && a !== '0' && b !== '0')
    return drawing.between(drawing.before(`${a} ${unit}`), drawing.past(`${b} ${unit}`));
  const range = `${a === b ? a : drawing.between(a, b)} ${unit}`;
  return from < 0 && a !== '0' ? drawing.before(range) : drawing.past(range);
};

/** One unit for both ends: that of the nearer. */
const unitOf = ([from, to]: readonly [number, number], units: UnitSystem): WheelUnit =>
  wheelUnit(Math.min(Math.abs(from), Math.abs(to)), units);

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
      text: `${rangeText(along, unitOf(along, units), text)} ${text.captain.drawing.along}`,
      data: html` data-item="${kind}" data-along="${exact(along)}"`,
      folds: true,
    };
  }
  const unit = unitOf(wheel, units);
  const margin = wheelMargin > NO_MARGIN ? ` ${marginText(wheelMargin, unit)}` : '';
  return {
    text: `${rangeText(wheel, unit, text)}${margin}`,
    data: html` data-item="${kind}" data-wheel="${exact(wheel)}" data-margin="${toMicro(wheelMargin)}"`,
    folds: false,
  };
}

/** Where a point stands, along the course from the chalk mark. */
export function pointFigure(along: number, units: UnitSystem, text: SheetText): string {
  const unit = wheelUnit(along, units);
  const whole = metres(Math.round(lengthIn(along, unit)), unit);
  return `≈ ${rangeText([whole, whole], unit, text)}`;
}
