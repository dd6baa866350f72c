/** A station that no race it serves runs by. */
import { type Check, COMMON_PRACTICE, atStation, check, metres, named } from './check.ts';

export const stationOffCourse: Check = check(
  { code: 'station-off-course', severity: 'error', title: 'Every station stands by the course of a race it serves', source: COMMON_PRACTICE },
  ({ stations }) =>
    stations.flatMap((station) => {
      const { nearest, practice } = station;
      if (nearest === null) return [];
      const message = `${named(station)} is ${metres(nearest.distance)} from the nearest course it serves (${nearest.course}, at ${metres(nearest.measure)}); expected at most ${metres(practice.snapRadius)}. Move its pin to the road, or widen snapRadius.`;
      const where = { ...atStation(station), course: nearest.course, measure: nearest.measure };
      return [{ message, where, measured: nearest.distance, limit: practice.snapRadius, unit: 'm' }];
    }),
);
