/** Supplies set down across the course from the tables: the crew would carry them through the runners. */
import type { Layout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import type { ReviewParams } from '../text/params/review.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { isContradicted } from './sideContradicted.ts';
import { type StationPoint, passOfPoint, pointsOfKind, refOf } from './points.ts';

export const dropSide: Check = check(
  {
    code: 'drop-side',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: (layout) => (pointsOfKind(layout, 'drop').length > 0 ? null : 'no-drop'),
  },
  (layout) => pointsOfKind(layout, 'drop').flatMap((drop) => across(drop, layout)),
);

function across(drop: StationPoint, layout: Layout): Case<'drop-side'>[] {
  const { station, point, key } = drop;
  const lead = leadOf(station);
  // Where the declared side is contradicted by the pin, supplies by the pin lie across for the same cause.
  if (lead === undefined || isContradicted(station)) return [];
  const ref = refOf(drop);
  const where = { ...atStation(station, key), course: lead.course, at: point.at };
  const cannotTell = (params: ReviewParams['drop-side']): Case<'drop-side'>[] => [
    { params, where, severity: 'note', cannotTell: true },
  ];
  const pass = passOfPoint(point.at, lead, station, layout);
  if (pass === null) return cannotTell({ is: 'far', point: ref, radius: station.practice.snapRadius });
  const { offset, confidence, side } = pass;
  if (lead.side === 'unclear') return cannotTell({ is: 'tables-unclear', point: ref });
  if (side === 'unclear') return cannotTell({ is: 'unclear', point: ref, offset, confidence });
  if (side === lead.side) return [];
  return [
    {
      params: { is: 'across', point: ref, offset, side, tables: lead.side },
      where: { ...where, measure: pass.measure },
      measured: offset,
      limit: 0,
      unit: 'm',
    },
  ];
}
