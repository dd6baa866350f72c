/**
 * Track quality: what a recorder or a hasty drawing leaves in a track. Spikes (a vertex that leaves
 * and returns while the course goes on), standing-still tangles, jumps, and vertices too far apart
 * on a bend. Each is found with its size; nothing is changed but by `cleaned`.
 */
import { bisectLeft, cumsum, median } from 'd3-array';
import type { Finding, LonLat, Where } from '../finding.ts';
import type { Metres } from '../units.ts';
import { azimuthDifference } from '../geodesy/ellipsoid.ts';
import { segmentAzimuthDeg, lengthBetween } from '../geodesy/segment.ts';
import type { GpxSegment } from '../gpx/document.ts';
import { buildCourse } from './build.ts';
import { courseFinding } from './courseFinding.ts';
import { groundAt, placeAtRaw } from './locate.ts';
import { toMeasure } from './scale.ts';
import type { IndexedCourse } from './segmentIndex.ts';
import { tanglesOf } from './tangles.ts';
import { type Shape, finite, oneOf, position, recordOf, listOf, want } from '../wants.ts';
import { isSegment } from '../gpx/shapes.ts';
import { isWhere } from '../finding.ts';
import { wantIndexed } from './indexedShape.ts';

/** What a recorder or a hasty drawing left in one segment of a track. */
export interface Flaw {
  readonly kind: 'spike' | 'tangle' | 'jump' | 'sparse-bend';
  /** Index among the segments. */
  readonly segment: number;
  /** Index of the first vertex of the segment that the flaw holds. */
  readonly first: number;
  /** Index of the last. */
  readonly last: number;
  /** Of a spike its shorter leg, of a tangle its length, else the step. */
  readonly size: Metres;
  /** The first vertex. */
  readonly at: LonLat;
}

const isFlaw: Shape = recordOf<Flaw>('a flaw that flawsOf gives', {
  kind: oneOf('spike', 'tangle', 'jump', 'sparse-bend'),
  segment: finite,
  first: finite,
  last: finite,
  size: finite,
  at: position,
});

/** Both legs of a spike are at least this long, metres, and it turns at least so far, degrees. */
const SPIKE_LEG = 15;
const SPIKE_TURN = 135;
/** Without the spike the course goes on: its headings before and after differ by at most this. */
const SPIKE_ONWARD = 90;
/** A jump is at least this long, metres, and so many times the segment's median step. */
const JUMP = 100;
const JUMP_TIMES = 20;
/** On a bend that turns more than so many degrees, vertices are at most this far apart, metres. */
const SPARSE = 200;
const SPARSE_TURN = 10;

/**
 * Spikes, jumps and sparse bends of the segments of a track, in running order; tangles are found on a course by {@link tangleFindings}.
 * The limits are common practice, no source: spikes with legs of 15 m that turn 135°, jumps of 100 m and 20 usual steps, 200 m on a bend.
 * @example
 * ```ts
 * import { flawsOf } from '@halfcup/core/geometry';
 *
 * const segments = [{ lon: Float64Array.of(-30.104, -30.102, -30.1, -30.099, -30.1, -30.098, -30.096), lat: Float64Array.of(12.2, 12.2, 12.2, 12.201, 12.2001, 12.2, 12.2), ele: new Float64Array(7) }];
 * flawsOf(segments); // → [{ kind: 'spike', segment: 0, first: 3, last: 3, size: 147.49, at: [-30.099, 12.201] }]
 * ```
 */
export function flawsOf(segments: readonly GpxSegment[]): Flaw[] {
  want('flawsOf', 'segments', listOf(isSegment), segments);
  return segments.flatMap((segment, index) => {
    const line = lineOf(segment);
    const found = [...spikes(line), ...jumps(line), ...sparseBends(line)];
    return found.map((flaw) => ({ ...flaw, segment: index })).sort((a, b) => a.first - b.first);
  });
}

type Found = Omit<Flaw, 'segment'>;

/** A segment's vertices without repeated ones, and the length of the step from each to the next. */
interface Line {
  readonly segment: GpxSegment;
  readonly vertices: readonly number[];
  readonly lengths: Float64Array;
}

