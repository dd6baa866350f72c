/** Passes of points as a table for people. */
import type { SnapDocument, SnappedPoint } from '../../src/export/documents.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import { CAUTION } from '../caution.ts';
import { table } from '../printing.ts';

/** Probability in whole percent; a certainty that is none is not printed as 100. */
export const percent = (share: number): string => (share >= 0.995 ? '>99 %' : `${Math.round(share * 100)} %`);

export function snapText({ points }: SnapDocument, radius: number, units: UnitSystem): string {
  const rows = points.flatMap((point) =>
    point.passes.length === 0 ? [away(point, radius, units)] : passRows(point, units),
  );
  return `${table(['Point', 'Pass', ' Course distance', ' From the line', 'Side', ' Sure', ' Runs towards', 'Note'], rows)}\n\n${CAUTION}\n`;
}

const label = ({ at, name }: SnappedPoint): string => name ?? `${at[0].toFixed(6)},${at[1].toFixed(6)}`;

const passRows = (point: SnappedPoint, units: UnitSystem): string[][] =>
  point.passes.map((pass, k) => [
    k === 0 ? label(point) : '',
    `${k + 1} of ${point.passes.length}`,
    formatMeasure(pass.measure, units),
    formatLength(Math.abs(pass.offset), units, 'table', 1),
    pass.side,
    percent(pass.confidence),
    `${pass.azimuthDeg.toFixed(0)}°`,
    pass.end === undefined ? '' : `beyond the ${pass.end}`,
  ]);

const away = (point: SnappedPoint, radius: number, units: UnitSystem): string[] => [
  label(point),
  'none',
  formatMeasure(point.nearest.measure, units),
  formatLength(
    point.nearest.distance,
    units,
    point.nearest.distance < 1000 ? 'wheel' : 'long',
    point.nearest.distance < 1000 ? 0 : 2,
  ),
  '–',
  '–',
  '–',
  `not within ${formatLength(radius, units, 'wheel')}: the nearest place`,
];
