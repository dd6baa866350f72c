/** The facts of a course as a table for people. */
import type { CourseDocument } from '../../src/export/documents.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import { type View, findingsText } from '../findings.ts';
import type { UnitSystem } from '../../src/units.ts';
import { table } from '../tables.ts';
import { heading, page } from './blocks.ts';

const other = (units: UnitSystem): UnitSystem => (units === 'metric' ? 'imperial' : 'metric');

const both = (metres: number, units: UnitSystem): string =>
  `${formatMeasure(metres, units)} (${formatMeasure(metres, other(units))})`;

export function courseText(course: CourseDocument, view: View): string {
  const { screen } = view;
  const facts = table(['', ''], rowsOf(course, view), screen);
  return page([`${heading([course.name], screen)}\n${facts}`, findingsText(course.findings, view)], screen);
}

function rowsOf(course: CourseDocument, { units }: View): string[][] {
  const { points, duplicates, length, raw, bounds, gaps, ascent, factors, marks } = course;
  const [west, south, east, north] = bounds.map((degrees) => degrees.toFixed(5));
  const straight = factors.every(({ factor }) => factor === 1);
  const stretch = ({ from, to, factor }: (typeof factors)[number]): string =>
    `${factor.toFixed(5)} from ${formatMeasure(from, units)} to ${formatMeasure(to, units)}`;
  const mark = ({ name, measure }: (typeof marks)[number]): string =>
    `${name === null ? '' : `${name} at `}${formatMeasure(measure, units)}`;
  const gap = (one: (typeof gaps)[number]): string =>
    `${formatLength(one.length, units, 'wheel')} after point ${one.after + 1}`;
  return [
    ['Course distance', both(length, units)],
    ['Measured on the line', both(raw, units)],
    ['Calibration', straight ? 'none' : factors.map(stretch).join('; ')],
    ['Marks', listed(marks.map(mark))],
    ['Points', `${points.toLocaleString('en')}${duplicates === 0 ? '' : ` (${duplicates} repeated and dropped)`}`],
    ['Gaps', listed(gaps.map(gap))],
    ['Ascent, as recorded', ascentText(ascent, units)],
    ['West to east', `${west} to ${east}`],
    ['South to north', `${south} to ${north}`],
  ];
}

const listed = (parts: readonly string[]): string => (parts.length === 0 ? 'none' : parts.join('; '));

function ascentText(ascent: number | null, units: UnitSystem): string {
  if (ascent === null) return 'unknown: not every point has an elevation';
  return formatLength(ascent, units, units === 'metric' ? 'wheel' : 'table', 0);
}
