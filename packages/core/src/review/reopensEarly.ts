/** A road that reopens to traffic before the last runner or the sweep is through and the crew has cleared. */
import { type Check, COMMON_PRACTICE, dayCheck } from './check.ts';
import { SAME_TIME, byCourse, noTime, roadPlaces, withoutAt } from './roadTimes.ts';

/** Least time in which a crew takes tables, boxes and cups off the road, seconds: common practice, no source. */
const CLEAR = 10 * 60;

export const reopensEarly: Check = dayCheck(
  {
    code: 'reopens-early',
    severity: 'error',
    source: `${COMMON_PRACTICE}; the ten minutes to clear are an assumption`,
    missing: noTime('reopens', 'no-reopening'),
  },
  (layout, day) => {
    const early = roadPlaces(layout, day).flatMap(({ course, measure, station, at, reopens, last }) => {
      const clear = station === null ? 0 : CLEAR;
      if (reopens === null || last === null || reopens >= last.time + clear - SAME_TIME) return [];
      return [{ course, measure, station, at, reopens, race: last.race, last: last.time, clear }];
    });
    return byCourse(early, ({ reopens, last, clear }) => last + clear - reopens).map((places) => {
      const { course, measure, at, reopens, last, clear } = places[0]!;
      return {
        params: { places: places.map(withoutAt) },
        where: { path: '/clock', course, measure, at },
        measured: last + clear - reopens,
        limit: 0,
        unit: 's',
      };
    });
  },
);
