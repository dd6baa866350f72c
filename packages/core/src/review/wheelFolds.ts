/** An item whose distance no measuring wheel can give: the line along the kerb folds on the way, or a skipped gap lies in it. */
import { spansSkip } from '../layout/place.ts';
import { itemWord } from '../station/wording.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const wheelFolds: Check = check(
  {
    code: 'wheel-folds',
    severity: 'note',
    source: COMMON_PRACTICE,
  },
  ({ stations, courses }) =>
    stations.flatMap((station) =>
      station.directions.flatMap((direction) =>
        direction.items
          .filter((item) => item.wheel === null && item.at.every((at) => at !== null))
          .map((item) => {
            const { course } = courses.find((indexed) => indexed.course.id === direction.course)!;
            const gap = spansSkip(course, Math.min(direction.measure, item.from), Math.max(direction.measure, item.to));
            const why = gap
              ? 'a skipped gap lies between the chalk mark and it'
              : `the line ${metres(Math.abs(item.offset))} beside the course folds between the chalk mark and it (a bend tighter than that, or a corner with too short a leg)`;
            const message = `${itemWord(item.kind)} of ${named(station)}: ${why}, so no wheel distance is given. Place it by course distance, and look on the ground.`;
            return {
              message,
              where: { ...atStation(station), course: direction.course, item: item.kind, measure: item.from },
            };
          }),
      ),
    ),
);
