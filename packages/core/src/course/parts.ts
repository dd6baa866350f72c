/**
 * A course made of stretches of other courses: their points joined in order, its own measure
 * from 0. Calibrated stretches keep their calibrated length.
 */
import { type Finding, type Result, type Where, bad, good, isWhere } from '../finding.ts';
import type { Metres } from '../units.ts';
import { lengthBetween } from '../geodesy/segment.ts';
import type { GpxSegment } from '../gpx/document.ts';
import { JOINED_GAP, buildCourse } from './build.ts';
import { type Course, type Drawn, courseLength, isCourse, isDrawn, rawLength } from './course.ts';
import { courseFinding } from './courseFinding.ts';
import { type CoursePlace, elevationOf, groundAt, slicePlaces } from './locate.ts';
import { toMeasure, toRaw } from './scale.ts';
import { type Seam, atSeams } from './seams.ts';
import { type Shape, aFlag, aText, finite, listOf, recordOf, want } from '../wants.ts';

/** A part of a course that another course runs along. */
export interface Stretch {
  readonly course: Course;
  /** Calibrated measure on that course where the stretch begins. */
  readonly from: Metres;
  /** Where it ends: farther on than `from`. */
  readonly to: Metres;
  /** Goes into each finding about the stretch. */
  readonly where: Where;
}

/** What a course of parts is made from. */
export interface PartsInput {
  readonly id: string;
  readonly name: string;
  readonly drawn: Drawn;
  /** Runs the whole from its end to its start. */
  readonly reverse: boolean;
  /** In running order, one or more. */
  readonly stretches: readonly Stretch[];
  /** Goes into each finding about the whole. */
  readonly where: Where;
}

const isPartsInput: Shape = recordOf<PartsInput>('parts { id, name, drawn, reverse, stretches, where }', {
  id: aText,
  name: aText,
  drawn: isDrawn,
  reverse: aFlag,
  stretches: listOf(
    recordOf<Stretch>('a stretch of a course', { course: isCourse, from: finite, to: finite, where: isWhere }),
    1,
  ),
  where: isWhere,
});

/**
 * The course that runs along the stretches in order.
 * Errors: a stretch beyond its course, or against its direction; neighbours whose ends are over 50 m apart.
 * @example
 * ```ts
 * import { buildCourse, courseLength, courseOfParts } from '@halfcup/core/geometry';
 *
 * const pier = { lon: Float64Array.of(-30.1, -30.09, -30.1), lat: Float64Array.of(12.2, 12.2, 12.2), ele: Float64Array.of(2, 6, 4) };
 * const built = buildCourse({ id: 'pier', name: 'Pier run', segments: [pier] });
 * if (!built.ok) throw new Error(built.findings[0]?.message);
 * const course = built.value;
 * const half = courseOfParts({ id: 'short', name: 'Short pier run', drawn: 'centre', reverse: false, where: {}, stretches: [{ course, from: 0, to: 500, where: {} }, { course, from: 1676.4, to: 2176.4, where: {} }] });
 * half.ok && courseLength(half.value); // → 1000.03
 * ```
 */
export function courseOfParts(input: PartsInput): Result<Course> {
  want('courseOfParts', 'input', isPartsInput, input);
  const wrong = input.stretches.flatMap(rangeFindings);
  if (wrong.length > 0) return bad(wrong);
  const segments = input.stretches.map(segmentsOf);
  const joins = segments.map((after, k) => (k === 0 ? 0 : jumpLength(segments[k - 1]!, after)));
  const apart = joins.flatMap((length, k) => apartFinding(length, input.stretches[k]!.where));
  if (apart.length > 0) return bad(apart);
  // Ends are within 50 m, which are joined whatever the rule; what is left are the gaps that a course of its own skips.
  const built = buildCourse({ ...input, segments: segments.flat(), gaps: 'skip' });
  if (!built.ok) return built;
  const scale = scaleOf(input, joins, rawLength(built.value));
  const course = { ...built.value, scale };
  return good(course, atSeams(built.findings, seamsOf(input, segments, joins, courseLength(course))));
}

/** Metres: a tenth of a millimetre over the end is rounding of a length that somebody printed. */
const SAME = 1e-4;

