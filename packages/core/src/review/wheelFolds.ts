/** An item whose distance no measuring wheel can give: the line along the kerb folds on the way, or a skipped gap lies in it. */
import { spansSkip } from '../layout/place.ts';
import { courseById } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { asOne } from './together.ts';

export const wheelFolds: Check = check(
  {
    code: 'wheel-folds',
    severity: 'note',
    source: COMMON_PRACTICE,
  },
  ({ stations, courses }) =>
    stations.flatMap((station) => {
      const found = station.directions.flatMap((direction) =>
        direction.items
          .filter((item) => item.wheel === null && item.at.every((at) => at !== null))
          .map((item) => {
            const { course } = courseById(courses, direction.course);
            const gap = spansSkip(course, Math.min(direction.measure, item.from), Math.max(direction.measure, item.to));
            return {
              params: { item: item.kind, offset: gap ? null : item.offset },
              where: { ...atStation(station), course: direction.course, item: item.kind, measure: item.from },
            };
          }),
      );
      const gap = found.filter(({ params }) => params.offset === null);
      const fold = found.filter(({ params }) => params.offset !== null);
      return [gap, fold].flatMap((cases) => asOne(cases, () => 0));
    }),
);
