/** An item that a hand has placed farther from its course than a station may stand. */
import { nearestOn } from '../course/passes.ts';
import type { Item, LaidDirection, StationLayout } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, type Ground, atStation, check } from './check.ts';
import { asOne } from './together.ts';

export const itemOffCourse: Check = check(
  {
    code: 'item-off-course',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) =>
      station.directions.flatMap((direction) => {
        const limit = station.practice.snapRadius;
        const found = direction.items.flatMap((item) => {
          const distance = strayedBy(item, direction, station, layout);
          if (distance === null) return [];
          const where = { ...atStation(station, `items/${item.kind}`), course: direction.course, item: item.kind };
          return [
            {
              params: { measured: distance, limit, item: item.kind },
              where: { ...where, at: item.at[0]! },
              measured: distance,
              limit,
              unit: 'm',
            },
          ];
        });
        return asOne(found, (a, b) => b.measured - a.measured);
      }),
    ),
);

/** Metres from its course of an item that a hand has placed farther off than a station may stand; `null` of any other. Its course distance and its side say nothing. */
export function strayedBy(
  { byHand, at }: Item,
  { course }: LaidDirection,
  { practice }: StationLayout,
  { courses }: Ground,
): number | null {
  if (byHand !== true || at[0] === null) return null;
  const { distance } = nearestOn(courseById(courses, course), at[0]);
  return distance > practice.snapRadius ? distance : null;
}
