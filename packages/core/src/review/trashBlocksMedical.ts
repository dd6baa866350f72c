/** A trash drop between a medical point and its access point, on their side of the course: the way between them is full of boxes. */
import type { Pass } from '../course/course.ts';
import type { Item, LaidDirection, Layout } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { type StationPoint, nearestPoint, passOfPoint, pointsOfKind, refOf } from './points.ts';

export const trashBlocksMedical: Check = check(
  {
    code: 'trash-blocks-medical',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: (layout) => (pairsOf(layout).length > 0 ? null : 'no-medical-with-access'),
  },
  (layout) =>
    pairsOf(layout).flatMap((pair) =>
      pair.medical.station.directions.flatMap((direction) => blocked(pair, direction, layout)),
    ),
);

export interface Pair {
  readonly medical: StationPoint;
  readonly access: StationPoint;
}

/** Each medical point with the nearest access point of its own station. */
export function pairsOf(layout: Layout): Pair[] {
  const accesses = pointsOfKind(layout, 'access');
  return pointsOfKind(layout, 'medical').flatMap((medical) => {
    const nearest = nearestPoint(
      medical.point.at,
      accesses.filter(({ station }) => station === medical.station),
    );
    return nearest === null ? [] : [{ medical, access: nearest.to }];
  });
}

function blocked({ medical, access }: Pair, direction: LaidDirection, layout: Layout): Case<'trash-blocks-medical'>[] {
  const { station } = medical;
  const trash = itemOf(direction, 'trash');
  const one = passOfPoint(medical.point.at, direction, station, layout);
  const other = passOfPoint(access.point.at, direction, station, layout);
  if (trash === undefined) return [];
  if (one === null || other === null)
    return [{ ...farOff(one === null ? medical : access, medical, direction), severity: 'note', cannotTell: true }];
  const overlap = overlapOf(trash, one, other);
  const elsewhere = [one, other].some(
    ({ side }) => side !== 'unclear' && trash.side !== 'unclear' && side !== trash.side,
  );
  if (overlap <= 0 || elsewhere) return [];
  const where = {
    ...atStation(station, medical.key),
    course: direction.course,
    item: 'trash',
    measure: trash.from,
    at: medical.point.at,
  };
  const side = [one.side, other.side].includes('unclear') || trash.side === 'unclear' ? null : trash.side;
  const params = { is: 'between', medical: refOf(medical), overlap, side } as const;
  const found = { params, where, measured: overlap, limit: 0, unit: 'm' };
  return side === null ? [{ ...found, severity: 'note', cannotTell: true }] : [found];
}

/** A point so far from the course that its place along it says nothing. */
const farOff = (
  point: StationPoint,
  medical: StationPoint,
  direction: LaidDirection,
): Case<'trash-blocks-medical'> => ({
  params: { is: 'far', medical: refOf(medical), point: refOf(point), radius: medical.station.practice.snapRadius },
  where: { ...atStation(medical.station, medical.key), course: direction.course, item: 'trash' },
});

/** Metres of the trash drop between two passes, by measure; negative where it lies outside. */
const overlapOf = (trash: Item, one: Pass, other: Pass): number =>
  Math.min(Math.max(trash.from, trash.to), Math.max(one.measure, other.measure)) -
  Math.max(Math.min(trash.from, trash.to), Math.min(one.measure, other.measure));
