/** Lines of two courses on one road that would place the same item at different spots, farther apart than recorders err. */
import { courseLength, rawLength, startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { inverseLength } from '../geodesy/karney.ts';
import { offsetOf } from '../layout/place.ts';
import type { Item, LaidDirection, StationLayout } from '../layout/layout.ts';
import type { StationPass } from '../station/station.ts';
import { courseById } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, type Case, type Ground, atStation, stationCheck } from './check.ts';

/** Metres that two drawings of one road may differ by; recorded lines may differ by what each errs besides. */
const AGREED = 0.5;
/** Farther apart, metres, the courses do not share that stretch of road. */
const SHARED = 15;

export const coursesDisagree: Check = stationCheck(
  {
    code: 'courses-disagree',
    severity: 'warning',
    source: COMMON_PRACTICE,
  },
  (station, ground) => station.directions.flatMap((direction) => disagreements(direction, station, ground)),
);

function disagreements(direction: LaidDirection, station: StationLayout, ground: Ground): Case<'courses-disagree'>[] {
  const others = direction.passes
    .map((k) => station.passes[k]!)
    .filter((pass) => pass.served && pass.course !== direction.course);
  const firstOfEach = others.filter((pass, k) => others.findIndex(({ course }) => course === pass.course) === k);
  return firstOfEach.flatMap((pass) => {
    const limit = agreed([direction.course, pass.course], station, ground);
    const apart = direction.items
      .map((item) => ({ item, distance: distanceApart(item, pass, direction, station, ground) }))
      .filter(({ item, distance }) => distance > limit + stretchOf(item, pass, direction, ground) && distance <= SHARED)
      .sort((a, b) => b.distance - a.distance)[0];
    if (apart === undefined) return [];
    const where = {
      ...atStation(station),
      course: pass.course,
      race: pass.race,
      item: apart.item.kind,
      measure: pass.measure,
    };
    return [
      {
        params: {
          measured: apart.distance,
          limit,
          item: apart.item.kind,
          courses: [direction.course, pass.course],
        },
        where,
        measured: apart.distance,
        limit,
        unit: 'm',
      },
    ];
  });
}

/** By how much two lines may differ, metres: where they are recorded, 95 in 100 places are no farther off than `courseR95`. */
function agreed(ids: readonly string[], { practice }: StationLayout, { courses }: Ground): number {
  const recorded = ids.filter((id) => courseById(courses, id).course.drawn === 'recorded');
  return AGREED + recorded.length * practice.courseR95;
}

/** By how much an item stands apart only because one course is stretched to its length more than the other, metres: the length has a finding of its own. */
function stretchOf(item: Item, pass: StationPass, direction: LaidDirection, { courses }: Ground): number {
  const [one, other] = [direction.course, pass.course].map((id) => {
    const { course } = courseById(courses, id);
    return (courseLength(course) - startMeasure(course)) / rawLength(course);
  });
  return Math.abs(one! - other!) * Math.max(...item.along.map(Math.abs));
}

/** The larger distance of an item's two ends between the direction's course and another; 0 where an end has no place, or a hand placed it. */
function distanceApart(
  item: Item,
  pass: StationPass,
  direction: LaidDirection,
  { station, practice }: StationLayout,
  { courses }: Ground,
): number {
  const { course } = courseById(courses, pass.course);
  const offset = offsetOf(direction, pass, station, practice);
  const ends = item.at.map((at, end) => {
    const other = pointAt(course, pass.measure + item.along[end]!, offset);
    return at === null || other === null || item.byHand === true
      ? 0
      : inverseLength(at[0], at[1], other.at[0], other.at[1]);
  });
  return Math.max(...ends);
}
