/**
 * Other legs by a station's stretch of road: each time that any course that is run comes within 10 m of it, where it comes
 * from and goes to, and which way it runs. A leg stays with the road as long as it is within 15 m, or 30 m where a
 * line is recorded; it is seen from 150 m before the stretch to 150 m after, so that a leg which shares the road is told from one that crosses it at a small angle.
 * Taken every 3 m, in a plane: 1 mm.
 */
import { max } from 'd3-array';
import type { Course } from '../course/course.ts';
import { placeAtRaw, pointOf, slicePlaces } from '../course/locate.ts';
import { toMeasure, toRaw } from '../course/scale.ts';
import { type IndexedCourse, runsIn, windowAround } from '../course/segmentIndex.ts';
import type { LonLat } from '../finding.ts';
import { eastNorth, fromEastNorth, project } from '../geodesy/frame.ts';
import type { LaidDirection, Layout, StationLayout } from '../layout/layout.ts';
import { courseById } from '../plan/lookups.ts';

/** Metres from the stretch's line within which another leg is by it, and beyond which it has left. */
const NEAR = 10;
const LEFT = 15;
/** The same where one of the two lines is recorded: on one road recorders wander apart by more than a road is wide. */
const LEFT_RECORDED = 30;
/** Course before and after the stretch that is looked at, metres. */
const AROUND = 150;
const STEP = 3;
/** A stretch longer than this, metres, is an error of the plan, which other checks tell. */
const LONGEST = 3000;
/** A leg that runs along and does not leave has a side from this on, metres, where lines are drawn on purpose. */
const SHIFTED = 4;

/** One place of another leg, beside the stretch. */
export interface Beside {
  readonly at: readonly [east: number, north: number];
  /** Course distance of the other leg. */
  readonly measure: number;
  /** Course distance of the stretch's own course at the foot. */
  readonly along: number;
  /** Left of the own course positive, metres. */
  readonly lateral: number;
}

/** How a leg comes to the road, or goes: from a side of it, along it, or it begins or ends there. */
export interface End {
  readonly is: 'side' | 'along' | 'end';
  /** −1 right, 1 left, 0 not told. */
  readonly side: -1 | 0 | 1;
}

/** One time that a course comes by the stretch. */
export interface OtherLeg {
  readonly course: Course;
  readonly origin: LonLat;
  readonly comes: End;
  readonly goes: End;
  /** Which way it runs beside the own course. */
  readonly runs: 'with' | 'against' | 'across';
  /** In its own running order, as long as it stays with the road. */
  readonly places: readonly Beside[];
}

/** From the sign to the last box, by course distance; `null` where nothing stands. */
export function stretchOf({ items }: LaidDirection): readonly [from: number, to: number] | null {
  if (items.length === 0) return null;
  return [Math.min(...items.map(({ from }) => from)), Math.max(...items.map(({ to }) => to))];
}

const known = new WeakMap<LaidDirection, { readonly courses: Layout['courses']; readonly legs: readonly OtherLeg[] }>();

/** All other legs by a direction's stretch, of the courses that races run. */
export function otherLegs(direction: LaidDirection, layout: Layout): readonly OtherLeg[] {
  const before = known.get(direction);
  if (before?.courses === layout.courses) return before.legs;
  const stretch = stretchOf(direction);
  const own = stretch === null ? null : ownLine(courseById(layout.courses, direction.course).course, stretch);
  const run = new Set(layout.plan.races.map(({ course }) => course));
  const legs =
    own === null ? [] : layout.courses.filter(({ course }) => run.has(course.id)).flatMap((one) => legsOf(one, own));
  known.set(direction, { courses: layout.courses, legs });
  return legs;
}

interface OwnLine {
  readonly course: Course;
  readonly origin: LonLat;
  /** Raw measures of its ends. */
  readonly from: number;
  readonly to: number;
  readonly east: readonly number[];
  readonly north: readonly number[];
  readonly raw: readonly number[];
  /** Farthest from the origin, metres. */
  readonly radius: number;
  /** Beyond which another leg has left, metres. */
  readonly left: number;
}

function ownLine(course: Course, [first, last]: readonly [number, number]): OwnLine | null {
  if (last - first > LONGEST) return null;
  const [from, to] = [toRaw(course, first - AROUND), toRaw(course, last + AROUND)];
  // Marks that are wrong may make a thousand kilometres of line out of it.
  if (to - from > 2 * (LONGEST + 2 * AROUND)) return null;
  const middle = placeAtRaw(course, toRaw(course, (first + last) / 2));
  const places = slicePlaces(course, from, to);
  if (middle === null || places.length < 2) return null;
  const origin = pointOf(course, middle);
  const points = places.map((place) => eastNorth(origin, pointOf(course, place)));
  return {
    course,
    origin,
    from,
    to,
    east: points.map(({ east }) => east),
    north: points.map(({ north }) => north),
    raw: places.map(({ raw }) => raw),
    radius: max(points, ({ east, north }) => Math.hypot(east, north))!,
    left: LEFT,
  };
}

/** What a place of another course is to the stretch. */
type Kind = 'own' | 'beyond' | 'far' | 'beside';

