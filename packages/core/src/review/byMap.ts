/** What checks ask of the plan's map, and by which words and sources they rest on it. A map is good to metres: it warns. */
import type { GroundAlong } from '../ground/along.ts';
import type { PlanGround } from '../ground/planGround.ts';
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import type { Item } from '../layout/layout.ts';
import type { ReasonCode } from '../text/params/checks.ts';
import { type Case, type Ground, type ReviewCode, atStation } from './check.ts';
import { itemsStanding, standsAlong } from './standing.ts';
import { kindsOf } from './together.ts';

/** Where vehicles may not stand, which tables are no better at. */
export const TRAFFIC_CODE =
  'Uniform Vehicle Code § 11-1003 for standing vehicles (its number from memory, its words read in town codes); local code decides';

/** The same on places that fire engines need. */
export const FIRE_CODE =
  'Uniform Vehicle Code § 11-1003 for standing vehicles (its number from memory, its words read in town codes); the fire marshal decides';

/** Why nothing can be judged by the map. */
export const noMap = ({ plan, ground }: Pick<Layout, 'plan' | 'ground'>): ReasonCode | null =>
  ground !== undefined ? null : plan.ground === undefined ? 'no-ground' : 'ground-unread';

/** The day of the map. */
export const dayOfMap = ({ ground }: PlanGround): string | null => ground.source.date;

/** What stands somewhere along a course, one for each table row, sign and box. */
export interface Span {
  readonly item: Item;
  readonly direction: LaidDirection;
  readonly from: number;
  readonly to: number;
}

/** All that stands at a station, by course distance of the runners who meet it. */
export const spansOf = (station: StationLayout): Span[] =>
  itemsStanding(station).flatMap(({ item, direction }) =>
    standsAlong(item).map(([from, to]) => ({ item, direction, from, to })),
  );

/** The ground along the course of a direction; `undefined` where the map does not have it. */
export const alongOf = ({ ground }: Ground, { course }: LaidDirection): GroundAlong | undefined =>
  ground?.along.get(course);

/** A span that meets something of the map: `by` metres, `id` of what it meets. */
export interface Met<T> {
  readonly span: Span;
  readonly thing: T;
  readonly id: string;
  readonly by: number;
}

/** One case for each thing that is met, with all that meets it, that which meets it most first. */
export function casesOf<C extends ReviewCode, T>(
  met: readonly Met<T>[],
  station: StationLayout,
  caseOf: (worst: Met<T>, items: ReturnType<typeof kindsOf>) => Pick<Case<C>, 'params' | 'measured' | 'limit' | 'unit'>,
): Case<C>[] {
  const things = new Map<string, Met<T>[]>();
  for (const one of met) things.set(one.id, [...(things.get(one.id) ?? []), one]);
  return [...things.values()].map((all) => {
    const worst = all.toSorted((a, b) => b.by - a.by)[0]!;
    const { item, direction, from } = worst.span;
    const [at] = item.at;
    const place = {
      ...atStation(station, item.byHand === true ? `items/${item.kind}` : ''),
      course: direction.course,
      item: item.kind,
      measure: from,
    };
    const kinds = kindsOf(all.map(({ span }) => span.item));
    return { ...caseOf(worst, kinds), where: at === null ? place : { ...place, at } };
  });
}

/** So little of a map, metres, is rounding. */
const SAME = 0.05;

/** Metres by which a span reaches into a stretch of its course; 0 where it does not. */
export function reachInto({ from, to }: Span, stretch: { readonly from: number; readonly to: number }): number {
  const by = Math.min(to, stretch.to) - Math.max(from, stretch.from);
  return by > SAME ? by : 0;
}

/** Metres along the course from a span to a place; 0 beside it. */
export const gapTo = ({ from, to }: Span, measure: number): number => Math.max(from - measure, measure - to, 0);
