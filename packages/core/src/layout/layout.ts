/**
 * The layout: each station with its passes, its directions and every item on the ground.
 * Checks, exports and the map read this record.
 */
import type { Side } from '../course/course.ts';
import type { StreetPlace } from '../ground/along.ts';
import type { PlanGround } from '../ground/planGround.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import type { ItemKind, Plan } from '../plan/plan.ts';
import type { DayNeeds } from './stretches.ts';
import { formOf } from '../kinds.ts';
import type { Metres } from '../units.ts';
import type { Direction, RaceSpacing, SeenStation } from '../station/station.ts';

/** Where a station stands by its street, and who says so. `plan`: the plan's own words, all of them in `street`; `map`: by the plan's map. */
export interface ToldPlace extends StreetPlace {
  readonly by: 'plan' | 'map';
}

/** One thing laid out for one direction. Index 0 of each pair is the upstream end as those runners meet it. */
export interface Item {
  readonly kind: ItemKind;
  /** Course distance of the upstream end, metres, on the direction's course; that of the downstream end in `to`. */
  readonly from: Metres;
  readonly to: Metres;
  /** From the pin's foot along the course, metres, negative upstream. */
  readonly along: readonly [Metres, Metres];
  /** The same by measuring wheel at the item's offset; `null` where the line at that offset folds. */
  readonly wheel: readonly [Metres, Metres] | null;
  /** By how much a wheel may read otherwise at the farther end, metres: the offset is not known better. */
  readonly wheelMargin: Metres;
  /** Of the road, as these runners see it. */
  readonly side: Side;
  /** `null` where an end falls before the start, past the finish or in a skipped gap. */
  readonly at: readonly [LonLat | null, LonLat | null];
  /** Offset at which it stands, metres, left positive. */
  readonly offset: Metres;
  /** Text on a sign. */
  readonly wording?: string;
  /** Of a trash drop, in running order. */
  readonly boxes?: readonly { readonly measure: Metres; readonly at: LonLat | null }[];
  /** Present, and true, where the plan places it by hand. */
  readonly byHand?: boolean;
  /** By its street, at its upstream end; absent without a map, or where that knows no street. */
  readonly street?: StreetPlace;
}

/** Tables and the hand-out line, which all directions of a station share; boards and boxes are each direction's own. */
export const isTable = ({ kind }: { readonly kind: ItemKind }): boolean =>
  formOf(kind) === 'table' || formOf(kind) === 'line';

/** A direction, and the items as those runners meet them. */
export interface LaidDirection extends Direction {
  readonly items: readonly Item[];
}

/** One station with its passes, its directions and every item on the ground. */
export interface StationLayout extends Omit<SeenStation, 'directions'> {
  /** The lead first. */
  readonly directions: readonly LaidDirection[];
  /** By which people call it, from 1: along the course, or as the plan keeps it. Absent where the station was laid out alone. */
  readonly number?: number;
  /** What race day asks of the layout, where it has numbers. */
  readonly needs?: DayNeeds;
  /** By its street: in the plan's own words, else by its map. Absent where neither tells. */
  readonly street?: ToldPlace;
}

/** A plan with its courses and stations laid out. */
export interface Layout {
  readonly plan: Plan;
  /** In the plan's order, as are `stations`. */
  readonly courses: readonly IndexedCourse[];
  readonly stations: readonly StationLayout[];
  /** By race, in the plan's order. */
  readonly spacing: readonly RaceSpacing[];
  /** Absent where the plan names no map of the ground, or that cannot be read. */
  readonly ground?: PlanGround;
}

/** The number by which people call a station; its place in the plan where it was laid out alone. */
export const numberOf = ({ index, number }: Pick<StationLayout, 'index' | 'number'>): number => number ?? index + 1;

/** As people count them. */
export const byNumber = (stations: readonly StationLayout[]): readonly StationLayout[] =>
  stations.toSorted((a, b) => numberOf(a) - numberOf(b));
