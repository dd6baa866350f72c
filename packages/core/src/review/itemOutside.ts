/** An item with an end before the start, past the finish, or in a skipped gap. */
import { courseLength, startMeasure } from '../course/course.ts';
import { spansSkip } from '../layout/place.ts';
import type { Item, LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { asOne } from './together.ts';

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
      station.directions.flatMap((direction) => {
        const found = direction.items.flatMap((item) => outside(item, direction, station, layout));
        return ENDS.flatMap((end) =>
          asOne(
            found.filter(({ params }) => params.beyond === end),
            (a, b) => b.params.by - a.params.by,
          ),
        );
      }),
    ),
);

const ENDS = ['start', 'finish', 'gap'] as const;

interface Outside extends Omit<Case<'item-outside'>, 'params'> {
  readonly params: Omit<Case<'item-outside'>['params'], 'items'>;
}

function outside(item: Item, direction: LaidDirection, station: StationLayout, { courses }: Layout): Outside[] {
  const { course } = courseById(courses, direction.course);
  const start = startMeasure(course);
  const length = courseLength(course);
  const low = Math.min(item.from, item.to);
  const high = Math.max(item.from, item.to);
  const split = spansSkip(course, low, high);
  const beyond = low < start - SAME ? 'start' : high > length + SAME ? 'finish' : split ? 'gap' : null;
  if (beyond === null) return [];
  const measure = beyond === 'start' ? low : high;
  const by = beyond === 'start' ? start - low : beyond === 'finish' ? high - length : 0;
  const where = { ...atStation(station), course: direction.course, item: item.kind, measure };
  const params = { item: item.kind, beyond, by, lead: direction.lead } as const;
  return [{ params, where, measured: measure, limit: [start, length], unit: 'm' }];
}
