/**
 * Which segments of a course may be the nearest to a point up to 50 km away and up to 80° of latitude: boxes whose
 * nearest corner is farther than the best so far are left out. Measures by series about the point's latitude, which
 * are some centimetres off, and so gives every segment that may be nearest, mostly one or two.
 */
import { DEGREES, EQUATORIAL_RADIUS, RADIANS } from '../geodesy/ellipsoid.ts';
import { FAR_FRAME } from '../geodesy/farFrame.ts';
import type { Frame } from '../geodesy/frame.ts';
import type { Course } from './course.ts';
import { skipFrom } from './minima.ts';
import { BRANCHES, type IndexedCourse, visitBoxes } from './segmentIndex.ts';

/** A search from the origin of a frame. */
interface PlaneSearch {
  readonly course: Course;
  readonly frame: Frame;
  /** Of the origin, in the turn of the course's longitudes. */
  readonly lon: number;
  /** What the series leave out of a distance, over its cube. */
  readonly third: number;
  /** First vertices of segments that were nearer than all before, or nearly. */
  readonly vertices: number[];
  /** Squares of their distances. */
  readonly squares: number[];
  /** What is farther, metres, is not the nearest. */
  limit: number;
}

/** Segments that may be the nearest, by their first vertices in running order; `null` where none is within reach. */
export function nearestByPlane({ course, boxes: { levels } }: IndexedCourse, frame: Frame): readonly number[] | null {
  const root = levels[levels.length - 1]!;
  if (!frame.temperate || root[2]! - root[0]! > 180) return null;
  const lon = frame.lon + 360 * Math.round((0.5 * (root[0]! + root[2]!) - frame.lon) / 360);
  // Of the third order are 2 + 3·tan² parts in 24 of the distance over the radius squared; half as much again is left for what follows.
  const tan = frame.sin / frame.cos;
  const third = (2 + 3 * tan * tan) / (16 * EQUATORIAL_RADIUS * EQUATORIAL_RADIUS);
  const search: PlaneSearch = { course, frame, lon, third, vertices: [], squares: [], limit: Infinity };
  const { box: first, others } = likelyBox(search, levels);
  searchBox(search, first);
  if (!(search.limit <= FAR_FRAME)) return null;
  if (others <= search.limit)
    visitBoxes(
      levels,
      (level, k) => boundOf(search, level, k) <= search.limit,
      (box) => {
        if (box !== first) searchBox(search, box);
      },
    );
  return kept(search);
}

/** Down from the box around all, each time into the one that is least far; and how far all others are at least. */
function likelyBox(search: PlaneSearch, levels: readonly Float64Array[]): { box: number; others: number } {
  let box = 0;
  let others = Infinity;
  for (let depth = levels.length - 2; depth >= 0; depth--) {
    const level = levels[depth]!;
    const first = box * BRANCHES;
    const end = Math.min(first + BRANCHES, level.length / 4);
    let least = Infinity;
    for (let inner = first; inner < end; inner++) {
      const metres = boundOf(search, level, 4 * inner);
      if (metres < least) {
        if (least < others) others = least;
        least = metres;
        box = inner;
      } else if (metres < others) others = metres;
    }
  }
  return { box, others };
}

/** Metres, never more than the distance to the box at `k` of a level, as far as that is within the limit. */
function boundOf({ frame, lon, limit }: PlaneSearch, level: Float64Array, k: number): number {
  const { lat, meridian } = frame;
  const west = level[k]! - lon;
  const south = level[k + 1]! - lat;
  const east = level[k + 2]! - lon;
  const north = level[k + 3]! - lat;
  // The meridional radius changes by under 2e-4 within reach.
  const y = (south > 0 ? south : north < 0 ? -north : 0) * (0.9998 * RADIANS) * meridian;
  const dLon = west > 0 ? west : east < 0 ? -east : 0;
  if (dLon === 0 || y > limit) return y;
  // The parallel is shortest at one edge of the part of the box that is within reach.
  const reach = ((limit < FAR_FRAME ? limit : FAR_FRAME) / meridian) * (1.001 * DEGREES);
  const low = parallelAt(frame, south > reach ? reach : south < -reach ? -reach : south);
  const high = parallelAt(frame, north > reach ? reach : north < -reach ? -reach : north);
  const x = (low < high ? low : high) * dLon * RADIANS;
  return Math.sqrt(x * x + y * y);
}

/** Radius by which a difference of longitude counts on the way to a latitude `dLat` degrees from the origin. */
function parallelAt({ parallel, parallel1, parallel2 }: Frame, dLat: number): number {
  const u = 0.5 * RADIANS * dLat;
  return parallel + u * (parallel1 + u * parallel2);
}

function squareOf({ frame, lon, course }: PlaneSearch, vertex: number): number {
  const dLat = course.lat[vertex]! - frame.lat;
  const u = 0.5 * RADIANS * dLat;
  const x = parallelAt(frame, dLat) * (course.lon[vertex]! - lon);
  const y = (frame.meridian + u * (frame.meridian1 + u * frame.meridian2)) * dLat;
  return RADIANS * RADIANS * (x * x + y * y);
}

function searchBox(search: PlaneSearch, box: number): void {
  const { course } = search;
  const { raw } = course;
  const first = box * BRANCHES;
  const last = Math.min(first + BRANCHES, course.lon.length - 1);
  let skip = course.skips.length === 0 ? -1 : skipFrom(course, first);
  let most = search.limit * search.limit;
  let from = squareOf(search, first);
  for (let vertex = first; vertex < last; vertex++) {
    const to = squareOf(search, vertex + 1);
    if (vertex === skip) skip = skipFrom(course, vertex + 1);
    else {
      let squared = from < to ? from : to;
      // By the law of cosines: the foot lies inside where both ends' angles are acute.
      const length = raw[vertex + 1]! - raw[vertex]!;
      const over = length * length;
      const difference = from - to;
      if (difference < over && difference > -over) {
        const along = 0.5 * (difference + over);
        squared = from - (along * along) / over;
      }
      if (squared <= most) {
        search.vertices.push(vertex);
        search.squares.push(squared);
        const distance = Math.sqrt(Math.max(squared, 0));
        const limit = distance + 2 * (0.01 + search.third * distance * squared);
        if (limit < search.limit) {
          search.limit = limit;
          most = limit * limit;
        }
      }
    }
    from = to;
  }
}

/** What has stayed within the limit, in running order. */
function kept({ vertices, squares, limit }: PlaneSearch): readonly number[] {
  const within: number[] = [];
  const most = limit * limit;
  for (let k = 0; k < vertices.length; k++) if (squares[k]! <= most) within.push(vertices[k]!);
  return within.length > 1 ? within.sort((a, b) => a - b) : within;
}
