/**
 * Two stations whose stretches, sign to trash drop, overlap on one side of one road: runners meet
 * the sign of the next among the cups of this one. Measured by course distance on every course that
 * runs by both the same way; an out-and-back passes them at measures far apart, so its two ways do
 * not mix.
 */
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, atStation, check, doubt } from './check.ts';
import { strayedBy } from './itemOffCourse.ts';
import { tableEnds } from './standing.ts';

/** Rounding that is no overlap, metres. */
const SAME = 1e-6;

export const itemsOverlap: Check = check(
  {
    code: 'items-overlap',
    severity: 'error',
    source: COMMON_PRACTICE,
    missing: ({ stations }) => (stations.length > 1 ? null : 'one-station'),
  },
  (layout) => {
    const reaches = layout.stations.map((station) => reachesOf(station, layout));
    return reaches.flatMap((station, k) => reaches.slice(k + 1).flatMap((other) => overlapOf(station, other)));
  },
);

/** One station on one course: course distances of its whole stretch and of its tables. */
interface Reach {
  readonly station: StationLayout;
  readonly direction: LaidDirection;
  readonly course: string;
  readonly whole: readonly [number, number];
  readonly tables: readonly [number, number];
}

const reachesOf = (station: StationLayout, layout: Layout): Reach[] =>
  station.directions.flatMap((direction) => {
    const tables = tableEnds(direction);
    if (tables === null) return [];
    const items = direction.items.filter((item) => strayedBy(item, direction, station, layout) === null);
    const whole = [Math.min(...items.map(({ from }) => from)), Math.max(...items.map(({ to }) => to))] as const;
    return direction.passes.map((k) => {
      const { course, measure } = station.passes[k]!;
      const moved = ([from, to]: readonly [number, number]): [number, number] => [
        from + measure - direction.measure,
        to + measure - direction.measure,
      ];
      return { station, direction, course, whole: moved(whole), tables: moved(tables) };
    });
  });

const common = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0]);

/** The largest overlap of two stations over all courses that they share, as one finding. */
function overlapOf(one: readonly Reach[], other: readonly Reach[]): Case<'items-overlap'>[] {
  const pairs = one.flatMap((a) =>
    other
      .filter((b) => a.course === b.course && common(a.whole, b.whole) > SAME && sameSide(a, b))
      .map((b) => ({
        ...(a.tables[0] <= b.tables[0] ? { up: a, down: b } : { up: b, down: a }),
        overlap: common(a.whole, b.whole),
      })),
  );
  const worst = pairs.sort((a, b) => b.overlap - a.overlap)[0];
  return worst === undefined ? [] : [foundOf(worst.up, worst.down, worst.overlap)];
}

/** An unclear side may be either. */
const sameSide = (a: Reach, b: Reach): boolean => a.direction.side === b.direction.side || unclear(a, b);
const unclear = (a: Reach, b: Reach): boolean => a.direction.side === 'unclear' || b.direction.side === 'unclear';

function foundOf(up: Reach, down: Reach, overlap: number): Case<'items-overlap'> {
  const atTables = common(up.tables, down.whole) > SAME || common(up.whole, down.tables) > SAME;
  const where = { ...atStation(down.station), course: down.course, measure: down.whole[0] };
  return {
    params: { before: up.station.id, overlap, atTables, sideUnclear: unclear(up, down) },
    where,
    severity: atTables ? 'error' : 'warning',
    measured: overlap,
    limit: 0,
    unit: 'm',
    ...doubt(!unclear(up, down)),
  };
}
