/**
 * Drop and collection runs. A vehicle is loaded at the start of a course at its `from`, drives the course at its
 * speed, stops for its `stop` at each station, and comes back the same length to load again (that way back is taken
 * to be off the course: an assumption, as is the place of loading). Stations in course order; the vehicle that is
 * free first takes the next load. No stop is planned that would stand on closed course: it is left out and reported.
 */
import type { Finding } from '../finding.ts';
import { DEFAULT_VEHICLE } from '../plan/defaults.ts';
import type { Plan, PlanVehicle } from '../plan/plan.ts';
import { timeAt, timelineOf } from './clockAlong.ts';
import type { Run, StationDay, Stop } from './day.ts';
import { NO_LIMIT, move, type Limits } from './drive.ts';
import { collectLoad, dropLoad, fillVehicle, kgOf, type Load } from './loads.ts';
import { supplyKey, supplyOf } from './packs.ts';
import { racedayFinding } from './racedayFinding.ts';
import { strongEnough, vehicleFindings, withRoom } from './vehicles.ts';

/** Where a station stands on the course of its lead direction, and the side of its tables: the drop's side. */
export interface RunSite {
  readonly station: string;
  readonly course: string;
  readonly measure: number;
  readonly side: Stop['side'];
}

type Kind = Run['kind'];

/** All that one kind of run on one course goes by. */
interface Trip {
  readonly kind: Kind;
  readonly course: string;
  readonly limits: Limits;
  readonly sites: ReadonlyMap<string, RunSite>;
  readonly days: ReadonlyMap<string, StationDay>;
}

interface Driven {
  readonly run: Run;
  /** When the vehicle stands loaded or empty at the start again. */
  readonly free: number;
  readonly misses: readonly Miss[];
}

const SLACK = 1e-6;

/** The earliest that a stop may begin for the station's own sake: collection waits until all is packed. */
const releaseOf = (trip: Trip, station: string): number =>
  trip.kind === 'collect' ? (trip.days.get(station)?.packedAt ?? trip.days.get(station)?.openUntil ?? 0) : 0;

/** Getting out and finding the place, seconds: an assumption. */
export const STOP_LEAST: number = 3 * 60;

/** How long a vehicle stands at a station, seconds: the plan's `stop`, else by the kilograms. */
export const stopTime = ({ stop, unload = DEFAULT_VEHICLE.unload }: PlanVehicle, kg: number): number =>
  stop ?? STOP_LEAST + (kg / unload) * 60;

/** A load that is left out because the course closes, or dropped after the crew is due. */
interface Miss {
  readonly left: boolean;
  readonly vehicle: PlanVehicle;
  readonly site: RunSite;
  readonly kg: number;
  /** Seconds. */
  readonly late: number;
  /** When it is, or would be, unloaded. */
  readonly done: number;
  /** When the first runner comes; `null` where nobody does. */
  readonly first: number | null;
}

/** What there is to report of the loads of a course that were left out, or were late, the worst first: one cause, one finding. */
function missFinding(misses: readonly Miss[]): Finding[] {
  const [worst] = misses;
  if (worst === undefined) return [];
  const { left, vehicle, site, late, done } = worst;
  const stations = [...new Set(misses.map((miss) => miss.site.station))];
  const own = { station: site.station, measure: site.measure };
  const where = { course: site.course, ...(stations.length === 1 ? own : {}) };
  // Of one station its name stands before the sentence.
  const all = stations.length === 1 ? {} : { stations };
  if (left) {
    const kg = misses.reduce((sum, miss) => sum + miss.kg, 0);
    const closed = { kg, vehicle: vehicle.name, late, ...all };
    return [racedayFinding('drop-closed', closed, { severity: 'error', where, measured: late, limit: 0, unit: 's' })];
  }
  const due = done - late;
  return [
    racedayFinding(
      'drop-late',
      { vehicle: vehicle.name, done, due, ...all },
      // Late for the crew is a warning; behind the first runner there is nothing to hand out.
      {
        severity: misses.some((miss) => miss.first !== null && miss.done > miss.first) ? 'error' : 'warning',
        where,
        measured: done,
        limit: due,
        unit: 's',
      },
    ),
  ];
}