function legsOf(indexed: IndexedCourse, line: OwnLine): OtherLeg[] {
  const recorded = [indexed.course, line.course].some(({ drawn }) => drawn === 'recorded');
  const own = { ...line, left: recorded ? LEFT_RECORDED : LEFT };
  const legs: OtherLeg[] = [];
  for (const { first, last } of runsIn(indexed, windowAround(indexed, own.origin, own.radius + own.left)))
    for (const leg of legsOfRun(indexed.course, first, last, own)) legs.push(leg);
  return legs;
}

function legsOfRun(course: Course, first: number, last: number, own: OwnLine): OtherLeg[] {
  const legs: OtherLeg[] = [];
  let places: Beside[] = [];
  let comes: Kind | null = null;
  let before: Kind | null = null;
  const close = (goes: Kind | null): void => {
    if (places.some(({ lateral }) => Math.abs(lateral) <= NEAR)) legs.push(legOf(course, places, comes, goes, own));
    places = [];
  };
  eachPlace(course, first, last, own, (kind, place) => {
    if (kind === 'beside') {
      if (places.length === 0) comes = before;
      places.push(place!);
    } else if (places.length > 0) close(kind);
    before = kind;
  });
  if (places.length > 0) close(null);
  return legs;
}

/** Places of a run of vertices in running order, each with what it is to the stretch. */
function eachPlace(
  course: Course,
  first: number,
  last: number,
  own: OwnLine,
  take: (kind: Kind, place: Beside | null) => void,
): void {
  const count = last - first + 1;
  const [east, north] = [new Float64Array(count), new Float64Array(count)];
  project(own.origin, course.lon, course.lat, first, count, east, north);
  for (let k = 0; k < count - 1; k++) {
    const [raw, next] = [course.raw[first + k]!, course.raw[first + k + 1]!];
    // A skipped gap is no way.
    const gap = course.skips.some(({ vertex }) => vertex === first + k);
    const pieces = gap ? 1 : Math.max(Math.ceil((next - raw) / STEP), 1);
    for (let piece = 0; piece < pieces; piece++) {
      const share = piece / pieces;
      const x = east[k]! + (east[k + 1]! - east[k]!) * share;
      const y = north[k]! + (north[k + 1]! - north[k]!) * share;
      const at = raw + (next - raw) * share;
      if (course === own.course && at >= own.from && at <= own.to) take('own', null);
      else placed(x, y, toMeasure(course, at), own, take);
    }
    if (gap) take('far', null);
  }
}

/** Nearest foot on the stretch's line, all segments tried: there are some hundred. */
function placed(
  x: number,
  y: number,
  measure: number,
  own: OwnLine,
  take: (kind: Kind, place: Beside | null) => void,
): void {
  let [least, segment, foot] = [Infinity, 0, 0];
  for (let k = 0; k < own.east.length - 1; k++) {
    const [dx, dy] = [own.east[k + 1]! - own.east[k]!, own.north[k + 1]! - own.north[k]!];
    const length2 = dx * dx + dy * dy;
    const t = length2 === 0 ? 0 : ((x - own.east[k]!) * dx + (y - own.north[k]!) * dy) / length2;
    const inside = Math.min(Math.max(t, 0), 1);
    const away = (x - own.east[k]! - inside * dx) ** 2 + (y - own.north[k]! - inside * dy) ** 2;
    if (away < least) [least, segment, foot] = [away, k, t];
  }
  const last = own.east.length - 2;
  if ((segment === 0 && foot < 0) || (segment === last && foot > 1)) return take('beyond', null);
  const distance = Math.sqrt(least);
  if (distance > own.left) return take('far', null);
  const [dx, dy] = [own.east[segment + 1]! - own.east[segment]!, own.north[segment + 1]! - own.north[segment]!];
  const across = dx * (y - own.north[segment]!) - dy * (x - own.east[segment]!);
  const share = Math.min(Math.max(foot, 0), 1);
  const raw = own.raw[segment]! + (own.raw[segment + 1]! - own.raw[segment]!) * share;
  const lateral = across < 0 ? -distance : distance;
  return take('beside', { at: [x, y], measure, along: toMeasure(own.course, raw), lateral });
}

function legOf(
  course: Course,
  places: readonly Beside[],
  comes: Kind | null,
  goes: Kind | null,
  own: OwnLine,
): OtherLeg {
  const [first, last] = [places[0]!, places.at(-1)!];
  const drawn = course.drawn !== 'recorded' && own.course.drawn !== 'recorded';
  const endOf = (kind: Kind | null, { lateral }: Beside): End => {
    const side = lateral < 0 ? -1 : 1;
    if (kind === 'far') return { is: 'side', side };
    if (kind !== 'beyond') return { is: 'end', side: 0 };
    return { is: 'along', side: drawn && Math.abs(lateral) >= SHIFTED ? side : 0 };
  };
  const progress = last.along - first.along;
  const way = last.measure - first.measure;
  const runs = Math.abs(progress) < way / 2 ? 'across' : progress > 0 ? 'with' : 'against';
  return { course, origin: own.origin, comes: endOf(comes, first), goes: endOf(goes, last), runs, places };
}

/** Half of the road on which a station stands, metres: as wide as the plan gives it, else to the practice's kerb. */
export const halfRoad = ({ station, practice }: StationLayout): number =>
  station.width === undefined ? practice.kerb : station.width / 2;

/** Where a place beside a stretch is on the ground. */
export const groundOfPlace = ({ origin }: OtherLeg, { at: [east, north] }: Beside): LonLat =>
  fromEastNorth(origin, east, north);
