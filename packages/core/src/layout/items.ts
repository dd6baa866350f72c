/**
 * The items of each served direction of a station. The lead's tables are placed by the practice;
 * other directions meet the same tables, and get a sign and a trash drop of their own.
 */
import type { Pass, Side } from '../course/course.ts';
import { nearestOn, passesOf } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import type { ItemKind, PlanStation, Practice } from '../plan/plan.ts';
import type { CourseTable } from '../station/directions.ts';
import type { Direction, StationPass } from '../station/station.ts';
import { type Item, type LaidDirection, isTable } from './layout.ts';
import { type Ground, hasRoom, offsetOf, placeItem, wheelOf } from './place.ts';
import { wheelLine } from './wheel.ts';
import { type DayNeeds, type Stretch, aroundTables, handOutStretch, tableCounts, tableStretches } from './stretches.ts';

/** What the items of one station are laid out with. */
export interface StationGround {
  readonly station: PlanStation;
  readonly practice: Practice;
  readonly passes: readonly StationPass[];
  readonly courses: CourseTable;
  /** Metres of the hand-out line that one person takes. */
  readonly handSpacing: number;
  readonly day?: DayNeeds | undefined;
  /** Of the plan, BCP 47. */
  readonly language: string;
  /** Where an item of a direction stands that is not laid out by the practice: by the plan's hand, or as it was recorded. */
  readonly placedAt: PlacedAt;
}

/** A place that somebody chose for an item's upstream end; `length` of its stretch, metres, where that is known too. */
export interface ChosenPlace {
  readonly at: LonLat;
  readonly length?: number;
}

/** The chosen place of an item of a direction, if it has one. */
export type PlacedAt = (direction: Direction, kind: ItemKind) => ChosenPlace | undefined;

/** Every direction with its items, the lead first. */
export function layDirections(directions: readonly Direction[], ground: StationGround): LaidDirection[] {
  const laid: LaidDirection[] = [];
  for (const direction of directions) {
    const lead = laid[0];
    laid.push(lead === undefined ? layLead(direction, ground) : layOther(direction, lead, ground));
  }
  return laid;
}

function layLead(direction: Direction, ground: StationGround): LaidDirection {
  const { station, practice, day, handSpacing } = ground;
  const tables = tableStretches(tableCounts(station, day), practice);
  const line = day === undefined ? null : handOutStretch(tables, day.crew.handOut, handSpacing);
  const served = line === null ? tables : [...tables, line];
  const around = aroundTables(served, practice);
  const stretches = around === null ? [] : [around.sign, ...served, around.trash];
  const pass = passWithRoom(direction, ground, stretches);
  const placing = groundOf(direction, pass, ground, stretches);
  return {
    ...alongPass(direction, pass),
    items: stretches
      .map((stretch) => placeItem(stretch, placing))
      .map((item) => byHand(item, direction, placing, ground)),
  };
}

const alongPass = (direction: Direction, pass: StationPass): Direction => ({
  ...direction,
  course: pass.course,
  race: pass.race,
  measure: pass.measure,
  azimuthDeg: pass.azimuthDeg,
});

/** What a direction's items are placed with; the wheel's line reaches as far as the stretches do. */
function groundOf(
  direction: Direction,
  pass: StationPass,
  { station, practice, courses, language, day }: StationGround,
  stretches: readonly Stretch[],
): Ground {
  const { course } = courses.get(pass.course)!;
  const foot = pass.measure;
  const reach = stretches.flatMap(({ from, to }) => [from, to]);
  const line = wheelLine(course, foot + Math.min(0, ...reach), foot + Math.max(0, ...reach));
  return {
    course,
    foot,
    side: direction.side,
    offset: offsetOf(direction, pass, station, practice),
    station,
    practice,
    boxes: day?.boxes,
    wheelLine: line,
    language,
  };
}

