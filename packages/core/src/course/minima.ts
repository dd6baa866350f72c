/**
 * Local minima of the distance from a point to a course, in running order, with the highest
 * distance that the course reaches between each and the next.
 */
import { DEGREES } from '../geodesy/ellipsoid.ts';
import { type Frame, type Spot, placeIn } from '../geodesy/frame.ts';
import type { Course } from './course.ts';
import { type IndexedCourse, type VertexRun, type Window, runsIn, windowAround } from './segmentIndex.ts';

/** A place where the course comes nearest before it moves away again. East and north are from the point, metres. */
export interface Minimum {
  readonly distance: number;
  /** Raw measure, metres. */
  readonly raw: number;
  readonly east: number;
  readonly north: number;
  /** Unit tangent there (at a vertex the mean of both segments'). */
  readonly tangentEast: number;
  readonly tangentNorth: number;
  /** Degrees that the course turns there; 0 inside a segment. */
  readonly turnDeg: number;
  /** The point lies beyond this end of the course. */
  readonly end?: 'start' | 'finish';
  /** Highest distance between this minimum and the next one, metres; Infinity where the course leaves the neighbourhood. */
  rise: number;
}

/** One search along runs of a course, in its point's frame; written as it goes, so that no vertex allocates. */
interface Search {
  readonly course: Course;
  readonly frame: Frame;
  readonly window: Window;
  readonly radius: number;
  readonly found: Minimum[];
  /** The segment at hand: its ends, metres from the point. */
  readonly from: Spot;
  readonly to: Spot;
  /** East and north of the segment before it, where the course runs through from it. */
  readonly before: Spot;
  through: boolean;
}

/** Minima within `radius` metres of the origin of a frame; `margin` metres beyond it the course counts as gone. */
export function minimaNear(indexed: IndexedCourse, frame: Frame, radius: number, margin: number): Minimum[] {
  const window = windowAround(indexed, [frame.lon, frame.lat], radius + margin);
  const found: Minimum[] = [];
  const search: Search = {
    course: indexed.course,
    frame,
    window,
    radius,
    found,
    from: { east: 0, north: 0 },
    to: { east: 0, north: 0 },
    before: { east: 0, north: 0 },
    through: false,
  };
  for (const run of runsIn(indexed, window)) {
    leave(found);
    searchRun(search, run);
  }
  leave(found);
  return found;
}

/** The course has gone out of reach: what comes next is apart. */
function leave(found: readonly Minimum[]): void {
  if (found.length > 0) found[found.length - 1]!.rise = Infinity;
}

function lift(found: readonly Minimum[], { east, north }: Spot): void {
  if (found.length === 0) return;
  const open = found[found.length - 1]!;
  const squared = east * east + north * north;
  if (squared > open.rise * open.rise) open.rise = Math.sqrt(squared);
}

/** Whether a whole segment lies on one side of the window, so that nothing of it is near. */
function isOutside({ west, south, east, north }: Window, x0: number, y0: number, x1: number, y1: number): boolean {
  return (
    (y0 > north && y1 > north) || (y0 < south && y1 < south) || (x0 < west && x1 < west) || (x0 > east && x1 > east)
  );
}

function searchRun(search: Search, { first, last }: VertexRun): void {
  const { course, frame, window, found, from, to, before } = search;
  const { lon, lat } = course;
  const finish = lon.length - 1;
  let skip = skipFrom(course, first);
  /** The course comes down to the vertex at hand, or begins there. */
  let falling = first === 0;
  /** The vertex at hand is in the frame. */
  let placed = false;
  search.through = false;
  for (let i = first; i < last; i++) {
    const jumps = i === skip;
    if (jumps || isOutside(window, lon[i]!, lat[i]!, lon[i + 1]!, lat[i + 1]!)) {
      if (jumps) skip = skipFrom(course, i + 1);
      leave(found);
      falling = jumps;
      placed = false;
      search.through = false;
      continue;
    }
    if (!placed) placeIn(frame, lon[i]!, lat[i]!, from);
    placeIn(frame, lon[i + 1]!, lat[i + 1]!, to);
    placed = true;
    lift(found, from);
    const dx = to.east - from.east;
    const dy = to.north - from.north;
    const along = -(from.east * dx + from.north * dy);
    const squared = dx * dx + dy * dy;
    // A rounding long: it has no direction, and the course is neither nearer nor farther for it.
    if (squared === 0 && i + 1 < last) continue;
    // Nearest at its own start: a minimum only if the course came down to it, or begins here.
    if (along <= 0) {
      if (falling) keep(search, i, 0, along < 0 && i === 0 ? 'start' : undefined);
      falling = false;
    } else if (along < squared) {
      keep(search, i, along / squared, undefined);
      falling = false;
    } else {
      falling = i + 1 !== finish && i + 1 !== skip;
      if (!falling) keep(search, i, 1, along > squared && i + 1 === finish ? 'finish' : undefined);
    }
    before.east = dx;
    before.north = dy;
    search.through = true;
    from.east = to.east;
    from.north = to.north;
  }
  if (placed) lift(found, from);
}

/** The first vertex from `first` on that stands before a jump; -1 where none is. */
export function skipFrom({ skips }: Course, first: number): number {
  for (const { vertex } of skips) if (vertex >= first) return vertex;
  return -1;
}

function keep(search: Search, i: number, share: number, end: Minimum['end']): void {
  const { course, radius, found, from, to, before } = search;
  const east = from.east + share * (to.east - from.east);
  const north = from.north + share * (to.north - from.north);
  if (east * east + north * north > radius * radius) return;
  found.push(minimumOf(course, i, share, from, to, share === 0 && search.through ? before : null, end));
}

/**
 * The place at `share` of the segment after vertex `i`, whose ends lie at `from` and `to`, as a minimum. At a vertex to which the
 * course runs by `before` its tangent is the mean of both segments'.
 */
export function minimumOf(
  course: Course,
  i: number,
  share: number,
  from: Spot,
  to: Spot,
  before: Spot | null,
  end: Minimum['end'],
): Minimum {
  const dx = to.east - from.east;
  const dy = to.north - from.north;
  const east = from.east + share * dx;
  const north = from.north + share * dy;
  const distance = Math.sqrt(east * east + north * north);
  const raw0 = course.raw[i]!;
  const raw = raw0 + share * (course.raw[i + 1]! - raw0);
  const length = Math.sqrt(dx * dx + dy * dy) || 1;
  let tangentEast = dx / length;
  let tangentNorth = dy / length;
  let turnDeg = 0;
  if (before !== null) {
    const { east: bx, north: by } = before;
    turnDeg = Math.abs(Math.atan2(bx * dy - by * dx, bx * dx + by * dy)) * DEGREES;
    const lengthBefore = Math.sqrt(bx * bx + by * by);
    const x = bx / lengthBefore + tangentEast;
    const y = by / lengthBefore + tangentNorth;
    const both = Math.sqrt(x * x + y * y);
    // Where the course turns right back, the way back counts.
    if (both >= 1e-9) {
      tangentEast = x / both;
      tangentNorth = y / both;
    }
  }
  // Written out twice: a spread would take longer than all of this.
  return end === undefined
    ? { distance, raw, east, north, tangentEast, tangentNorth, turnDeg, rise: distance }
    : { distance, raw, east, north, tangentEast, tangentNorth, turnDeg, rise: distance, end };
}
