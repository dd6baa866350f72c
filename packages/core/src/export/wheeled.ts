/**
 * Wheel distances with their margin as people read them; a margin is rounded up, so that it never says less than was
 * computed. In imperial units what is under 30 yards is in feet.
 */
import type { Wheeled } from '../layout/pegs.ts';
import { type UnitSystem, lengthIn, metres } from '../units.ts';

/** The unit in which a wheel is read. */
export type WheelUnit = 'm' | 'ft' | 'yd';

/** Where yards begin, less what a conversion may lose. */
const YARDS_FROM = metres(30, 'yd') - 1e-9;

/** The unit for lengths of which the shortest is so many metres. */
export const wheelUnit = (shortest: number, units: UnitSystem): WheelUnit =>
  units === 'metric' ? 'm' : Math.abs(shortest) < YARDS_FROM ? 'ft' : 'yd';

/** A straight road's margin is the rounding of its sums, metres: this much and less is none. */
export const NO_MARGIN = 1e-3;

const digits = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)) + 0);

/** Metres as a wheel shows them, without the unit: to a tenth of it, or to so many decimals; no zeros at the end, never "-0". */
export const wheelDigits = (length: number, unit: WheelUnit, decimals: number = 1): string =>
  digits(lengthIn(length, unit), decimals);

/** "12.4 m", "100 yd", "8 ft". */
export const wheelText = (length: number, units: UnitSystem, decimals?: number): string => {
  const unit = wheelUnit(length, units);
  return `${wheelDigits(length, unit, decimals)} ${unit}`;
};

/** "± 0.3 m", rounded up to the decimal shown. */
export const marginText = (margin: number, unit: WheelUnit): string =>
  `± ${digits(Math.ceil(lengthIn(margin, unit) * 10 - 1e-6) / 10, 1)} ${unit}`;

/** "12.4 ± 0.3 m", both to a tenth of the unit, the margin rounded up; a dash where no wheel can be run. */
export function wheeledText({ length, margin }: Wheeled, units: UnitSystem): string {
  if (length === null) return '–';
  const unit = wheelUnit(length, units);
  const value = wheelDigits(Math.abs(length), unit);
  const shown = `${length < 0 && value !== '0' && margin !== null ? '−' : ''}${value}`;
  return margin === null || margin <= NO_MARGIN ? `${shown} ${unit}` : `${shown} ${marginText(margin, unit)}`;
}