/** One finding for each kind of miss. */
function missFindings(misses: readonly Miss[]): Finding[] {
  const worstFirst = [...misses].sort((a, b) => b.late - a.late);
  return [true, false].flatMap((left) => missFinding(worstFirst.filter((miss) => miss.left === left)));
}

/** One vehicle with its loads, from the start of the course on. */
function driveRun(trip: Trip, vehicle: PlanVehicle, loads: readonly Load[], from: number): Driven {
  const speed = vehicle.kmh / 3.6;
  const stops: Stop[] = [];
  const misses: Miss[] = [];
  let [at, ready] = [0, from];
  for (const { station, pieces } of loads) {
    const site = trip.sites.get(station)!;
    const way = move(
      trip.limits,
      at,
      site.measure,
      Math.max(ready, releaseOf(trip, station) - Math.abs(site.measure - at) / speed),
      speed,
    );
    const done = way.arrive + stopTime(vehicle, kgOf(pieces));
    const first = trip.days.get(station)?.quantiles?.first ?? null;
    const late = Math.max(way.late, done - (timeAt(trip.limits.closes, site.measure) ?? Infinity));
    if (late > SLACK) {
      misses.push({ vehicle, site, kg: kgOf(pieces), late, done, first, left: true });
      continue;
    }
    const due = trip.kind === 'drop' ? (trip.days.get(station)?.crewAt ?? done) : done;
    if (done > due + SLACK)
      misses.push({ vehicle, site, kg: kgOf(pieces), late: done - due, done, first, left: false });
    const before = stops.at(-1);
    if (before !== undefined) stops[stops.length - 1] = { ...before, leave: way.leave };
    stops.push({
      station,
      arrive: way.arrive,
      leave: done,
      measure: site.measure,
      side: site.side,
      load: pieces.map(({ each, ...piece }) => ({ ...piece, kg: piece.count * each })),
    });
    [at, ready] = [site.measure, done];
  }
  const run = {
    vehicle: vehicle.id,
    kind: trip.kind,
    stops,
    kg: stops.reduce((sum, { load }) => sum + load.reduce((kg, one) => kg + one.kg, 0), 0),
  };
  return { run, free: stops.length === 0 ? from : ready + at / speed + stopTime(vehicle, 0), misses };
}

/** Pieces that no vehicle can carry are taken off, each with a finding. */
function carried(plan: Plan, loads: readonly Load[]): { readonly queue: Load[]; readonly findings: Finding[] } {
  const most = Math.max(...withRoom(plan.vehicles).map(({ kg }) => kg));
  const findings = loads.flatMap(({ station, pieces }) =>
    pieces
      .filter(({ each }) => each > most)
      .map((piece) => {
        const where = { station, item: supplyKey(piece) };
        return racedayFinding(
          'load-too-heavy',
          { supply: supplyOf(piece), kg: piece.each, most },
          { severity: 'error', where, measured: piece.each, limit: most, unit: 'kg' },
        );
      }),
  );
  const queue = loads
    .map(({ station, pieces }) => ({ station, pieces: pieces.filter(({ each, count }) => each <= most && count > 0) }))
    .filter(({ pieces }) => pieces.length > 0);
  return { queue, findings };
}

/** All runs of one kind on one course; `free` is moved on as the vehicles drive. */
function runsOn(
  plan: Plan,
  trip: Trip,
  loads: readonly Load[],
  free: Map<string, number>,
): { readonly runs: Run[]; readonly findings: Finding[] } {
  const { queue, findings } = carried(plan, loads);
  const runs: Run[] = [];
  const misses: Miss[] = [];
  let rest: readonly Load[] = queue;
  while (rest.length > 0) {
    const head = rest[0]!.pieces[0]!;
    const able = withRoom(plan.vehicles).filter(({ kg }) => kg >= head.each);
    const vehicle = able.reduce((first, one) => (free.get(one.id)! < free.get(first.id)! ? one : first));
    const filled = fillVehicle(rest, vehicle);
    const driven = driveRun(trip, vehicle, filled.taken, free.get(vehicle.id)!);
    if (driven.run.stops.length > 0) runs.push(driven.run);
    misses.push(...driven.misses);
    free.set(vehicle.id, driven.free);
    rest = filled.rest;
  }
  return { runs, findings: [...findings, ...missFindings(misses)] };
}

