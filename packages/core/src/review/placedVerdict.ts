/**
 * Whether a recorded distance keeps to its limits. Guarded intervals (JCGM 106:2012, "The role of
 * measurement uncertainty in conformity assessment", 8.3; memory of the text): *holds* inside both limits by
 * the margin k·σ or more, *fails* outside by as much, else *cannot tell*. With k = 1.645 at most 5 of 100
 * placements outside read holds, and at most 5 of 100 inside read fails (where the margin is larger than
 * half the limits' width nothing can hold, and up to 10 of 100 at the limit read fails).
 */
import type { Side } from '../course/course.ts';
import type { LonLat } from '../finding.ts';
import type { Item } from '../layout/layout.ts';
import { itemOf } from '../plan/lookups.ts';
import type { ItemKind } from '../plan/plan.ts';
import {
  type OnCourse,
  type PlacedEnd,
  type PlacedGround,
  firstTable,
  lastTable,
  marginOf,
  recorded,
} from './placedGround.ts';
import type { PlacedPoint } from './placedPoint.ts';
import { type Wheeled, asAlong, wheeledOf } from './placedWheel.ts';

/** Whether a recorded distance keeps to its limits; `cannot tell` where its error leaves that open. */
export type Verdict = 'holds' | 'fails' | 'cannot tell';

/** What is said of one recorded item's distance; all lengths course distance, metres. */
export interface PlacedVerdict {
  /** Its id. */
  readonly station: string;
  readonly item: ItemKind;
  /** The end of a trash drop that is meant; absent where one point stands for the whole stretch, and for signs. */
  readonly end?: 'from' | 'to';
  readonly course: string;
  readonly verdict: Verdict;
  /** Sign: to the first table. Trash: from the end of the last table. */
  readonly measured: number;
  /** The least and the most allowed. */
  readonly limit: readonly [number, number];
  /** By how much it must keep clear of a limit to be decided: 1.645 σ of `measured`. */
  readonly margin: number;
  /** How far to move it, downstream positive, to the middle of the limits; 0 where it holds. */
  readonly move: number;
  /** Where it was recorded. */
  readonly at: LonLat;
  /** How the distance was had. */
  readonly by: 'position' | 'wheel';
  /** Whether the table it refers to was recorded, or is where the plan has it. */
  readonly reference: 'placed' | 'planned';
  readonly side: Side;
  /** Probability of the side. */
  readonly confidence: number;
}

/** A verdict with what findings need to know of it. */
export interface Judged {
  readonly verdict: PlacedVerdict;
  readonly point: PlacedPoint;
  readonly item: Item;
  readonly wheeled: Wheeled;
  /** The same by position alone. */
  readonly byPosition: { readonly measured: number; readonly margin: number };
}

/** Rounding that is no deviation, metres. */
const SAME = 1e-6;

/** The guarded decision on one distance. */
export function decide(measured: number, [low, high]: readonly [number, number], margin: number): Verdict {
  const inside = Math.min(measured - low, high - measured) + SAME;
  if (inside >= margin) return 'holds';
  return inside - 2 * SAME <= -margin ? 'fails' : 'cannot tell';
}

interface Asked {
  readonly item: Item;
  readonly on: OnCourse;
  readonly reference: PlacedEnd;
  readonly limit: readonly [number, number];
  /** The end of the item that the point stands for. */
  readonly end?: 'from' | 'to';
}

/** Verdicts on a direction's sign and trash drop, as far as they were recorded. */
export function judge(ground: PlacedGround): Judged[] {
  return [...signAsked(ground), ...trashAsked(ground)].map((asked) => judgeOne(asked, ground));
}

function signAsked(ground: PlacedGround): Asked[] {
  const item = itemOf(ground.direction, 'sign');
  const reference = firstTable(ground);
  const [on] = recorded('sign', ground);
  if (item === undefined || reference === null || on === undefined) return [];
  const { signAhead, signTolerance } = ground.layout.plan.practice;
  return [{ item, on, reference, limit: [signAhead - signTolerance, signAhead + signTolerance] }];
}

/** One point stands for the stretch and may be anywhere in it; the outer ones of several, and such as say so, for its ends. */
function trashAsked(ground: PlacedGround): Asked[] {
  const item = itemOf(ground.direction, 'trash');
  const reference = lastTable(ground);
  const points = recorded('trash', ground);
  if (item === undefined || reference === null || points.length === 0) return [];
  // The practice has one tolerance for things along the course, the sign's.
  const { trashFrom, trashTo, signTolerance } = ground.layout.plan.practice;
  const [only] = points;
  if (points.length === 1 && only!.end === null)
    return [{ item, on: only!, reference, limit: [trashFrom - signTolerance, trashTo + signTolerance] }];
  const silent = points.filter(({ end }) => end === null);
  const from = points.find(({ end }) => end === 'from') ?? silent[0];
  const to = points.find(({ end }) => end === 'to') ?? silent.findLast((one) => one !== from);
  const ask = (on: OnCourse | undefined, end: 'from' | 'to', middle: number): Asked[] =>
    on === undefined ? [] : [{ item, on, reference, end, limit: [middle - signTolerance, middle + signTolerance] }];
  return [...ask(from, 'from', trashFrom), ...ask(to, 'to', trashTo)];
}

function judgeOne({ item, on, reference, limit, end }: Asked, ground: PlacedGround): Judged {
  const sign = item.kind === 'sign';
  const measured = sign ? reference.measure - on.measure : on.measure - reference.measure;
  const byPosition = { measured, margin: marginOf(on.point.r95, reference.r95) };
  const wheeled = wheeledOf(on.point);
  const reading =
    wheeled !== null && 'metres' in wheeled
      ? asAlong(wheeled.metres, item, end === 'to' ? 1 : 0, reference.item, sign ? 0 : 1)
      : null;
  const taken = reading ?? byPosition;
  const verdict = decide(taken.measured, limit, taken.margin);
  const off = taken.measured - (limit[0] + limit[1]) / 2;
  return {
    verdict: {
      station: ground.station.id,
      item: item.kind,
      ...(end === undefined ? {} : { end }),
      course: ground.direction.course,
      verdict,
      measured: taken.measured,
      limit,
      margin: taken.margin,
      move: verdict === 'holds' ? 0 : sign ? off : -off,
      at: on.point.at,
      by: reading === null ? 'position' : 'wheel',
      reference: reading === null && reference.planned ? 'planned' : 'placed',
      side: on.side,
      confidence: on.confidence,
    },
    point: on.point,
    item,
    wheeled,
    byPosition,
  };
}
