/**
 * Places items on the ground for one direction: each end at its measure, moved square to the
 * course by the station's offset, to the station's side.
 */
import { type Course, type Side, courseLength, startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { toRaw } from '../course/scale.ts';
import type { LonLat } from '../finding.ts';
import type { PlanStation, Practice } from '../plan/plan.ts';
import type { Direction, StationPass } from '../station/station.ts';
import { boxCount, signWording } from '../station/wording.ts';
import type { Item } from './layout.ts';
import { type Stretch, servedOn } from './stretches.ts';
import { type WheelLine, offsetUncertainty, readWheel } from './wheel.ts';

/** What one direction's items are placed with. */
export interface Ground {
  readonly course: Course;
  /** Measure of the pin's foot on the pass along which the items are placed. */
  readonly foot: number;
  readonly side: Side;
  /** Lateral, metres, left positive. */
  readonly offset: number;
  readonly station: PlanStation;
  readonly practice: Practice;
  /** Trash boxes by race day's need; absent without a race day. */
  readonly boxes?: number | undefined;
  readonly wheelLine: WheelLine;
  /** Of the plan, BCP 47: signs are written in it. */
  readonly language: string;
}

/**
 * The lateral offset at which a direction's items stand, left positive: half the road's width and the
 * setback where the plan gives a width; else the pin's own where its side is clear and agrees; else
 * the practice's kerb on the declared side; else 0.
 */
export function offsetOf(direction: Direction, pass: StationPass, station: PlanStation, practice: Practice): number {
  if (direction.side === 'unclear') return 0;
  const sign = direction.side === 'left' ? 1 : -1;
  if (station.width !== undefined) return sign * (station.width / 2 + practice.setback);
  return sign * (pass.side === direction.side ? Math.abs(pass.offset) : practice.kerb);
}

/** Whether each stretch lies on the course, for choosing the pass that has room for all. */
export function hasRoom(course: Course, foot: number, stretches: readonly Stretch[]): boolean {
  const start = startMeasure(course);
  const length = courseLength(course);
  return stretches.every(({ from, to }) => {
    const [low, high] = [foot + Math.min(from, to), foot + Math.max(from, to)];
    return low >= start && high <= length && !spansSkip(course, low, high);
  });
}

/** One stretch as an item on the ground. */
export function placeItem(stretch: Stretch, ground: Ground): Item {
  const { foot, offset } = ground;
  const from = foot + stretch.from;
  const to = foot + stretch.to;
  const at = [placeEnd(ground, from), placeEnd(ground, to)] as const;
  const item: Item = {
    kind: stretch.kind,
    from,
    to,
    along: [stretch.from, stretch.to],
    ...wheelOf(ground, from, to),
    side: ground.side,
    at,
    offset,
  };
  if (stretch.kind === 'sign') return { ...item, wording: signWording(servedOn(ground.station), ground.language) };
  if (stretch.kind === 'trash') return { ...item, boxes: boxesOf(ground, from, to) };
  return item;
}

const placeEnd = ({ course, offset }: Ground, measure: number): LonLat | null =>
  pointAt(course, measure, offset)?.at ?? null;

/** Wheel readings from the pin's foot to both ends (`null` where the line folds on the way to either), with the larger margin. */
export function wheelOf(ground: Ground, from: number, to: number): Pick<Item, 'wheel' | 'wheelMargin'> {
  const uncertainty = offsetUncertainty(ground.course, ground.station.width);
  const read = (measure: number): ReturnType<typeof readWheel> =>
    readWheel(ground.wheelLine, ground.foot, measure, ground.offset, uncertainty);
  const upstream = read(from);
  const downstream = from === to ? upstream : read(to);
  const wheelMargin = Math.max(upstream?.margin ?? 0, downstream?.margin ?? 0);
  const lengths = [upstream?.length ?? null, downstream?.length ?? null] as const;
  return { wheel: lengths[0] === null || lengths[1] === null ? null : [lengths[0], lengths[1]], wheelMargin };
}

function boxesOf(ground: Ground, from: number, to: number): { measure: number; at: LonLat | null }[] {
  const count = ground.station.boxes ?? ground.boxes ?? boxCount(to - from, ground.practice.boxEvery);
  return Array.from({ length: count }, (_, k) => {
    const measure = count === 1 ? (from + to) / 2 : from + ((to - from) * k) / (count - 1);
    return { measure, at: placeEnd(ground, measure) };
  });
}

/** Rounding of measures that counts as the same place, metres. */
const SAME = 1e-6;

/** True where a skipped gap lies between two measures, or at one of them: the stretch is in two places. */
export const spansSkip = (course: Course, from: number, to: number): boolean =>
  course.skips.some((skip) => skip.raw >= toRaw(course, from) - SAME && skip.raw <= toRaw(course, to) + SAME);