/** The first served pass of the direction on whose course all items find room, else the first. */
function passWithRoom(
  direction: Direction,
  { passes, courses }: StationGround,
  stretches: readonly Stretch[],
): StationPass {
  const served = direction.passes.map((k) => passes[k]!).filter((pass) => pass.served);
  const candidates = served.length > 0 ? served : direction.passes.map((k) => passes[k]!);
  return (
    candidates.find((pass) => hasRoom(courses.get(pass.course)!.course, pass.measure, stretches)) ?? candidates[0]!
  );
}

/** Tables as another direction's runners meet them: both ends projected on their pass, upstream first. */
function layOther(direction: Direction, lead: LaidDirection, ground: StationGround): LaidDirection {
  const { practice, passes } = ground;
  const first = direction.passes.map((k) => passes[k]!).find((pass) => pass.served) ?? passes[direction.passes[0]!]!;
  const tables = lead.items
    .filter(isTable)
    .flatMap((item) => metTable(item, first, ground))
    .sort((a, b) => a.stretch.from - b.stretch.from);
  const around = aroundTables(
    tables.map(({ stretch }) => stretch),
    practice,
  );
  if (around === null) return { ...direction, items: [] };
  const placing = groundOf(direction, first, ground, [around.sign, around.trash]);
  const met = tables.map(({ stretch, at }): Item => ({ ...placeItem(stretch, placing), at }));
  const own = [around.sign, around.trash]
    .map((stretch) => placeItem(stretch, placing))
    .map((item) => byHand(item, direction, placing, ground));
  return { ...direction, items: [own[0]!, ...met, own[1]!] };
}

function metTable(item: Item, pass: StationPass, ground: StationGround): { stretch: Stretch; at: Item['at'] }[] {
  const indexed = ground.courses.get(pass.course)!;
  const ends = item.at.flatMap((at) => {
    const met = at === null ? null : passNear(indexed, at, pass.measure, ground.practice);
    return at === null || met === null ? [] : [{ at, along: met.measure - pass.measure }];
  });
  const [a, b] = ends;
  if (a === undefined || b === undefined) return [];
  const [up, down] = a.along <= b.along ? [a, b] : [b, a];
  return [{ stretch: { kind: item.kind, from: up.along, to: down.along }, at: [up.at, down.at] }];
}

/** The pass of a point nearest, along the course, to a measure. */
function passNear(indexed: IndexedCourse, at: LonLat, measure: number, practice: Practice): Pass | null {
  const passes = passesOf(indexed, at, practice);
  return passes.reduce<Pass | null>(
    (best, pass) =>
      best === null || Math.abs(pass.measure - measure) < Math.abs(best.measure - measure) ? pass : best,
    null,
  );
}

/** An item whose place was chosen: its own point, its measure and side read back from the course. */
function byHand(item: Item, direction: Direction, placing: Ground, ground: StationGround): Item {
  const placed = ground.placedAt(direction, item.kind);
  if (placed === undefined) return item;
  const indexed = ground.courses.get(placing.course.id)!;
  const pass = passNear(indexed, placed.at, item.from, ground.practice) ?? nearestOn(indexed, placed.at);
  const from = pass.measure;
  const stretch = {
    kind: item.kind,
    from: from - placing.foot,
    to: from - placing.foot + (placed.length ?? item.to - item.from),
  };
  const side: Side = pass.side;
  const offset = side === 'unclear' ? item.offset : pass.offset;
  const moved = placeItem(stretch, { ...placing, side, offset });
  // The wheel runs along the station's own offset; only the item's foot moved.
  const line = wheelLine(placing.course, Math.min(placing.foot, moved.from), Math.max(placing.foot, moved.to));
  return {
    ...moved,
    ...wheelOf({ ...placing, wheelLine: line }, moved.from, moved.to),
    at: [placed.at, moved.from === moved.to ? placed.at : moved.at[1]],
    byHand: true,
  };
}
