/** Courses without elevations: grades cannot be checked. */
import { type Check, COMMON_PRACTICE, check } from './check.ts';

export const noElevations: Check = check(
  { code: 'no-elevations', severity: 'note', source: COMMON_PRACTICE },
  ({ courses, plan }) => {
    const run = new Set(plan.races.map(({ course }) => course));
    const level = courses.filter(({ course }) => course.ele === null && run.has(course.id));
    if (level.length === 0) return [];
    return [
      {
        params: { courses: level.map(({ course }) => course.id) },
        where: { path: '/courses' },
        measured: level.length,
        limit: 0,
      },
    ];
  },
);
