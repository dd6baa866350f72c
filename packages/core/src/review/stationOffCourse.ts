/** A station that no race it serves runs by. */
import { swappedPosition } from '../course/swapped.ts';
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const stationOffCourse: Check = check(
  {
    code: 'station-off-course',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  ({ stations, courses }) =>
    stations.flatMap((station) => {
      const { nearest, practice } = station;
      if (nearest === null) return [];
      const turned = swappedPosition(
        courses.find(({ course }) => course.id === nearest.course)!,
        station.at,
      );
      const mend =
        turned === null
          ? 'Move its pin to the road, or widen snapRadius.'
          : `Longitude comes first: the two numbers of its place may be swapped (${turned.join(', ')}).`;
      const message = `${named(station)} is ${metres(nearest.distance)} from the nearest course it serves (${nearest.course}, at ${metres(nearest.measure)}); expected at most ${metres(practice.snapRadius)}. ${mend}`;
      const where = { ...atStation(station), course: nearest.course, measure: nearest.measure };
      return [{ message, where, measured: nearest.distance, limit: practice.snapRadius, unit: 'm' }];
    }),
);
