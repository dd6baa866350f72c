/**
 * Directions: passes that run the same way over the same ground, grouped before the served ones
 * are chosen. A pass belongs to a direction if, over the 30 m of course from the pin's foot on,
 * it runs within 10 m and 60° of that direction's first pass.
 */
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { courseLength, startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { azimuthDifference, wrapDegrees } from '../geodesy/ellipsoid.ts';
import { eastNorth } from '../geodesy/frame.ts';
import type { DeclaredSide, PlanStation } from '../plan/plan.ts';
import type { Direction, StationPass } from './station.ts';

const REACH = 30;
const STEP = 5;
const APART = 10;
const ANGLE = 60;

/** Courses by id. */
export type CourseTable = ReadonlyMap<string, IndexedCourse>;

/** A sample of the way that a pass takes: metres from the pin's foot on. */
interface Sample {
  readonly at: readonly [number, number];
  readonly azimuthDeg: number;
}

/** Groups of pass indices, each compared with the first of its group only, in the order of the passes. */
export function groupPasses(passes: readonly StationPass[], courses: CourseTable): number[][] {
  const groups: number[][] = [];
  passes.forEach((pass, k) => {
    const home = groups.find((group) => sameWay(passes[group[0]!]!, pass, courses));
    if (home === undefined) groups.push([k]);
    else home.push(k);
  });
  return groups;
}

function sameWay(first: StationPass, other: StationPass, courses: CourseTable): boolean {
  // Most opposite passes are told apart by their azimuth alone, without sampling.
  if (azimuthDifference(first.azimuthDeg, other.azimuthDeg) > ANGLE + 90) return false;
  const origin = first.foot;
  const track = samples(first, courses, origin, -2 * STEP, REACH + 2 * STEP);
  const way = samples(other, courses, origin, 0, REACH);
  return way.length > 0 && track.length > 0 && way.every((sample) => runsWith(sample, track));
}

function samples(
  pass: StationPass,
  courses: CourseTable,
  origin: readonly [number, number],
  from: number,
  to: number,
): Sample[] {
  const { course } = courses.get(pass.course)!;
  const taken: Sample[] = [];
  for (let along = from; along <= to; along += STEP) {
    const measure = pass.measure + along;
    // What the course does not run any more is not compared.
    if (measure < startMeasure(course) || measure > courseLength(course)) continue;
    const ground = pointAt(course, measure);
    if (ground === null) continue;
    const { east, north } = eastNorth(origin, ground.at);
    taken.push({ at: [east, north], azimuthDeg: ground.azimuthDeg });
  }
  return taken;
}

/** Within 10 m of the track, and within 60° of its course there. */
function runsWith(sample: Sample, track: readonly Sample[]): boolean {
  if (track.length === 1) return near(sample, track[0]!, track[0]!);
  return track.some((from, k) => k + 1 < track.length && near(sample, from, track[k + 1]!));
}

function near(sample: Sample, from: Sample, to: Sample): boolean {
  const [x, y] = sample.at;
  const dx = to.at[0] - from.at[0];
  const dy = to.at[1] - from.at[1];
  const length2 = dx * dx + dy * dy;
  const share = length2 === 0 ? 0 : Math.min(Math.max(((x - from.at[0]) * dx + (y - from.at[1]) * dy) / length2, 0), 1);
  const distance = Math.hypot(x - from.at[0] - share * dx, y - from.at[1] - share * dy);
  const azimuth = from.azimuthDeg + wrapDegrees(to.azimuthDeg - from.azimuthDeg) * share;
  return distance <= APART && azimuthDifference(sample.azimuthDeg, azimuth) <= ANGLE;
}

/** Whether a station serves a race: every race, unless the plan lists some. */
export const servesRace = (station: PlanStation, race: string): boolean =>
  station.races === undefined || station.races.includes(race);

/** Nearer than another pass by less than this, metres, a pass is not the one that the pin stands by: recorders err. */
const NEARER = 4;
/** Passes of one way run within this, metres, of each other, and within this many degrees. */
const ONE_WAY = 10;

/** The pass that leads, and what says so: the plan, the order of the races, the pin or the declared side. */
export interface Leading {
  /** Index of the pass. */
  readonly pass: number;
  readonly by: 'plan' | 'order' | 'pin' | 'side';
}

/** Index of the pass that leads: see `leadingPass`. */
export const leadPass = (station: PlanStation, passes: readonly StationPass[]): number =>
  leadingPass(station, passes).pass;

/**
 * The pass that leads: the plan's choice, else the first of the passes that it lists, else the one at the measure that `on`
 * names, else the first that the station's races make and that is not beyond an end, unless the pin stands by another way
 * or the declared side fits only another; else the first of any.
 */
export function leadingPass(station: PlanStation, passes: readonly StationPass[]): Leading {
  const { lead, passes: choice } = station;
  const named = [...(lead === undefined ? [] : [lead]), ...(typeof choice === 'string' ? [] : choice)];
  const chosen =
    named
      .map(({ race, pass: index }) => passes.findIndex((pass) => pass.race === race && pass.pass === index))
      .find((k) => k >= 0) ?? -1;
  if (chosen >= 0) return { pass: chosen, by: 'plan' };
  const at = passAtMeasure(station, passes);
  if (at >= 0) return { pass: at, by: 'plan' };
  const served = passes.flatMap((pass, k) => (servesRace(station, pass.race) ? [k] : []));
  const own = served.filter((k) => passes[k]!.end === undefined);
  return own.length > 0 ? leadOfOwn(own, station, passes) : { pass: served[0] ?? 0, by: 'order' };
}

/** Of some passes, in their order. */
function leadOfOwn(own: readonly number[], { side }: PlanStation, passes: readonly StationPass[]): Leading {
  const nearestOf = (some: readonly number[]): number =>
    some.reduce((best, k) => (passes[k]!.distance < passes[best]!.distance ? k : best), some[0]!);
  const oneWay = (a: number, b: number): boolean => runsAlong(passes[a]!, passes[b]!);
  const first = own[0]!;
  const reach = passes[nearestOf(own)]!.distance + ONE_WAY;
  // A declared side fits the passes that see the pin on it; on another road than the pin's it fits by chance.
  const fitting = side === undefined ? [] : own.filter((k) => passes[k]!.side === side && passes[k]!.distance <= reach);
  const fits = passes[first]!.side === 'unclear' || fitting.length === 0 || fitting.some((k) => oneWay(k, first));
  const pool = fits ? own.filter((k) => fitting.length === 0 || fitting.includes(k) || oneWay(k, first)) : fitting;
  const nearest = nearestOf(pool);
  const head = pool[0]!;
  const nearer = passes[head]!.distance - passes[nearest]!.distance > NEARER && !oneWay(head, nearest);
  const lead = nearer ? pool.find((k) => oneWay(k, nearest))! : head;
  return { pass: lead, by: oneWay(lead, first) ? 'order' : fits ? 'pin' : 'side' };
}

/** Whether two passes run the same way on one road, as far as the pin tells. */
const runsAlong = (a: StationPass, b: StationPass): boolean =>
  azimuthDifference(a.azimuthDeg, b.azimuthDeg) <= ANGLE && Math.abs(a.offset - b.offset) <= ONE_WAY;

/** The pass nearest, along the course, to the measure at which `on` places the station; −1 where no race that it serves runs that course. */
function passAtMeasure(station: PlanStation, passes: readonly StationPass[]): number {
  const { on } = station;
  if (on === undefined) return -1;
  const away = (k: number): number => Math.abs(passes[k]!.measure - on.measure);
  const own = passes.flatMap((pass, k) => (pass.course === on.course && servesRace(station, pass.race) ? [k] : []));
  return own.reduce((best, k) => (best < 0 || away(k) < away(best) ? k : best), -1);
}

/**
 * The passes with `served` set, of the races that the station serves. Default: every pass of the lead group
 * that is not beyond an end; `all`: every such pass of any group; a list: just those.
 */
export function markServed(
  station: PlanStation,
  passes: readonly StationPass[],
  leadGroup: readonly number[],
): StationPass[] {
  const { passes: choice } = station;
  return passes.map((pass, k) => {
    const chosen =
      choice === 'all' || choice === 'lead'
        ? pass.end === undefined && (choice === 'all' || leadGroup.includes(k))
        : choice.some(({ race, pass: index }) => race === pass.race && index === pass.pass);
    return { ...pass, served: chosen && servesRace(station, pass.race) };
  });
}

/** Groups with at least one served pass as directions, the lead first; `sideOf` tells the side of the tables for a pass that is not the lead. */
export function directionsOf(
  passes: readonly StationPass[],
  groups: readonly (readonly number[])[],
  lead: number,
  declared: DeclaredSide | undefined,
  sideOf: (pass: StationPass) => Direction['side'],
): Direction[] {
  const ordered = [...groups].sort((a, b) => Number(b.includes(lead)) - Number(a.includes(lead)));
  return ordered
    .filter((group) => group.includes(lead) || group.some((k) => passes[k]!.served))
    .map((group) => {
      const isLead = group.includes(lead);
      const first = passes[isLead ? lead : (group.find((k) => passes[k]!.served) ?? group[0]!)]!;
      const side = isLead ? (declared ?? first.side) : sideOf(first);
      return {
        lead: isLead,
        course: first.course,
        race: first.race,
        measure: first.measure,
        azimuthDeg: first.azimuthDeg,
        side,
        passes: group,
      };
    });
}
