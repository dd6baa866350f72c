/** Stretches of a course that follow no street of the map: a path that it lacks, a line that strays, or a map of another place. */
import { courseLength, startMeasure } from '../course/course.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { GroundStretch } from '../ground/along.ts';
import type { Layout } from '../layout/layout.ts';
import { dayOfMap, noMap } from './byMap.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { ofCourse } from './onCourse.ts';

/** Share of a course from which on the map seems to be of another place. */
const MOST = 0.5;

/** Metres of a course that follow no street, and which share of it. */
export function strays({ course }: IndexedCourse, stretches: readonly GroundStretch[]): { off: number; share: number } {
  const off = stretches.reduce((sum, { from, to }) => sum + to - from, 0);
  return { off, share: off / (courseLength(course) - startMeasure(course)) };
}

/** Whether the map seems to be of another place: most of every course follows none of its streets. */
export const isElsewhere = ({ courses, ground }: Layout): boolean =>
  courses.every((one) => strays(one, ground?.along.get(one.course.id)?.offMap ?? []).share > MOST);

export const offMap: Check = check(
  { code: 'off-map', severity: 'note', source: COMMON_PRACTICE, missing: noMap },
  (layout) =>
    layout.courses.flatMap((indexed) => {
      const { course } = indexed;
      const stretches = layout.ground?.along.get(course.id)?.offMap ?? [];
      if (stretches.length === 0) return [];
      const { off, share } = strays(indexed, stretches);
      return [
        {
          params: {
            map: dayOfMap(layout.ground!),
            course: course.id,
            stretches: stretches.map(({ from, to }) => ({ from, to })),
            share,
            most: share > MOST,
          },
          where: { ...ofCourse(layout, course.id), measure: stretches[0]!.from },
          ...(share > MOST ? { severity: 'warning' as const } : {}),
          measured: off,
          limit: 0,
          unit: 'm' as const,
        },
      ];
    }),
);
