/**
 * Builds a course from segments of points: duplicates dropped and counted, longitudes made
 * continuous, gaps between segments joined, skipped or refused, long segments cut along the
 * geodesic so that each is straight to well under 1 mm.
 */
import { type Finding, type LonLat, type Result, type Where, bad, good, isWhere } from '../finding.ts';
import { RADIANS, wrapDegrees } from '../geodesy/ellipsoid.ts';
import { between } from '../geodesy/karney.ts';
import { type Frame, frameAt } from '../geodesy/frame.ts';
import { SHORT, lengthBetween } from '../geodesy/segment.ts';
import type { GpxSegment } from '../gpx/document.ts';
import { foundOf } from '../text/found.ts';
import { lineFinding } from './lineFinding.ts';
import { type Course, type Drawn, type GapRule, type Skip, isDrawn, isGapRule } from './course.ts';
import { LONGEST_COURSE } from './longest.ts';
import { type Shape, aFlag, aText, listOf, maybe, recordOf, want } from '../wants.ts';
import { isColumns } from '../gpx/shapes.ts';

/** A gap up to this many metres is joined whatever the rule. */
export const JOINED_GAP = 50;

/** What a course is built from. */
export interface CourseInput {
  /** What findings and races call it. */
  readonly id: string;
  readonly name: string;
  /** In running order; degrees, elevations in metres or NaN. */
  readonly segments: readonly GpxSegment[];
  /** `recorded` where nothing is said. */
  readonly drawn?: Drawn;
  /** `refuse` where nothing is said. */
  readonly gaps?: GapRule;
  /** Runs from the last point to the first. */
  readonly reverse?: boolean;
  /** Goes into each finding. */
  readonly where?: Where;
}

const isCourseInput: Shape = recordOf<CourseInput>('a line { id, name, segments }', {
  id: aText,
  name: aText,
  segments: listOf(isColumns),
  drawn: maybe(isDrawn),
  gaps: maybe(isGapRule),
  reverse: maybe(aFlag),
  where: maybe(isWhere),
});

interface Gap {
  readonly after: number;
  readonly length: number;
  readonly from: LonLat;
  readonly to: LonLat;
}

/** Vertices that grow; a vertex with `skip` set is reached by a jump that adds no measure. */
interface Growing {
  lon: Float64Array;
  lat: Float64Array;
  /** `null` where the first point has none, so that the course has none. */
  ele: Float64Array | null;
  raw: Float64Array;
  count: number;
  duplicates: number;
  readonly skips: Skip[];
}

/**
 * A course from one or more segments in running order.
 * Errors: a point that is no position; fewer than two different points; a gap over 50 m where the rule is `refuse`; over 10,000 km in all.
 * Findings: each gap that was joined or skipped (note up to 50 m, else warning). Repeated points are dropped and counted.
 * @example
 * ```ts
 * import { buildCourse, courseLength } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * courseLength(built.value); // → 2176.434
 * ```
 */
export function buildCourse(input: CourseInput): Result<Course> {
  want('buildCourse', 'input', isCourseInput, input);
  const rule = input.gaps ?? 'refuse';
  const segments = input.reverse === true ? input.segments.map(reversed).reverse() : input.segments;
  const points = segments.reduce((sum, segment) => sum + segment.lon.length, 0);
  // In the order given, also where the course is reversed: a finding names the points as the file has them.
  const gaps = gapsOf(input.segments);
  const where = input.where ?? {};
  const findings = gaps.filter((gap) => gap.length > 0).map((gap) => gapFinding(gap, rule, where));
  if (findings.some((finding) => finding.severity === 'error')) return bad(findings);
  const grown = grow(segments, rule, points);
  const length = grown.raw[grown.count - 1] ?? 0;
  if (grown.count < 2 || !(length > 0))
    return bad([...findings, noPosition(input.segments, where) ?? tooShort(points, grown.count, where)]);
  if (length > LONGEST_COURSE) return bad([...findings, tooLong(input.segments, length, where)]);
  const ele = grown.ele && columnOf(grown, grown.ele);
  const course: Course = {
    id: input.id,
    name: input.name,
    drawn: input.drawn ?? 'recorded',
    lon: columnOf(grown, grown.lon),
    lat: columnOf(grown, grown.lat),
    ele: ele === null || hasGaps(ele) ? null : ele,
    raw: columnOf(grown, grown.raw),
    scale: { raw: [0, length], measure: [0, length] },
    skips: grown.skips,
    points,
    duplicates: grown.duplicates,
    gaps: gaps.filter((gap) => gap.length > 0).map(({ after, length }) => ({ after, length })),
  };
  return good(course, findings);
}

