/** Findings in words that text and paper share: where, measured, limit. */
import type { Finding } from '../../finding.ts';
import { type UnitSystem, formatLength, formatMeasure } from '../../units.ts';

function quantity(value: number, unit: string | undefined, units: UnitSystem): string {
  if (unit === 'm') return Math.abs(value) >= 1000 ? formatMeasure(value, units) : formatLength(value, units, 'wheel');
  return `${Number(value.toFixed(3))}${unit === undefined ? '' : ` ${unit}`}`;
}

/** What was measured; empty where a finding measures nothing. */
export const measuredText = ({ measured, unit }: Finding, units: UnitSystem): string => (measured === undefined ? '' : quantity(measured, unit, units));

/** The limit, or both; empty where there is none. */
export function limitText({ limit, unit }: Finding, units: UnitSystem): string {
  if (limit === undefined) return '';
  if (typeof limit === 'number') return quantity(limit, unit, units);
  const [low, high] = limit.map((one) => quantity(one, unit, units)) as [string, string];
  // "82.3 to 100.6 m": the unit once, where it is the same.
  const tail = high.slice(high.lastIndexOf(' '));
  return `${low.endsWith(tail) ? low.slice(0, -tail.length) : low} to ${high}`;
}

/** Station, else race, else course, else nothing. */
export const subjectOf = ({ where }: Finding): string => where.station ?? where.race ?? where.course ?? '';

/** Who waived it and why. */
export const waiverText = ({ by, reason, date }: NonNullable<Finding['waived']>): string => `${by}${date === undefined ? '' : `, ${date}`}: ${reason}`;
