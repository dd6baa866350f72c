/** Items of a station one on top of another, as where a hand has placed them: along the course they overlap, and beside it they are less than 2 m apart. */
import { type Item, type Layout, type StationLayout } from '../layout/layout.ts';
import { leadOf } from '../plan/lookups.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';
import { standsAlong } from './standing.ts';
import { kindsOf } from './together.ts';

/** Two rows of tables are this far apart, metres. */
const ROWS = 2;
/** Rounding that is no overlap, metres. */
const SAME = 1e-6;

export const itemsOnTop: Check = check(
  {
    code: 'items-on-top',
    severity: 'error',
    source: COMMON_PRACTICE,
  },
  (layout) => layout.stations.flatMap((station) => heaped(station, layout)),
);

function heaped(station: StationLayout, layout: Layout): Case<'items-on-top'>[] {
  const lead = leadOf(station);
  if (lead === undefined) return [];
  const items = lead.items.filter((item) => strayedBy(item, lead, station, layout) === null);
  const pairs = items
    .flatMap((one, k) => items.slice(k + 1).map((other) => ({ one, other, overlap: overlapOf(one, other) })))
    .filter(({ overlap }) => overlap > SAME)
    .sort((a, b) => b.overlap - a.overlap);
  const [worst] = pairs;
  if (worst === undefined) return [];
  const all = pairs.flatMap(({ one, other }) => [one, other]);
  const subject = all.find(({ byHand }) => byHand === true) ?? worst.other;
  const where = {
    ...atStation(station, subject.byHand === true ? `items/${subject.kind}` : ''),
    course: lead.course,
    item: subject.kind,
    measure: subject.from,
  };
  const kinds = kindsOf(all);
  return [
    {
      params: {
        items: kinds,
        overlap: worst.overlap,
        byHand: kinds.filter((kind) => all.some((item) => item.kind === kind && item.byHand === true)),
      },
      where: subject.at[0] === null ? where : { ...where, at: subject.at[0] },
      measured: worst.overlap,
      limit: 0,
      unit: 'm',
    },
  ];
}

/** Metres by which two items stand on one spot; 0 or less where they do not. */
function overlapOf(one: Item, other: Item): number {
  if (Math.abs(one.offset - other.offset) >= ROWS) return 0;
  const overlaps = standsAlong(one).flatMap((a) =>
    standsAlong(other).map((b) => Math.min(a[1], b[1]) - Math.max(a[0], b[0])),
  );
  return Math.max(0, ...overlaps);
}

/** Whether two items stand one on top of another. */
export const isOnTop = (one: Item, other: Item): boolean => overlapOf(one, other) > SAME;
