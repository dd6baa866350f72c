/** An item that a hand has placed farther from its course than a station may stand. */
import { nearestOn } from '../course/passes.ts';
import { itemWord } from '../station/wording.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const itemOffCourse: Check = check(
  {
    code: 'item-off-course',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  ({ stations, courses }) =>
    stations.flatMap((station) =>
      station.directions.flatMap((direction) => {
        const indexed = courses.find(({ course }) => course.id === direction.course)!;
        const limit = station.practice.snapRadius;
        return direction.items.flatMap((item) => {
          const [at] = item.at;
          if (item.byHand !== true || at === null) return [];
          const { distance } = nearestOn(indexed, at);
          if (distance <= limit) return [];
          const message = `${itemWord(item.kind)} of ${named(station)} was placed by hand ${metres(distance)} from course "${direction.course}"; expected at most ${metres(limit)}. Mend its position (longitude comes first), or take it out.`;
          return [
            {
              message,
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
