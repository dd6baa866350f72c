/** A race that no station of the plan serves. */
import { courseLength, startMeasure } from '../course/course.ts';
import { courseById } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { lostOf } from './lost.ts';

export const raceUnserved: Check = check(
  {
    code: 'race-unserved',
    lost: true,
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  ({ plan, courses, stations, spacing }) =>
    spacing.flatMap(({ race, course: id, legs }) => {
      // Where a station of its own serves nobody, that has a finding.
      if (legs.length > 1 || lostOf(race, { stations }).length > 0) return [];
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