function rangeFindings({ course, from, to, where }: Stretch): Finding[] {
  const length = courseLength(course);
  if (to > length + SAME) {
    const params = { what: 'partEnd', measure: to, course: course.id, problem: 'past', length } as const;
    const facts = { severity: 'error', where, measured: to, limit: length, unit: 'm' } as const;
    return [courseFinding('measure-beyond-course', params, facts)];
  }
  const start = course.scale.measure[0]!;
  if (from < start - SAME) {
    const params = { what: 'partStart', measure: from, course: course.id, problem: 'before', start } as const;
    const facts = { severity: 'error', where, measured: from, limit: start, unit: 'm' } as const;
    return [courseFinding('measure-beyond-course', params, facts)];
  }
  if (to - from > SAME) return [];
  return [courseFinding('part-backwards', { course: course.id, from, to }, { severity: 'error', where })];
}

/** The points of a stretch; more than one segment where its course skips a gap. */
function segmentsOf({ course, from, to }: Stretch): GpxSegment[] {
  const runs: CoursePlace[][] = [[]];
  for (const place of slicePlaces(course, toRaw(course, from), toRaw(course, to))) {
    runs.at(-1)!.push(place);
    if (place.share === 0 && course.skips.some((skip) => skip.vertex === place.vertex)) runs.push([]);
  }
  return runs.filter((run) => run.length > 0).map((run) => segmentThrough(course, run));
}

function segmentThrough(course: Course, places: readonly CoursePlace[]): GpxSegment {
  const points = places.map((place) => groundAt(course, place).at);
  return {
    lon: Float64Array.from(points, ([lon]) => lon),
    lat: Float64Array.from(points, ([, lat]) => lat),
    ele: Float64Array.from(places, (place) => elevationOf(course, place)),
  };
}

function jumpLength(before: readonly GpxSegment[], after: readonly GpxSegment[]): number {
  const [end, start] = [before.at(-1)!, after[0]!];
  return lengthBetween(end.lon.at(-1)!, end.lat.at(-1)!, start.lon[0]!, start.lat[0]!);
}

function apartFinding(length: number, where: Where): Finding[] {
  if (length <= JOINED_GAP) return [];
  const facts = { severity: 'error', where, measured: length, limit: JOINED_GAP, unit: 'm' } as const;
  return [courseFinding('parts-apart', { length, most: JOINED_GAP }, facts)];
}

/** Where each stretch but the last ends and the next begins, in running order. */
function seamsOf(
  { stretches, reverse }: PartsInput,
  segments: readonly (readonly GpxSegment[])[],
  joins: readonly number[],
  length: number,
): Seam[] {
  let end = 0;
  const seams = stretches.slice(1).map((_, k): Seam => {
    const [before, after] = [segments[k]!.at(-1)!, segments[k + 1]![0]!];
    end += stretches[k]!.to - stretches[k]!.from + joins[k]!;
    return {
      from: [before.lon.at(-1)!, before.lat.at(-1)!],
      to: [after.lon[0]!, after.lat[0]!],
      measure: reverse ? length - end - joins[k + 1]! : end,
    };
  });
  return reverse ? seams.toReversed() : seams;
}

/** Knots of every stretch, moved to the new course's raw measure; the joins between stretches count as they are. */
function scaleOf(input: PartsInput, joins: readonly number[], total: number): Course['scale'] {
  const raw: number[] = [];
  const measure: number[] = [];
  input.stretches.forEach(({ course, from, to }, k) => {
    const rawFrom = toRaw(course, from);
    const rawTo = Math.min(toRaw(course, to), rawLength(course));
    const rawStart = (raw.at(-1) ?? 0) + joins[k]!;
    const start = (measure.at(-1) ?? 0) + joins[k]!;
    const knots = [rawFrom, ...course.scale.raw.filter((knot) => knot > rawFrom && knot < rawTo), rawTo];
    for (const knot of knots) {
      raw.push(rawStart + (knot - rawFrom));
      measure.push(start + (toMeasure(course, knot) - from));
    }
  });
  // Without a join the first knot of a stretch is the last of the one before it.
  const kept = raw.map((_, k) => k).filter((k) => k === 0 || raw[k]! > raw[k - 1]!);
  const forward = {
    raw: kept.map((k) => (k === kept.at(-1) ? total : raw[k]!)),
    measure: kept.map((k) => measure[k]!),
  };
  if (!input.reverse) return forward;
  const length = forward.measure.at(-1)!;
  return {
    raw: forward.raw.map((r) => total - r).reverse(),
    measure: forward.measure.map((m) => length - m).reverse(),
  };
}
