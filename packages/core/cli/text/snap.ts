/** Passes of points as a table for people. */
import type { SnapDocument, SnappedPoint } from '../../src/export/documents.ts';
import { formatLength, formatMeasure } from '../../src/format.ts';
import type { UnitSystem } from '../../src/units.ts';
import type { Screen } from '../screen.ts';
import { table } from '../tables.ts';
import { NONE, page } from './blocks.ts';
import { sideText } from './sides.ts';

const HEAD = ['Point', 'Pass', ' Course distance', ' From the line', 'Side', ' Direction', 'Note'];

export function snapText({ points }: SnapDocument, radius: number, units: UnitSystem, screen: Screen): string {
  const rows = points.flatMap((point) =>
    point.passes.length === 0 ? [away(point, radius, units)] : passRows(point, units),
  );
  const noted = rows.some((row) => row.at(-1) !== '');
  return page([table(noted ? HEAD : HEAD.slice(0, -1), rows, screen)], screen);
}

const label = ({ at, name }: SnappedPoint): string => name ?? `${at[0].toFixed(6)},${at[1].toFixed(6)}`;

const passRows = (point: SnappedPoint, units: UnitSystem): string[][] =>
  point.passes.map((pass, k) => [
    k === 0 ? label(point) : '',
    `${k + 1} of ${point.passes.length}`,
    formatMeasure(pass.measure, units),
    formatLength(Math.abs(pass.offset), units, 'table', 1),
    sideText(pass.side, pass.confidence),
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
  NONE,
  NONE,
  `not within ${formatLength(radius, units, 'wheel')}: the nearest place`,
];
