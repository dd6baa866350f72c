/** Findings in words that text and paper share: where, measured, limit. */
import type { Finding } from '../finding.ts';
import { formatLength, formatMeasure } from '../format.ts';
import { wordsOf } from '../text/wordsOf.ts';
import type { UnitSystem } from '../units.ts';

/** Codes whose figures are shares: grades and probabilities. */
const SHARES: ReadonlySet<string> = new Set(['grade-at-tables', 'descent-with-wheels', 'side-unclear']);

function quantity(value: number, { unit, code }: Pick<Finding, 'unit' | 'code'>, units: UnitSystem): string {
  if (unit === undefined && SHARES.has(code)) return `${Number((value * 100).toFixed(1))} %`;
  if (unit === 'm') return Math.abs(value) >= 1000 ? formatMeasure(value, units) : formatLength(value, units, 'wheel');
  return `${Number(value.toFixed(3))}${unit === undefined ? '' : ` ${unit}`}`;
}

/** What was measured; empty where a finding measures nothing. */
export const measuredText = (finding: Finding, units: UnitSystem): string =>
  finding.measured === undefined ? '' : quantity(finding.measured, finding, units);

/** The limit, or both; empty where there is none. */
export function limitText(finding: Finding, units: UnitSystem, language: string = 'en'): string {
  const { limit } = finding;
  if (limit === undefined) return '';
  if (typeof limit === 'number') return quantity(limit, finding, units);
  const [low, high] = limit.map((one) => quantity(one, finding, units)) as [string, string];
  // "82.3 to 100.6 m": the unit once, where there is one and it is the same.
  const space = high.lastIndexOf(' ');
  const tail = space === -1 ? '' : high.slice(space);
  return `${tail !== '' && low.endsWith(tail) ? low.slice(0, -tail.length) : low} ${wordsOf(language).to} ${high}`;
}

/** Station, else race, else course, else nothing. */
export const subjectOf = ({ where }: Finding): string => where.station ?? where.race ?? where.course ?? '';

/** Who waived it and why. */
export const waiverText = ({ by, reason, date }: NonNullable<Finding['waived']>): string =>
  `${by}${date === undefined ? '' : `, ${date}`}: ${reason}`;