function lineOf(segment: GpxSegment): Line {
  const { lon, lat } = segment;
  const vertices: number[] = [];
  for (let i = 0; i < lon.length; i++) if (i === 0 || lon[i] !== lon[i - 1] || lat[i] !== lat[i - 1]) vertices.push(i);
  const lengths = new Float64Array(Math.max(vertices.length - 1, 0));
  for (let k = 0; k < lengths.length; k++) {
    const i = vertices[k]!;
    const j = vertices[k + 1]!;
    lengths[k] = lengthBetween(lon[i]!, lat[i]!, lon[j]!, lat[j]!);
  }
  return { segment, vertices, lengths };
}

function azimuthOf({ segment: { lon, lat }, vertices }: Line, step: number): number {
  const i = vertices[step]!;
  const j = vertices[step + 1]!;
  return segmentAzimuthDeg(lon[i]!, lat[i]!, lon[j]!, lat[j]!);
}

/** Degrees that the line turns between two steps. */
const turnBetween = (line: Line, a: number, b: number): number =>
  azimuthDifference(azimuthOf(line, a), azimuthOf(line, b));

function flaw(kind: Flaw['kind'], { segment, vertices }: Line, first: number, last: number, size: number): Found {
  const vertex = vertices[first]!;
  return { kind, first: vertex, last: vertices[last]!, size, at: [segment.lon[vertex]!, segment.lat[vertex]!] };
}

function spikes(line: Line): Found[] {
  const { lengths } = line;
  const found: Found[] = [];
  for (let k = 2; k + 1 < lengths.length; k++) {
    if (lengths[k - 1]! < SPIKE_LEG || lengths[k]! < SPIKE_LEG || turnBetween(line, k - 1, k) < SPIKE_TURN) continue;
    // At the turn of an out-and-back the course comes home the way it went; a spike's neighbours go on.
    if (turnBetween(line, k - 2, k + 1) > SPIKE_ONWARD) continue;
    found.push(flaw('spike', line, k, k, Math.min(lengths[k - 1]!, lengths[k]!)));
  }
  return found;
}

function jumps(line: Line): Found[] {
  const limit = Math.max(JUMP, JUMP_TIMES * (median(line.lengths) ?? 0));
  const found: Found[] = [];
  line.lengths.forEach((length, k) => {
    if (length >= limit) found.push(flaw('jump', line, k, k + 1, length));
  });
  return found;
}

function sparseBends(line: Line): Found[] {
  const { lengths } = line;
  const found: Found[] = [];
  for (let k = 1; k + 1 < lengths.length; k++) {
    // A bend turns on at both ends of the step; a corner between two straights turns at one.
    if (
      lengths[k]! <= SPARSE ||
      turnBetween(line, k - 1, k) <= SPARSE_TURN ||
      turnBetween(line, k, k + 1) <= SPARSE_TURN
    )
      continue;
    found.push(flaw('sparse-bend', line, k, k + 1, lengths[k]!));
  }
  return found;
}

/** Tangles of each segment by its own vertices, for cleaning. */
function tangles(segment: GpxSegment, index: number): Flaw[] {
  const built = buildCourse({ id: '', name: '', segments: [segment] });
  if (!built.ok) return [];
  const line = lineOf(segment);
  const at = cumsum(line.lengths);
  // Vertex k + 1 of the line stands at the end of step k.
  const vertexAt = (raw: number): number => Math.min(bisectLeft(at, raw - 1e-6) + 1, line.vertices.length - 1);
  return tanglesOf(built.value).map(({ from, to }) => ({
    ...flaw('tangle', line, from === 0 ? 0 : vertexAt(from), vertexAt(to), to - from),
    segment: index,
  }));
}

/**
 * Each flaw as a finding about `where`: `track-spike`, `track-jump`, `track-tangle` (warnings), `track-sparse-bend` (note).
 * @example
 * ```ts
 * import { flawFindings, flawsOf } from '@halfcup/core/geometry';
 *
 * const segments = [{ lon: Float64Array.of(-30.104, -30.102, -30.1, -30.099, -30.1, -30.098, -30.096), lat: Float64Array.of(12.2, 12.2, 12.2, 12.201, 12.2001, 12.2, 12.2), ele: new Float64Array(7) }];
 * const [finding] = flawFindings(flawsOf(segments), { file: 'run.gpx' });
 * finding?.code; // → 'track-spike'
 * finding?.message; // → 'Point 4 of segment 1 leaves the course by 147 m and returns. This spike adds 295 m. Delete the point, unless the course goes there.'
 * ```
 */
