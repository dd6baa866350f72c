/** A race that no station of the plan serves. */
import { courseLength, startMeasure } from '../course/course.ts';
import { courseById } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';

export const raceUnserved: Check = check(
  {
    code: 'race-unserved',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  ({ plan, courses, spacing }) =>
    spacing.flatMap(({ race, course: id, legs }) => {
      if (legs.length > 1) return [];
      const { course } = courseById(courses, id);
      const length = courseLength(course) - startMeasure(course);
      const index = plan.races.findIndex((one) => one.id === race);
      const short = length <= plan.practice.maxSpacing;
      return [
        {
          params: { length },
          where: { path: `/races/${index}`, race, course: id },
          measured: 0,
          limit: 1,
          ...(short ? { severity: 'warning' as const } : {}),
        },
      ];
    }),
);
