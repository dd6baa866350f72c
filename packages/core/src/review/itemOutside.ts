/** An item with an end before the start, past the finish, or in a skipped gap. */
import { courseLength, startMeasure } from '../course/course.ts';
import { spansSkip } from '../layout/place.ts';
import type { Item, LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { itemWord } from '../station/wording.ts';
import { type Check, COMMON_PRACTICE, type Found, atStation, check, metres, named } from './check.ts';

/** Rounding that is no deviation, metres. */
const SAME = 1e-6;

export const itemOutside: Check = check(
  {
    code: 'item-outside',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) =>
    layout.stations.flatMap((station) =>
      station.directions.flatMap((direction) =>
        direction.items.flatMap((item) => outside(item, direction, station, layout)),
      ),
    ),
);

function outside(item: Item, direction: LaidDirection, station: StationLayout, { courses }: Layout): Found[] {
  const { course } = courses.find((indexed) => indexed.course.id === direction.course)!;
  const start = startMeasure(course);
  const length = courseLength(course);
  const low = Math.min(item.from, item.to);
  const high = Math.max(item.from, item.to);
  const split = spansSkip(course, low, high);
  const how =
    low < start - SAME
      ? `${metres(start - low)} before the start`
      : high > length + SAME
        ? `${metres(high - length)} past the finish`
        : split
          ? 'across a skipped gap'
          : null;
  if (how === null) return [];
  const measure = low < start - SAME ? low : high;
  const message = `${itemWord(item.kind)} of ${named(station)} would stand ${how} of course "${direction.course}"; it has no place there. Move the station, or place the item by hand.`;
  const where = { ...atStation(station), course: direction.course, item: item.kind, measure };
  return [{ message, where, measured: measure, limit: [start, length], unit: 'm' }];
}
