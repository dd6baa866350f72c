/**
 * Local minima of the distance from a point to a course, in running order, with the highest
 * distance that the course reaches between each and the next.
 */
import type { LonLat } from '../finding.ts';
import { project } from '../geodesy/frame.ts';
import { type IndexedCourse, type VertexRun, nearRuns } from './segmentIndex.ts';

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

/** Vertices around a point, projected; scratch of one search. */
interface Near {
  readonly indexed: IndexedCourse;
  readonly first: number;
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly skips: ReadonlySet<number>;
}

/** Minima within `radius` metres of a point; `margin` metres beyond it the course counts as gone. */
export function minimaNear(indexed: IndexedCourse, at: LonLat, radius: number, margin: number): Minimum[] {
  const found: Minimum[] = [];
  const skips = new Set(indexed.course.skips.map((skip) => skip.vertex));
  for (const run of nearRuns(indexed, at, radius + margin)) {
    const open = found.at(-1);
    if (open !== undefined) open.rise = Infinity;
    searchRun(projectRun(indexed, at, run, skips), run, radius, found);
  }
  const last = found.at(-1);
  if (last !== undefined) last.rise = Infinity;
  return found;
}

function projectRun(indexed: IndexedCourse, at: LonLat, run: VertexRun, skips: ReadonlySet<number>): Near {
  const count = run.last - run.first + 1;
  const east = new Float64Array(count);
  const north = new Float64Array(count);
  project(at, indexed.course.lon, indexed.course.lat, run.first, count, east, north);
  return { indexed, first: run.first, east, north, skips };
}

function searchRun(near: Near, run: VertexRun, radius: number, found: Minimum[]): void {
  const { east, north, skips } = near;
  const count = run.last - run.first;
  const finish = near.indexed.course.lon.length - 1;
  let falling = run.first === 0;
  for (let k = 0; k < count; k++) {
    lift(found, Math.hypot(east[k]!, north[k]!));
    const vertex = run.first + k;
    if (skips.has(vertex)) {
      const open = found.at(-1);
      if (open !== undefined) open.rise = Infinity;
      falling = true;
      continue;
    }
    const dx = east[k + 1]! - east[k]!;
    const dy = north[k + 1]! - north[k]!;
    const share = -(east[k]! * dx + north[k]! * dy) / (dx * dx + dy * dy);
    // Nearest at its own start: a minimum only if the course came down to it, or begins here.
    if (share <= 0) {
      if (falling) keep(near, k, 0, share < 0 && vertex === 0 ? 'start' : undefined, radius, found);
      falling = false;
    } else if (share < 1) {
      keep(near, k, share, undefined, radius, found);
      falling = false;
    } else falling = true;
    const ends = vertex + 1 === finish || skips.has(vertex + 1);
    if (falling && ends) {
      keep(near, k, 1, share > 1 && vertex + 1 === finish ? 'finish' : undefined, radius, found);
      falling = false;
    }
  }
  lift(found, Math.hypot(east[count]!, north[count]!));
}

function lift(found: Minimum[], distance: number): void {
  const open = found.at(-1);
  if (open !== undefined && distance > open.rise) open.rise = distance;
}

function keep(
  near: Near,
  k: number,
  share: number,
  end: 'start' | 'finish' | undefined,
  radius: number,
  found: Minimum[],
): void {
  const { east, north, first } = near;
  const { raw } = near.indexed.course;
  const x = east[k]! + share * (east[k + 1]! - east[k]!);
  const y = north[k]! + share * (north[k + 1]! - north[k]!);
  const distance = Math.hypot(x, y);
  if (distance > radius) return lift(found, distance);
  const from = raw[first + k]!;
  const place = { distance, raw: from + share * (raw[first + k + 1]! - from), east: x, north: y, rise: distance };
  const tangent = share > 0 && share < 1 ? alongSegment(near, k) : atVertex(near, share === 0 ? k : k + 1);
  found.push(end === undefined ? { ...place, ...tangent } : { ...place, ...tangent, end });
}

type Tangent = Pick<Minimum, 'tangentEast' | 'tangentNorth' | 'turnDeg'>;

function alongSegment({ east, north }: Near, k: number): Tangent {
  const dx = east[k + 1]! - east[k]!;
  const dy = north[k + 1]! - north[k]!;
  const length = Math.hypot(dx, dy);
  return { tangentEast: dx / length, tangentNorth: dy / length, turnDeg: 0 };
}

/** Mean of the two unit tangents at a projected vertex; a foot never stands on a run's inner edge, which is out of reach. */
function atVertex(near: Near, k: number): Tangent {
  const vertex = near.first + k;
  const before = k > 0 && !near.skips.has(vertex - 1) ? alongSegment(near, k - 1) : null;
  const after = k < near.east.length - 1 && !near.skips.has(vertex) ? alongSegment(near, k) : null;
  if (before === null || after === null) return (before ?? after)!;
  const x = before.tangentEast + after.tangentEast;
  const y = before.tangentNorth + after.tangentNorth;
  const length = Math.hypot(x, y);
  const cross = before.tangentEast * after.tangentNorth - before.tangentNorth * after.tangentEast;
  const dot = before.tangentEast * after.tangentEast + before.tangentNorth * after.tangentNorth;
  const turnDeg = Math.abs(Math.atan2(cross, dot)) * (180 / Math.PI);
  return length < 1e-9 ? { ...after, turnDeg } : { tangentEast: x / length, tangentNorth: y / length, turnDeg };
}
