/** A road that closes to traffic only after the first runner or racer on wheels is there. */
import { type Check, COMMON_PRACTICE, dayCheck } from './check.ts';
import { SAME_TIME, byCourse, noTime, roadPlaces, withoutAt } from './roadTimes.ts';

export const closesLate: Check = dayCheck(
  { code: 'closes-late', severity: 'error', source: COMMON_PRACTICE, missing: noTime('closes', 'no-closing') },
  (layout, day) => {
    const open = roadPlaces(layout, day).flatMap(({ course, measure, station, at, closes, first }) =>
      closes === null || first === null || closes <= first.time + SAME_TIME
        ? []
        : [{ course, measure, station, at, closes, race: first.race, first: first.time }],
    );
    return byCourse(open, ({ closes, first }) => closes - first).map((places) => {
      const { course, measure, at, closes, first } = places[0]!;
      return {
        params: { places: places.map(withoutAt) },
        where: { path: '/clock', course, measure, at },
        measured: closes - first,
        limit: 0,
        unit: 's',
      };
    });
  },
);
