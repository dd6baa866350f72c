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
    const pairs: Pair[] = [];
    for (const [k, one] of reaches.entries())
      for (let other = k + 1; other < reaches.length; other++) {
        const worst = overlapOf(one, reaches[other]!);
        if (worst !== null) pairs.push(worst);
      }
    return summed(pairs);
  },
);

/** Up to so many stations that reach into one are named each; of more the worst is, with the number of the others. */
const EACH = 3;

/** One case for each pair, or one for all that reach into the same station. */
function summed(pairs: readonly Pair[]): Case<'items-overlap'>[] {
  const into = new Map<string, Pair[]>();
  for (const pair of pairs) {
    const all = into.get(pair.down.station.id);
    if (all === undefined) into.set(pair.down.station.id, [pair]);
    else all.push(pair);
  }
  const worst = new Map([...into].map(([station, all]) => [station, all.length > EACH ? worstOf(all) : null]));
  return pairs.flatMap((pair) => {
    const station = pair.down.station.id;
    const one = worst.get(station)!;
    return one === null ? [foundOf(pair)] : one === pair ? [foundOf(pair, into.get(station)!.length - 1)] : [];
  });
}

/** The largest overlap of those that reach tables, or of all where none does. */
function worstOf(pairs: readonly Pair[]): Pair {
  const grave = pairs.filter(reachesTables);
  return (grave.length > 0 ? grave : pairs).reduce((most, one) => (one.overlap > most.overlap ? one : most));
}

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

/** Two stretches that overlap, by so many metres, in the order in which runners meet their tables. */
interface Pair {
  readonly up: Reach;
  readonly down: Reach;
  readonly overlap: number;
}

/** The largest overlap of two stations over all courses that they share. */
function overlapOf(one: readonly Reach[], other: readonly Reach[]): Pair | null {
  let worst: Pair | null = null;
  for (const a of one)
    for (const b of other) {
      const overlap = common(a.whole, b.whole);
      if (a.course !== b.course || !(overlap > (worst?.overlap ?? SAME)) || !sameSide(a, b)) continue;
      worst = { ...(a.tables[0] <= b.tables[0] ? { up: a, down: b } : { up: b, down: a }), overlap };
    }
  return worst;
}

/** An unclear side may be either. */
const sameSide = (a: Reach, b: Reach): boolean => a.direction.side === b.direction.side || unclear(a, b);
const unclear = (a: Reach, b: Reach): boolean => a.direction.side === 'unclear' || b.direction.side === 'unclear';

const reachesTables = ({ up, down }: Pair): boolean =>
  common(up.tables, down.whole) > SAME || common(up.whole, down.tables) > SAME;

function foundOf(pair: Pair, others?: number): Case<'items-overlap'> {
  const { up, down, overlap } = pair;
  const atTables = reachesTables(pair);
  const where = { ...atStation(down.station), course: down.course, measure: down.whole[0] };
  return {
    params: {
      before: up.station.id,
      overlap,
      atTables,
      sideUnclear: unclear(up, down),
      ...(others === undefined ? {} : { others }),
    },
    where,
    severity: atTables ? 'error' : 'warning',
    measured: overlap,
    limit: 0,
    unit: 'm',
    ...doubt(!unclear(up, down)),
  };
}
