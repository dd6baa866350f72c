/** An item that a hand has placed farther from its course than a station may stand. */
import { nearestOn } from '../course/passes.ts';
import { courseById } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

export const itemOffCourse: Check = check(
  {
    code: 'item-off-course',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  ({ stations, courses }) =>
    stations.flatMap((station) =>
      station.directions.flatMap((direction) => {
        const indexed = courseById(courses, direction.course);
        const limit = station.practice.snapRadius;
        return direction.items.flatMap((item) => {
          const [at] = item.at;
          if (item.byHand !== true || at === null) return [];
          const { distance } = nearestOn(indexed, at);
          if (distance <= limit) return [];
          return [
            {
              params: { measured: distance, limit, item: item.kind },
              where: { ...atStation(station, `items/${item.kind}`), course: direction.course, item: item.kind, at },
              measured: distance,
              limit,
              unit: 'm',
            },
          ];
        });
      }),
    ),
);
