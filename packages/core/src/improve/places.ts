/**
 * Places that a station could take: along the course of its lead pass (or that of its `on`), at its own
 * offset and on its own side, serving the passes that it serves now, and inside the allowed zones.
 */
import { pointAt } from '../course/locate.ts';
import type { LonLat } from '../finding.ts';
import type { StationLayout } from '../layout/layout.ts';
import { layStation } from '../layout/layStation.ts';
import type { ItemKind, Plan, PlanStation } from '../plan/plan.ts';
import { local, localZones, depthIn } from '../review/zones.ts';
import { type CourseTable, leadPass } from '../station/directions.ts';
import type { StationPass } from '../station/station.ts';

/** A place of a station, laid out there. */
export interface Place {
  /** Metres along the course from where it stands now, upstream negative; 0: stays. */
  readonly shift: number;
  /** Items placed by hand that are to be placed by the practice again. */
  readonly dropped: readonly ItemKind[];
  readonly station: PlanStation;
  readonly laid: StationLayout;
}

/** Degrees to which a new place is written: 1 mm. */
const PIECES = 1e8;
/** Metres by which offset and place of the lead pass may miss what was meant, as on the inside of a bend. */
const OFFSET_MISS = 2;
const PLACE_MISS = 10;

/** Items of a station that a hand has placed. */
export const placedByHand = ({ items }: PlanStation): ItemKind[] => Object.keys(items) as ItemKind[];

/** Why a station cannot be moved at all; `null` where it can. */
export function whyStays({ station, passes }: StationLayout): 'fixed' | 'off the course' | 'serves no pass' | null {
  if (station.fixed) return 'fixed';
  if (passes.length === 0) return 'off the course';
  return passes.some(({ served }) => served) ? null : 'serves no pass';
}

/** The place where a station stands now. */
export const presentPlace = (laid: StationLayout): Place => ({ shift: 0, dropped: [], station: laid.station, laid });

/** The station moved by `shift` metres, items placed by hand kept where they are or given back to the practice; `null` where it cannot be. */
export function placeAt(
  shift: number,
  drop: boolean,
  present: StationLayout,
  plan: Plan,
  courses: CourseTable,
): Place | null {
  const moved = movedStation(present, shift, courses);
  if (moved === null) return null;
  const station = drop ? { ...moved, items: {} } : moved;
  const result = layStation(
    { ...plan, stations: plan.stations.with(present.index, station) },
    present.index,
    courses,
    present.needs,
  );
  if (!result.ok) return null;
  const laid = result.value;
  if (!runsOn(present, laid, shift) || !isAllowed(laid.at, plan)) return null;
  return { shift, dropped: drop ? placedByHand(present.station) : [], station, laid };
}

function movedStation({ station, passes }: StationLayout, shift: number, courses: CourseTable): PlanStation | null {
  if (station.on !== undefined) {
    const measure = Math.round((station.on.measure + shift) * 1e6) / 1e6;
    return measure < 0 ? null : { ...station, on: { ...station.on, measure } };
  }
  const lead = passes[leadPass(station, passes)]!;
  const ground = pointAt(courses.get(lead.course)!.course, lead.measure + shift, lead.offset);
  if (ground === null) return null;
  const [lon, lat] = ground.at;
  return { ...station, at: [Math.round(lon * PIECES) / PIECES, Math.round(lat * PIECES) / PIECES] };
}

/** Whether the lead pass is the same one and came along by as much, and the station serves each race as often as before, in the same order. */
function runsOn(present: StationLayout, laid: StationLayout, shift: number): boolean {
  const [from, to] = [present, laid].map(({ station, passes }) => passes[leadPass(station, passes)]);
  if (from === undefined || to === undefined || from.race !== to.race || from.pass !== to.pass) return false;
  const along =
    present.station.on === undefined
      ? to.measure - from.measure - shift
      : Math.abs(to.measure - from.measure) - Math.abs(shift);
  if (Math.abs(along) > PLACE_MISS || Math.abs(to.offset - from.offset) > OFFSET_MISS) return false;
  return sameServed(servedOf(present), servedOf(laid), Math.abs(shift));
}

const servedOf = ({ passes }: StationLayout): StationPass[] => passes.filter(({ served }) => served);

const sameServed = (before: readonly StationPass[], after: readonly StationPass[], within: number): boolean =>
  before.length === after.length &&
  before.every(
    (pass, k) =>
      pass.race === after[k]!.race && Math.abs(pass.measure - after[k]!.measure) <= within * 1.1 + PLACE_MISS,
  );

function isAllowed(at: LonLat, { zones }: Plan): boolean {
  const allowed = localZones(zones, 'allowed', at);
  return allowed.length === 0 || allowed.some((zone) => depthIn(zone, local(at, at)) >= 0);
}
