/** Supplies set down across the course from the tables: the crew would carry them through the runners. */
import type { Layout } from '../layout/layout.ts';
import { type Check, COMMON_PRACTICE, type Found, atStation, check, metres } from './check.ts';
import { type StationPoint, passOfPoint, pointNamed, pointsOfKind } from './points.ts';

export const dropSide: Check = check(
  {
    code: 'drop-side',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: (layout) => (pointsOfKind(layout, 'drop').length > 0 ? null : 'no-drop'),
  },
  (layout) => pointsOfKind(layout, 'drop').flatMap((drop) => across(drop, layout)),
);

function across(drop: StationPoint, layout: Layout): Found[] {
  const { station, point, key } = drop;
  const lead = station.directions.find((direction) => direction.lead);
  if (lead === undefined) return [];
  const name = pointNamed(drop);
  const where = { ...atStation(station, key), course: lead.course, at: point.at };
  const cannotTell = (why: string): Found[] => [
    {
      message: `${name}: cannot tell whether it lies on the tables' side of the course, for ${why}. Look on the ground.`,
      where,
      severity: 'note',
      cannotTell: true,
    },
  ];
  const pass = passOfPoint(point.at, lead, station, layout);
  if (pass === null) return cannotTell(`it is farther from the course than ${metres(station.practice.snapRadius)}`);
  if (lead.side === 'unclear') return cannotTell('the side of the tables is unclear');
  if (pass.side === 'unclear')
    return cannotTell(
      `it is ${metres(Math.abs(pass.offset))} from the course line, and its side only ${(pass.confidence * 100).toFixed(0)} % sure`,
    );
  if (pass.side === lead.side) return [];
  const message = `${name} lies ${metres(Math.abs(pass.offset))} to the ${pass.side} of the course, but the tables stand on the ${lead.side}: everything would be carried across the course. Move the drop point, or drop before the course closes and say so in a waiver.`;
  return [{ message, where: { ...where, measure: pass.measure }, measured: pass.offset, limit: 0, unit: 'm' }];
}
