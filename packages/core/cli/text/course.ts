/** The facts of a course as a table for people. */
import type { CourseDocument } from '../../src/export/documents.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { CAUTION } from '../caution.ts';
import { findingsText, oneLine, table } from '../printing.ts';

const other = (units: UnitSystem): UnitSystem => (units === 'metric' ? 'imperial' : 'metric');

const both = (metres: number, units: UnitSystem): string =>
  `${formatMeasure(metres, units)} (${formatMeasure(metres, other(units))})`;

export function courseText(course: CourseDocument, units: UnitSystem): string {
  const { points, duplicates, length, raw, bounds, gaps, ascent, factors, marks } = course;
  const [west, south, east, north] = bounds.map((degrees) => degrees.toFixed(5));
  const rows = [
    ['Course distance', both(length, units)],
    ['Measured on the line', both(raw, units)],
    [
      'Calibration',
      factors.every(({ factor }) => factor === 1)
        ? 'none'
        : factors
            .map(
              ({ from, to, factor }) =>
                `${factor.toFixed(5)} from ${formatMeasure(from, units)} to ${formatMeasure(to, units)}`,
            )
            .join('; '),
    ],
    [
      'Marks',
      marks.length === 0
        ? 'none'
        : marks
            .map(({ name, measure }) => `${name === null ? '' : `${name} at `}${formatMeasure(measure, units)}`)
            .join('; '),
    ],
    ['Points', `${points}${duplicates === 0 ? '' : ` (${duplicates} repeated and dropped)`}`],
    [
      'Gaps',
      gaps.length === 0
        ? 'none'
        : gaps.map((gap) => `${formatLength(gap.length, units, 'wheel')} after point ${gap.after + 1}`).join('; '),
    ],
    [
      'Ascent, as recorded',
      ascent === null
        ? 'unknown: not every point has an elevation'
        : formatLength(ascent, units, units === 'metric' ? 'wheel' : 'table', 0),
    ],
    ['West to east', `${west} to ${east}`],
    ['South to north', `${south} to ${north}`],
  ];
  return `${oneLine(course.name)}\n${table(['', ''], rows).trimStart()}\n\n${findingsText(course.findings)}\n${CAUTION}\n`;
}
