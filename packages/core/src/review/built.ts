/**
 * The layout as it stands on the ground: each station whose tables were recorded moved there, along the course, to its side and
 * offset; its sign, its trash and single tables where they were recorded; the rest as the practice lays it out from there. A station
 * of which nothing was recorded stands as planned. A table stays where the practice lays it out unless it was recorded farther from
 * there than the errors of both points: tables shaken by errors would overlap.
 */
import { pointAt } from '../course/locate.ts';
import type { LonLat } from '../finding.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { eastNorth, fromEastNorth } from '../geodesy/frame.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { ChosenPlace, PlacedAt } from '../layout/items.ts';
import { byThePlan, laySeen } from '../layout/layStation.ts';
import { withStreets } from '../layout/streets.ts';
import { type Layout, type StationLayout, isTable } from '../layout/layout.ts';
import { courseById, itemOf } from '../plan/lookups.ts';
import type { PassChoice, Plan, PlanStation } from '../plan/plan.ts';
import type { ItemKind } from '../kinds.ts';
import { type CourseTable, leadPass } from '../station/directions.ts';
import { courseTable, seeStation, stationPasses } from '../station/seeStation.ts';
import { courseEnds, spacingOf } from '../station/spacing.ts';
import type { Direction, StationPass } from '../station/station.ts';
import { type Held, type HeldStation, recordedError } from './placedHeld.ts';
import { type OnCourse, type PlacedGround, endPoints, recorded } from './placedGround.ts';
import { pinKind } from './placedMatch.ts';
import type { Anchor } from './placedStation.ts';

/** Metres by which everything recorded of a station is moved, to see what its error may change. */
export interface Shift {
  /** Its id. */
  readonly station: string;
  readonly east: number;
  readonly north: number;
}

/** The layout as recorded; of a layout made before, the stations that a shift does not touch. Its plan has no waivers. */
export function builtLayout(held: Held, shift: Shift | null = null, before: Layout | null = null): Layout {
  const { layout } = held;
  const courses = courseTable(layout.courses);
  const touched = new Set(held.grounds.filter(({ matched }) => matched.length > 0).map(({ station }) => station.id));
  const laid = layout.stations.map((station) => {
    if (!touched.has(station.id)) return { plan: station.station, station };
    if (before !== null && station.id !== shift?.station) {
      const known = before.stations[station.index]!;
      return { plan: known.station, station: known };
    }
    const built = builtStation(station, held, courses, shift?.station === station.id ? shift : null);
    return { plan: built.station, station: built };
  });
  const plan = { ...layout.plan, stations: laid.map((one) => one.plan), waivers: [] };
  const stations = laid.map(({ station }) => station);
  return {
    ...layout,
    plan,
    stations,
    spacing: plan.races.map((race) => spacingOf(race, courseEnds(courses.get(race.course)!.course), stations)),
  };
}

function builtStation(planned: StationLayout, held: Held, courses: CourseTable, shift: Shift | null): StationLayout {
  const { plan } = held.layout;
  const grounds = held.grounds.filter(({ station }) => station === planned);
  const standing = held.stations.find(({ placed }) => placed.station === planned.id);
  const shaken: Moving = (at) => (shift === null ? at : moved(at, shift.east, shift.north));
  const known = {
    ...planned.station,
    practice: { ...planned.station.practice, pinR95: recordedError(held, planned.id)! },
  };
  const station = standing === undefined ? known : movedStation(known, planned, standing, { plan, courses, shaken });
  const changed = { ...plan, stations: plan.stations.map((one, k) => (k === planned.index ? station : one)) };
  const seen = seeStation(changed, planned.index, courses);
  // A pin that was recorded has a place; one that was not has the plan's, as before.
  if (!seen.ok) return planned;
  const { number } = planned;
  const lay = (placedAt: PlacedAt): StationLayout => ({
    ...withStreets(laySeen(changed, seen.value, courses, planned.needs, placedAt), held.layout.ground),
    ...(number === undefined ? {} : { number }),
  });
  const around = placesAround(grounds, shaken);
  const first = lay(choosing(around, station));
  const tables = standing === undefined ? [] : tablesElsewhere(first, grounds[0]!, standing.anchor, shaken);
  return tables.length === 0 ? first : lay(choosing([...around, ...tables], station));
}

type Moving = (at: LonLat) => LonLat;

/** A place recorded for an item of a direction. */
interface Recorded extends ChosenPlace {
  readonly direction: Direction;
  readonly kind: ItemKind;
}

const choosing = (places: readonly Recorded[], station: PlanStation): PlacedAt => {
  const planned = byThePlan(station);
  return (direction, kind) =>
    places.find((one) => one.kind === kind && sameDirection(one.direction, direction)) ?? planned(direction, kind);
};

/** Directions as planned and as built have no names: the lead's is the lead's, others run the same way on the same course. */
const sameDirection = (one: Direction, other: Direction): boolean =>
  one.lead === other.lead &&
  (one.lead || (one.course === other.course && azimuthDifference(one.azimuthDeg, other.azimuthDeg) <= 90));

/** Signs and trash drops of all directions, where they were recorded. */
function placesAround(grounds: readonly PlacedGround[], shaken: Moving): Recorded[] {
  return grounds.flatMap((ground) => {
    const { direction } = ground;
    const [sign] = recorded('sign', ground);
    const trash = trashAt(ground);
    return [
      ...(sign === undefined ? [] : [{ direction, kind: 'sign' as const, at: shaken(sign.point.at) }]),
      ...(trash === null ? [] : [{ direction, kind: 'trash' as const, ...trash, at: shaken(trash.at) }]),
    ];
  });
}