function reversed(segment: GpxSegment): GpxSegment {
  return { lon: segment.lon.slice().reverse(), lat: segment.lat.slice().reverse(), ele: segment.ele.slice().reverse() };
}

function gapsOf(segments: readonly GpxSegment[]): Gap[] {
  const gaps: Gap[] = [];
  let after = -1;
  let last: LonLat | null = null;
  for (const { lon, lat } of segments) {
    if (lon.length === 0) continue;
    const first: LonLat = [lon[0]!, lat[0]!];
    if (last !== null)
      gaps.push({ after, length: lengthBetween(last[0], last[1], first[0], first[1]), from: last, to: first });
    after += lon.length;
    last = [lon.at(-1)!, lat.at(-1)!];
  }
  return gaps;
}

function gapFinding(gap: Gap, rule: GapRule, where: Where): Finding {
  const { length } = gap;
  const params = { length, point: gap.after + 1, from: gap.from, to: gap.to };
  const shared = { where: { ...where, at: gap.from }, measured: length, limit: JOINED_GAP, unit: 'm' };
  if (length <= JOINED_GAP)
    return lineFinding('gap-joined', { ...params, asked: false }, { severity: 'note', ...shared });
  if (rule === 'join') return lineFinding('gap-joined', { ...params, asked: true }, { severity: 'warning', ...shared });
  return rule === 'skip'
    ? lineFinding('gap-skipped', params, { severity: 'warning', ...shared })
    : lineFinding('gap-refused', { ...params, most: JOINED_GAP }, { severity: 'error', ...shared });
}

/** The first point that is no position: it leaves a line without a length, so that good points need not be looked at. */
function noPosition(segments: readonly GpxSegment[], where: Where): Finding | null {
  let before = 0;
  for (const { lon, lat } of segments) {
    const k = lon.findIndex((x, i) => !(Number.isFinite(x) && Math.abs(lat[i]!) <= 90));
    if (k >= 0) {
      const params = { lon: foundOf(lon[k]), lat: foundOf(lat[k]), point: before + k + 1 };
      return lineFinding('position', params, { severity: 'error', where });
    }
    before += lon.length;
  }
  return null;
}

function tooShort(points: number, kept: number, where: Where): Finding {
  const problem = points === 0 ? 'none' : kept < 2 ? 'onePlace' : 'noLength';
  return lineFinding('course-too-short', { problem }, { severity: 'error', where });
}

function tooLong(segments: readonly GpxSegment[], length: number, where: Where): Finding {
  const points = segments.flatMap(({ lon, lat }) => Array.from(lon, (x, i): LonLat => [x, lat[i]!]));
  const steps = points.slice(1).map(([lon, lat], i) => lengthBetween(points[i]![0], points[i]![1], lon, lat));
  const step = steps.reduce((longest, value, i) => (value > steps[longest]! ? i : longest), 0);
  return lineFinding(
    'course-too-long',
    { length, most: LONGEST_COURSE, step: steps[step]!, point: step + 1 },
    { severity: 'error', where: { ...where, at: points[step]! }, measured: length, limit: LONGEST_COURSE, unit: 'm' },
  );
}

/** A column as long as it is filled. */
const columnOf = ({ count }: Growing, column: Float64Array): Float64Array =>
  count === column.length ? column : column.slice(0, count);

function hasGaps(column: Float64Array): boolean {
  for (let i = 0; i < column.length; i++) if (Number.isNaN(column[i]!)) return true;
  return false;
}

function grow(segments: readonly GpxSegment[], rule: GapRule, points: number): Growing {
  const grown: Growing = {
    lon: new Float64Array(points),
    lat: new Float64Array(points),
    ele: Number.isNaN(segments.find((segment) => segment.ele.length > 0)?.ele[0] ?? NaN)
      ? null
      : new Float64Array(points),
    raw: new Float64Array(points),
    count: 0,
    duplicates: 0,
    skips: [],
  };
  for (const segment of segments) {
    let i = 0;
    while (i < segment.lon.length) {
      addPoint(grown, segment.lon[i]!, segment.lat[i]!, segment.ele[i]!, i === 0 && rule === 'skip');
      i = addShort(grown, segment, i + 1, frameAt(0, segment.lat[i]!));
    }
  }
  return grown;
}