const sitesOn = (sites: readonly RunSite[], course: string): RunSite[] =>
  sites.filter((site) => site.course === course).sort((a, b) => a.measure - b.measure);

/** What the clock does not say of a course on which vehicles drive. */
function clockFindings(plan: Plan, course: string): Finding[] {
  const times = (['accessOpens', 'closes', 'reopens'] as const).filter(
    (key) => timelineOf(plan.clock, course, key).times.length === 0,
  );
  if (times.length === 0) return [];
  return [racedayFinding('clock-missing', { course, times }, { severity: 'note', where: { path: '/clock', course } })];
}

/** Days whose load goes nowhere: no vehicle, or no place on a course. */
function unplanned(plan: Plan, days: readonly StationDay[], sites: readonly RunSite[]): Finding[] {
  const laden = days.filter(({ packs }) => packs.length > 0);
  if (laden.length > 0 && withRoom(plan.vehicles).length === 0) {
    const kg = laden.reduce((sum, day) => sum + kgOf(dropLoad(plan, day).pieces), 0);
    return [
      racedayFinding(
        'vehicles-missing',
        { stations: laden.length, kg },
        { severity: 'note', where: { path: '/vehicles' } },
      ),
    ];
  }
  return laden
    .filter(({ id }) => !sites.some(({ station }) => station === id))
    .map(({ id }) => racedayFinding('drop-nowhere', {}, { severity: 'error', where: { station: id } }));
}

/**
 * Drop and collection runs of a race day, in the order of the plan's courses and of measures; and what is short, by how
 * much. Only the clock of a station's own course is looked at. `sites`: where each station's lead direction passes it.
 */
export function runsOf(
  plan: Plan,
  days: readonly StationDay[],
  sites: readonly RunSite[],
): { readonly runs: readonly Run[]; readonly findings: readonly Finding[] } {
  const findings = unplanned(plan, days, sites);
  if (withRoom(plan.vehicles).length === 0) return { runs: [], findings };
  const heaviest = days.reduce((most, day) => Math.max(most, kgOf(dropLoad(plan, day).pieces)), 0);
  findings.push(...vehicleFindings(plan.vehicles, heaviest));
  const strong = { ...plan, vehicles: strongEnough(plan.vehicles, heaviest) };
  const dayOf = new Map(days.map((day) => [day.id, day]));
  const siteOf = new Map(sites.map((site) => [site.station, site]));
  const free = new Map(plan.vehicles.map(({ id, from }) => [id, from]));
  const runs: Run[] = [];
  for (const kind of ['drop', 'collect'] as const) {
    for (const { id: course } of plan.courses) {
      const along = sitesOn(sites, course).flatMap(({ station }) =>
        dayOf.get(station)?.packs.length ? [dayOf.get(station)!] : [],
      );
      if (along.length === 0) continue;
      if (kind === 'drop') findings.push(...clockFindings(plan, course));
      const after = timelineOf(plan.clock, course, 'reopens');
      const limits: Limits =
        kind === 'drop'
          ? { opens: timelineOf(plan.clock, course, 'accessOpens'), closes: timelineOf(plan.clock, course, 'closes') }
          : { opens: after.times.length > 0 ? after : timelineOf(plan.clock, course, 'sweep'), closes: NO_LIMIT };
      const trip: Trip = { kind, course, limits, sites: siteOf, days: dayOf };
      const made = runsOn(
        strong,
        trip,
        along.map((day) => (kind === 'drop' ? dropLoad(plan, day) : collectLoad(plan, day))),
        free,
      );
      runs.push(...made.runs);
      findings.push(...made.findings);
    }
  }
  return { runs, findings };
}
