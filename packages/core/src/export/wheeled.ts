/** Wheel distances with their margin as people read them; a margin is rounded up, so that it never says less than was computed. */
import { formatLength } from '../format.ts';
import type { Wheeled } from '../layout/pegs.ts';
import type { UnitSystem } from '../units.ts';

/** What a digit of the last decimal printed stands for, metres. */
const STEP: Readonly<Record<UnitSystem, number>> = { metric: 0.1, imperial: 0.1 * 0.9144 };

/** A straight road's margin is the rounding of its sums, metres: this much and less is none. */
export const NO_MARGIN = 1e-3;

/** "± 0.3 m", rounded up to the decimal shown. */
export const marginText = (margin: number, units: UnitSystem): string =>
  `± ${formatLength(Math.ceil(margin / STEP[units] - 1e-6) * STEP[units], units, 'wheel')}`;

/** "12.4 ± 0.3 m", both to a decimetre or a tenth of a yard, the margin rounded up; a dash where no wheel can be run. */
export function wheeledText({ length, margin }: Wheeled, units: UnitSystem): string {
  if (length === null) return '–';
  const shown = formatLength(Math.abs(length), units, 'wheel');
  if (margin === null) return shown;
  if (margin <= NO_MARGIN) return length < 0 && !shown.startsWith('0 ') ? `−${shown}` : shown;
  const value = shown.slice(0, shown.lastIndexOf(' '));
  return `${length < 0 && value !== '0' ? '−' : ''}${value} ${marginText(margin, units)}`;
}