/** Degrees of latitude around a frame's origin in which its radii, by series, are good to 1e-11. */
const REACH = 0.02;

/**
 * Adds the points from `first` on that are at most 200 m from the one before and near the frame's latitude, as nearly all are, without
 * a sine for each; gives the index of the first that is not. Accuracy: that of `segmentLength`.
 */
function addShort(grown: Growing, segment: GpxSegment, first: number, frame: Frame): number {
  const { lon, lat, ele, raw } = grown;
  const { parallel, parallel1, parallel2, meridian, meridian1, meridian2 } = frame;
  const end = frame.temperate ? segment.lon.length : 0;
  let { count } = grown;
  let lon0 = lon[count - 1]!;
  let lat0 = lat[count - 1]!;
  let raw0 = raw[count - 1]!;
  let i = first;
  for (; i < end && count < lon.length; i++) {
    const dLon = wrapDegrees(segment.lon[i]! - lon0);
    const nextLat = segment.lat[i]!;
    const dLat = nextLat - lat0;
    const middle = 0.5 * (lat0 + nextLat) - frame.lat;
    const u = middle * RADIANS;
    const east = (parallel + u * (parallel1 + u * parallel2)) * dLon * RADIANS;
    const north = (meridian + u * (meridian1 + u * meridian2)) * dLat * RADIANS;
    const squared = east * east + north * north;
    if (!(squared <= SHORT * SHORT && middle < REACH && middle > -REACH)) break;
    if (dLon === 0 && dLat === 0) {
      grown.duplicates++;
      continue;
    }
    lon0 += dLon;
    lat0 = nextLat;
    raw0 += Math.sqrt(squared);
    lon[count] = lon0;
    lat[count] = lat0;
    if (ele !== null) ele[count] = segment.ele[i]!;
    raw[count] = raw0;
    count++;
  }
  grown.count = count;
  return i;
}

function addPoint(grown: Growing, lon: number, lat: number, ele: number, maySkip: boolean): void {
  const { count } = grown;
  if (count === 0) return push(grown, lon, lat, ele, 0);
  const lon0 = grown.lon[count - 1]!;
  const lat0 = grown.lat[count - 1]!;
  const step = wrapDegrees(lon - lon0);
  if (step === 0 && lat === lat0) {
    grown.duplicates++;
    return;
  }
  const raw0 = grown.raw[count - 1]!;
  const length = lengthBetween(lon0, lat0, lon, lat);
  if (maySkip && length > JOINED_GAP) {
    grown.skips.push({ vertex: count - 1, raw: raw0, length });
    return push(grown, lon0 + step, lat, ele, raw0);
  }
  // A course that is refused for its length is not cut.
  const pieces = raw0 + length > LONGEST_COURSE ? 1 : Math.ceil(length / SHORT);
  if (pieces > 1) {
    const ele0 = grown.ele === null ? NaN : grown.ele[count - 1]!;
    between(lon0, lat0, lon, lat, pieces).forEach(([midLon, midLat], piece) => {
      const share = (piece + 1) / pieces;
      push(grown, midLon, midLat, ele0 + (ele - ele0) * share, raw0 + length * share);
    });
  }
  push(grown, grown.lon[grown.count - 1]! + wrapDegrees(lon - grown.lon[grown.count - 1]!), lat, ele, raw0 + length);
}

function push(grown: Growing, lon: number, lat: number, ele: number, raw: number): void {
  if (grown.count === grown.lon.length) enlarge(grown);
  grown.lon[grown.count] = lon;
  grown.lat[grown.count] = lat;
  if (grown.ele !== null) grown.ele[grown.count] = ele;
  grown.raw[grown.count] = raw;
  grown.count++;
}

function enlarge(grown: Growing): void {
  const wider = (column: Float64Array): Float64Array => {
    const copy = new Float64Array(grown.count * 2);
    copy.set(column);
    return copy;
  };
  grown.lon = wider(grown.lon);
  grown.lat = wider(grown.lat);
  grown.ele = grown.ele && wider(grown.ele);
  grown.raw = wider(grown.raw);
}
