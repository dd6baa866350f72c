/** A race that no station of the plan serves. */
import { courseLength, startMeasure } from '../course/course.ts';
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
      const { course } = courses.find((indexed) => indexed.course.id === id)!;
      const length = courseLength(course) - startMeasure(course);
      const index = plan.races.findIndex((one) => one.id === race);
      const { name } = plan.races[index]!;
      const short = length <= plan.practice.maxSpacing;
      const message = `Race "${name}" is served by no station over its ${(length / 1000).toFixed(2)} km. Add it to the "races" of a station that it passes, or take it out of the plan.`;
      return [
        {
          message,
          where: { path: `/races/${index}`, race, course: id },
          measured: 0,
          limit: 1,
          ...(short ? { severity: 'warning' as const } : {}),
        },
      ];
    }),
);
