/**
 * Where recorded things stand along one direction: each point on the pass nearest to its planned
 * measure, tables as stretches, the planned place where a table was not recorded.
 * Errors: of a recorded point its own; of a planned place `pinR95`, with which the plan knows the chalk
 * mark that the crew lays out from. The course's error is left out: both ends are projected on the same
 * line, which shifts them alike. Errors of two points are taken as independent, which is careful: of
 * one receiver on one day they share a part, and the distance is better than said.
 */
import type { Side } from '../course/course.ts';
import { passesOf, sigmaOf } from '../course/passes.ts';
import type { LonLat } from '../finding.ts';
import { type Item, type LaidDirection, type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { courseById, itemOf } from '../plan/lookups.ts';
import type { ItemKind } from '../plan/plan.ts';
import type { Matched } from './placedMatch.ts';
import type { PlacedPoint } from './placedPoint.ts';

/** An end of something along a direction's course. */
export interface PlacedEnd {
  readonly kind: ItemKind;
  /** Course distance, metres. */
  readonly measure: number;
  /** 95 % radius, metres. */
  readonly r95: number;
  readonly planned: boolean;
  /** Its item in the plan, for wheel distances. */
  readonly item: Item;
}

/** A recorded point on a direction's course. */
export interface OnCourse {
  readonly point: PlacedPoint;
  readonly measure: number;
  /** Left positive, metres. */
  readonly offset: number;
  readonly side: Side;
  readonly confidence: number;
}

/** One direction of a station with what was recorded of it; index 0 of `tables` ends is the lead's upstream end. */
export interface PlacedGround {
  readonly layout: Layout;
  readonly station: StationLayout;
  readonly direction: LaidDirection;
  /** The points of the direction's own sign and trash drop, and of the lead's tables. */
  readonly matched: readonly Matched[];
}

/** k of the guarded interval: of a normal error, 95 of 100 are below k·σ (one-sided). */
export const GUARD = 1.645;

/** k·σ of the distance along the course between two ends, metres. */
export const marginOf = (a: number, b: number): number => GUARD * sigmaOf({ pinR95: a, courseR95: b });

export function groundOf(
  layout: Layout,
  station: StationLayout,
  direction: LaidDirection,
  matched: readonly Matched[],
): PlacedGround {
  const own = matched.filter(
    ({ target }) => target.station === station && (target.direction === direction || isTable(target)),
  );
  return { layout, station, direction, matched: own };
}

export const tablesOf = ({ direction }: PlacedGround): readonly Item[] => direction.items.filter(isTable);

/** A point on the pass whose measure is nearest to `planned`; `null` where no pass is near, or the point lies beyond the course's end. */
export function onCourse(
  point: PlacedPoint,
  planned: number,
  { layout, station, direction }: PlacedGround,
): OnCourse | null {
  const indexed = courseById(layout.courses, direction.course);
  const passes = passesOf(indexed, point.at, { ...station.practice, pinR95: point.r95 });
  const [nearest] = passes.sort((a, b) => Math.abs(a.measure - planned) - Math.abs(b.measure - planned));
  if (nearest === undefined || nearest.end !== undefined) return null;
  const { measure, offset, side, confidence } = nearest;
  return { point, measure, offset, side, confidence };
}

/** The recorded points of one item, in running order of this direction. */
export function recorded(kind: ItemKind, ground: PlacedGround): (OnCourse & Pick<Matched, 'end'>)[] {
  const item = itemOf(ground.direction, kind);
  if (item === undefined) return [];
  return ground.matched
    .filter(({ target }) => target.kind === kind)
    .flatMap(({ point, end }) => {
      const planned =
        item.from === item.to || end === null ? (item.from + item.to) / 2 : end === 'from' ? item.from : item.to;
      const on = onCourse(point, planned, ground);
      return on === null ? [] : [{ ...on, end }];
    })
    .sort((a, b) => a.measure - b.measure);
}

/** Both ends of a table as this direction's runners meet them, upstream first. */
function tableEnds(item: Item, ground: PlacedGround): readonly [PlacedEnd, PlacedEnd] {
  const { kind } = item;
  // The line where cups change hands is never recorded: it moves with the drink tables.
  const source =
    kind === 'handOut'
      ? (tablesOf(ground).find(
          (one) => one.kind !== 'handOut' && one.kind !== 'gel' && recorded(one.kind, ground).length > 0,
        ) ?? item)
      : item;
  const planned = [source.from, source.to] as const;
  const marks = endPoints(source, ground);
  const shift = (k: 0 | 1): number => marks[k]!.measure - planned[k];
  const end = (k: 0 | 1): PlacedEnd => {
    const other = k === 0 ? 1 : 0;
    const known = marks[k] !== null ? k : marks[other] !== null ? other : null;
    const own = k === 0 ? item.from : item.to;
    if (known === null) return { kind, measure: own, r95: ground.layout.plan.practice.pinR95, planned: true, item };
    return { kind, measure: own + shift(known), r95: marks[known]!.point.r95, planned: false, item };
  };
  return [end(0), end(1)];
}

/** The points that mark a table's two ends in this direction; one alone marks the lead's upstream end, as the pin does. */
export function endPoints(item: Item, ground: PlacedGround): [OnCourse | null, OnCourse | null] {
  const points = recorded(item.kind, ground);
  const lead = itemOf(ground.station.directions[0]!, item.kind);
  // Another direction meets the same table from behind where its upstream end is the lead's other one.
  const turned =
    !ground.direction.lead && lead !== undefined && same(item.at[0], lead.at[1]) && !same(item.at[0], lead.at[0]);
  const inLead = turned ? [...points].reverse() : points;
  const silent = inLead.filter(({ end }) => end === null);
  const from = inLead.find(({ end }) => end === 'from') ?? silent[0] ?? null;
  const to = inLead.find(({ end }) => end === 'to') ?? (silent.length > 1 ? silent.at(-1)! : null);
  return turned ? [to, from] : [from, to];
}

const same = (a: LonLat | null, b: LonLat | null): boolean =>
  a !== null && b !== null && a[0] === b[0] && a[1] === b[1];

/** The end that the sign's distance refers to: upstream end of the first table. */
export const firstTable = (ground: PlacedGround): PlacedEnd | null =>
  outermost(
    tablesOf(ground).map((item) => tableEnds(item, ground)[0]),
    (item) => item.from,
    1,
  );

/** The end that the trash drop's distance refers to: downstream end of the last table. */
export const lastTable = (ground: PlacedGround): PlacedEnd | null =>
  outermost(
    tablesOf(ground).map((item) => tableEnds(item, ground)[1]),
    (item) => -item.to,
    -1,
  );

/**
 * The table that the plan has outermost, or one that was recorded surely outside it: the outermost of
 * points with errors would be too far out on the average.
 */
function outermost(ends: readonly PlacedEnd[], rank: (item: Item) => number, sign: 1 | -1): PlacedEnd | null {
  const [first, ...others] = [...ends].sort((a, b) => rank(a.item) - rank(b.item));
  if (first === undefined) return null;
  return others.reduce((best, end) => {
    const outside = sign * (best.measure - end.measure);
    return !end.planned && outside > marginOf(best.r95, end.r95) ? end : best;
  }, first);
}