/** Both ends where both were recorded; one point alone may be any place of the stretch, and moves it only where it lies outside. */
function trashAt(ground: PlacedGround): ChosenPlace | null {
  const item = itemOf(ground.direction, 'trash');
  const points = recorded('trash', ground);
  const [first] = points;
  if (item === undefined || first === undefined) return null;
  const last = points.at(-1)!;
  if (last !== first) return { at: first.point.at, length: last.measure - first.measure };
  if (first.end === 'from') return { at: first.point.at };
  const length = item.to - item.from;
  const before = first.end === 'to' || first.measure > item.to ? length : 0;
  if (first.end === null && first.measure >= item.from && first.measure <= item.to) return null;
  return upstreamOf(first, before, ground);
}

/** The place so many metres of course before a recorded point, beside the course as that is. */
function upstreamOf(on: OnCourse, by: number, { layout, direction }: PlacedGround): ChosenPlace {
  if (by === 0) return { at: on.point.at };
  const { course } = courseById(layout.courses, direction.course);
  return { at: pointAt(course, on.measure - by, on.offset)?.at ?? on.point.at };
}

/** Tables of the lead that were recorded surely elsewhere than the practice lays them out from the moved pin. */
function tablesElsewhere(laid: StationLayout, ground: PlacedGround, anchor: Anchor, shaken: Moving): Recorded[] {
  const lead = laid.directions[0];
  if (lead === undefined) return [];
  return ground.direction.items
    .filter((item) => isTable(item) && item.kind !== 'handOut')
    .flatMap((item) => {
      const [from, to] = endPoints(item, ground);
      const on = from ?? to;
      const stands = itemOf(lead, item.kind)?.at[0] ?? null;
      if (on === null || stands === null) return [];
      const chosen = from === null ? upstreamOf(on, item.to - item.from, ground) : { at: on.point.at };
      const at = shaken(chosen.at);
      const room = on.point.r95 + (item === anchor.item ? 0 : anchor.point.r95);
      return away(at, stands) <= room ? [] : [{ direction: lead, kind: item.kind, at }];
    });
}

const away = (a: LonLat, b: LonLat): number => inverseLength(a[0], a[1], b[0], b[1]);

const moved = (at: LonLat, east: number, north: number): LonLat => fromEastNorth(at, east, north);

/** The plan's station with its pin where its tables were recorded, on the side that was recorded. */
function movedStation(
  known: PlanStation,
  planned: StationLayout,
  { anchor, placed }: HeldStation,
  { plan, courses, shaken }: { readonly plan: Plan; readonly courses: CourseTable; readonly shaken: Moving },
): PlanStation {
  const { on: _, side: __, ...rest } = known;
  const lead = planned.directions[0]!;
  const side = anchor.on === null || anchor.on.side === 'unclear' ? lead.side : anchor.on.side;
  const station: PlanStation = {
    ...rest,
    at: shaken(pinAt(planned, anchor, courses)),
    ...(side === 'unclear' ? {} : { side }),
  };
  return withPasses(station, planned, placed.along ?? 0, stationPasses(plan, station, station.at!, courses));
}

/** The recorded table is the pin where it stands there by the plan; another lies as far from it as by the plan. */
function pinAt(planned: StationLayout, { item, end, point, on, planned: place }: Anchor, courses: CourseTable): LonLat {
  if (item.kind === pinKind(planned) && end === 0) return point.at;
  const lead = planned.directions[0]!;
  const by = on === null ? 0 : on.measure - (end === 0 ? item.from : item.to);
  const offset = on === null || on.side === 'unclear' ? item.offset : on.offset;
  const along = on === null ? null : pointAt(courses.get(lead.course)!.course, lead.measure + by, offset);
  if (along !== null) return along.at;
  const { east, north } = eastNorth(place, point.at);
  return moved(planned.at, east, north);
}

/** Passes that the plan names by number are those that run by the moved pin as they did by the plan's, so many metres on. */
function withPasses(
  station: PlanStation,
  planned: StationLayout,
  by: number,
  passes: readonly StationPass[],
): PlanStation {
  const renamed = ({ race, pass }: PassChoice): PassChoice => {
    const was = planned.passes.find((one) => one.race === race && one.pass === pass);
    const own = passes.filter((one) => one.race === race);
    if (was === undefined || own.length === 0) return { race, pass };
    const far = (one: StationPass): number => Math.abs(one.measure - was.measure - by);
    return { race, pass: own.reduce((best, one) => (far(one) < far(best) ? one : best)).pass };
  };
  const chosen: PlanStation = {
    ...station,
    ...(station.lead === undefined ? {} : { lead: renamed(station.lead) }),
    ...(typeof station.passes === 'string' ? {} : { passes: station.passes.map(renamed) }),
  };
  const led = planned.passes[leadPass(planned.station, planned.passes)];
  if (led === undefined) return chosen;
  const lead = renamed({ race: led.race, pass: led.pass });
  const now = passes[leadPass(chosen, passes)];
  return now === undefined || (now.race === lead.race && now.pass === lead.pass) ? chosen : { ...chosen, lead };
}
