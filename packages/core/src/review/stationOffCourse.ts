/** A station that no race it serves runs by. */
import { swappedPosition } from '../course/swapped.ts';
import { courseById } from '../plan/lookups.ts';
import { type Check, COMMON_PRACTICE, atStation, check } from './check.ts';

export const stationOffCourse: Check = check(
  {
    code: 'station-off-course',
    severity: 'error',
    lost: true,
    source: COMMON_PRACTICE,
  },
  ({ stations, courses }) =>
    stations.flatMap((station) => {
      const { nearest, practice } = station;
      if (nearest === null) return [];
      const { course, measure, distance } = nearest;
      const limit = practice.snapRadius;
      const swapped = swappedPosition(courseById(courses, course), station.at);
      const where = { ...atStation(station), course, measure };
      return [
        {
          params: { measured: distance, limit, course, measure, swapped },
          where,
          measured: distance,
          limit,
          unit: 'm',
        },
      ];
    }),
);
