/** A trash drop between a medical point and its access point, on their side of the course: the way between them is full of boxes. */
import type { Pass } from '../course/course.ts';
import type { Item, LaidDirection, Layout } from '../layout/layout.ts';
import { type Check, COMMON_PRACTICE, type Found, atStation, check, metres } from './check.ts';
import { type StationPoint, nearestPoint, passOfPoint, pointNamed, pointsOfKind } from './points.ts';

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

interface Pair {
  readonly medical: StationPoint;
  readonly access: StationPoint;
}

/** Each medical point with the nearest access point of its own station. */
function pairsOf(layout: Layout): Pair[] {
  const accesses = pointsOfKind(layout, 'access');
  return pointsOfKind(layout, 'medical').flatMap((medical) => {
    const nearest = nearestPoint(
      medical.point.at,
      accesses.filter(({ station }) => station === medical.station),
    );
    return nearest === null ? [] : [{ medical, access: nearest.to }];
  });
}

function blocked({ medical, access }: Pair, direction: LaidDirection, layout: Layout): Found[] {
  const { station } = medical;
  const trash = direction.items.find(({ kind }) => kind === 'trash');
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
  const stretch = `The trash drop (${metres(trash.from)} to ${metres(trash.to)} of course "${direction.course}") lies for ${metres(overlap)} between ${pointNamed(medical)} (at ${metres(one.measure)}) and its access point (at ${metres(other.measure)})`;
  if ([one.side, other.side, trash.side].includes('unclear')) {
    const message = `${stretch}, but whether all three are on one side of the road cannot be told. Look on the ground.`;
    return [{ message, where, measured: overlap, limit: 0, unit: 'm', severity: 'note', cannotTell: true }];
  }
  const message = `${stretch}, all on the ${trash.side}: boxes and cups lie in the way of a stretcher. Move the medical or the access point to one side of the trash drop, or place the trash by hand.`;
  return [{ message, where, measured: overlap, limit: 0, unit: 'm' }];
}

/** A point so far from the course that its place along it says nothing. */
const farOff = (point: StationPoint, { station, key }: StationPoint, direction: LaidDirection): Found => ({
  message: `${pointNamed(point)} is farther from course "${direction.course}" than ${metres(station.practice.snapRadius)}: whether the trash drop lies between medical and access point cannot be told. Look on the ground.`,
  where: { ...atStation(station, key), course: direction.course, item: 'trash' },
});

/** Metres of the trash drop between two passes, by measure; negative where it lies outside. */
const overlapOf = (trash: Item, one: Pass, other: Pass): number =>
  Math.min(Math.max(trash.from, trash.to), Math.max(one.measure, other.measure)) -
  Math.max(Math.min(trash.from, trash.to), Math.min(one.measure, other.measure));