export function flawFindings(flaws: readonly Flaw[], where: Where): Finding[] {
  want('flawFindings', 'flaws', listOf(isFlaw), flaws);
  want('flawFindings', 'where', isWhere, where);
  return flaws.map(({ kind, size, segment, first, last, at }) => {
    const params = { size, segment: segment + 1, first: first + 1, last: last + 1 };
    const facts = { where: { ...where, at }, measured: size, unit: 'm' };
    return kind === 'sparse-bend'
      ? courseFinding('track-sparse-bend', { ...params, most: SPARSE }, { severity: 'note', ...facts })
      : courseFinding(`track-${kind}`, params, { severity: 'warning', ...facts });
  });
}

/**
 * Each standing-still tangle of a course as a warning about `where`, `track-tangle`: over 30 m of track within a circle of 10 m radius
 * that turns more than 720° in all (common practice, no source). Empty where there is none.
 * @example
 * ```ts
 * import { buildCourse, indexCourse, tangleFindings } from '@halfcup/core/geometry';
 *
 * // A recorder that stands still draws five rounds of 3 m radius in the middle of a straight.
 * const rounds = Array.from({ length: 50 }, (_, k) => [-30.095 + 3e-5 * Math.cos(k * 0.628), 12.2 + 3e-5 * Math.sin(k * 0.628)] as const);
 * const points = [[-30.1, 12.2] as const, ...rounds, [-30.09, 12.2] as const];
 * const built = buildCourse({ id: 'stop', name: 'Stop', segments: [{ lon: Float64Array.from(points, ([lon]) => lon), lat: Float64Array.from(points, ([, lat]) => lat), ele: new Float64Array(52) }] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * tangleFindings(indexCourse(built.value), {}).map(({ code, measured }) => ({ code, measured })); // → [{ code: 'track-tangle', measured: 99.62 }]
 * ```
 */
export function tangleFindings(indexed: IndexedCourse, where: Where): Finding[] {
  wantIndexed('tangleFindings', indexed);
  want('tangleFindings', 'where', isWhere, where);
  const { course, tangles: found } = indexed;
  return found.map(({ from, to }) => {
    const at = placeAtRaw(course, from);
    const place = at === null ? {} : { at: groundAt(course, at).at };
    const size = to - from;
    return courseFinding(
      'track-tangle',
      { size, from, to },
      {
        severity: 'warning',
        where: { ...where, measure: toMeasure(course, from), ...place },
        measured: size,
        unit: 'm',
      },
    );
  });
}

/**
 * The segments without the points of their spikes and the inner points of their tangles, and the flaws that were
 * taken out. Jumps and sparse bends cannot be cleaned: nobody knows what lies between. The segments given are not changed.
 * @example
 * ```ts
 * import { cleaned } from '@halfcup/core/geometry';
 *
 * const segments = [{ lon: Float64Array.of(-30.104, -30.102, -30.1, -30.099, -30.1, -30.098, -30.096), lat: Float64Array.of(12.2, 12.2, 12.2, 12.201, 12.2001, 12.2, 12.2), ele: new Float64Array(7) }];
 * const { segments: kept, removed } = cleaned(segments);
 * kept[0]?.lon; // → [-30.104, -30.102, -30.1, -30.1, -30.098, -30.096]
 * removed.map(({ kind, first }) => ({ kind, first })); // → [{ kind: 'spike', first: 3 }]
 * ```
 */
export function cleaned(segments: readonly GpxSegment[]): {
  readonly segments: GpxSegment[];
  readonly removed: readonly Flaw[];
} {
  want('cleaned', 'segments', listOf(isSegment), segments);
  const removed = [...flawsOf(segments).filter(({ kind }) => kind === 'spike'), ...segments.flatMap(tangles)];
  const kept = segments.map((segment, index) => {
    const gone = new Set<number>();
    for (const { kind, segment: home, first, last } of removed) {
      if (home !== index) continue;
      if (kind === 'spike') gone.add(first);
      else for (let i = first + 1; i < last; i++) gone.add(i);
    }
    const keep = (_: number, i: number): boolean => !gone.has(i);
    return gone.size === 0
      ? segment
      : { lon: segment.lon.filter(keep), lat: segment.lat.filter(keep), ele: segment.ele.filter(keep) };
  });
  return { segments: kept, removed };
}
