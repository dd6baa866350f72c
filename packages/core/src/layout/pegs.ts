/**
 * The pegs of one direction: each end of each item in running order, with its wheel distance from the chalk mark
 * (the item's own figure) and from the peg before (the difference of the two). The margin between two pegs is
 * that of the course's turn between them.
 */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import type { Item, LaidDirection, StationLayout } from './layout.ts';
import { offsetUncertainty, wheelBetween } from './wheel.ts';

/** A distance by wheel, metres, signed; `null` where the line folds. */
export interface Wheeled {
  readonly length: number | null;
  readonly margin: number | null;
}

/** One place where something is chalked. */
export interface Peg {
  /** `null`: the chalk mark itself. */
  readonly item: Item | null;
  /** An item of one point, else the end of it met first or last. */
  readonly end: 'whole' | 'first' | 'last';
  readonly measure: number;
  /** From the pin's foot along the course. */
  readonly along: number;
  readonly fromMark: Wheeled;
  /** `null` for the first. */
  readonly before: Wheeled | null;
  readonly at: LonLat | null;
}

type Bare = Omit<Peg, 'before'>;

const RANK = { last: 0, whole: 1, first: 2 } as const;

/** Where several stand at one place: the chalk mark, then ends, then beginnings. */
const rankOf = ({ item, end }: Pick<Peg, 'item' | 'end'>): number => (item === null ? -1 : RANK[end]);

/** All pegs of a direction, upstream first; the chalk mark is one of them. */
export function pegsOf(station: StationLayout, direction: LaidDirection, { course }: IndexedCourse): Peg[] {
  const uncertainty = offsetUncertainty(course, station.station.width);
  const margin = (from: number, to: number): number | null =>
    wheelBetween(course, from, to, 0, uncertainty)?.margin ?? null;
  const mark: Bare = {
    item: null,
    end: 'whole',
    measure: direction.measure,
    along: 0,
    fromMark: { length: 0, margin: 0 },
    at: station.at,
  };
  const bare = [
    mark,
    ...direction.items.flatMap((item) => endsOf(item, (measure) => margin(direction.measure, measure))),
  ];
  const ordered = bare.toSorted((a, b) => a.measure - b.measure || rankOf(a) - rankOf(b));
  return ordered.map((peg, k) => {
    const previous = ordered[k - 1];
    if (previous === undefined) return { ...peg, before: null };
    const [from, to] = [previous.fromMark.length, peg.fromMark.length];
    return {
      ...peg,
      before: {
        length: from === null || to === null ? null : to - from,
        margin: margin(previous.measure, peg.measure),
      },
    };
  });
}

function endsOf(item: Item, margin: (measure: number) => number | null): Bare[] {
  const peg = (k: 0 | 1, end: Peg['end']): Bare => {
    const measure = k === 0 ? item.from : item.to;
    return {
      item,
      end,
      measure,
      along: item.along[k],
      fromMark: { length: item.wheel?.[k] ?? null, margin: margin(measure) },
      at: item.at[k],
    };
  };
  return item.from === item.to ? [peg(0, 'whole')] : [peg(0, 'first'), peg(1, 'last')];
}
