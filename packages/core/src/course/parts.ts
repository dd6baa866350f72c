/**
 * A course made of stretches of other courses: their points joined in order, its own measure
 * from 0. Calibrated stretches keep their calibrated length.
 */
import { bisectRight } from 'd3-array';
import { type Finding, type Result, type Where, bad, good } from '../finding.ts';
import { segmentLength } from '../geodesy/segment.ts';
import type { GpxSegment } from '../gpx/document.ts';
import { JOINED_GAP, buildCourse } from './build.ts';
import { type Course, type Drawn, courseLength, rawLength } from './course.ts';
import { elevationAt, sliceLine } from './locate.ts';
import { measureOf, rawOf } from './scale.ts';

export interface Stretch {
  readonly course: Course;
  /** Calibrated measures on that course, metres; `from` < `to`. */
  readonly from: number;
  readonly to: number;
  readonly where: Where;
}

export interface PartsInput {
  readonly id: string;
  readonly name: string;
  readonly drawn: Drawn;
  readonly reverse: boolean;
  readonly stretches: readonly Stretch[];
  readonly where: Where;
}

/**
 * The course that runs along the stretches in order.
 * Errors: a stretch beyond its course, or against its direction; neighbours whose ends are over 50 m apart.
 */
export function courseOfParts(input: PartsInput): Result<Course> {
  const wrong = input.stretches.flatMap(rangeFindings);
  if (wrong.length > 0) return bad(wrong);
  const segments = input.stretches.map(segmentOf);
  const apart = input.stretches.flatMap((stretch, k) => (k === 0 ? [] : apartFinding(segments[k - 1]!, segments[k]!, stretch.where)));
  if (apart.length > 0) return bad(apart);
  const built = buildCourse({ ...input, segments, gaps: 'join' });
  if (!built.ok) return built;
  const scale = scaleOf(input, built.value);
  return good({ ...built.value, scale }, built.findings);
}

function rangeFindings({ course, from, to, where }: Stretch): Finding[] {
  const length = courseLength(course);
  // A tenth of a millimetre over the end is rounding of a length that somebody printed.
  if (to > length + 1e-4) {
    const message = `The part ends at ${to.toFixed(1)} m, but course "${course.id}" is ${length.toFixed(1)} m long; expected an end within it.`;
    return [{ code: 'measure-beyond-course', severity: 'error', message, where, measured: to, limit: length, unit: 'm' }];
  }
  if (from < to) return [];
  const message = `The part runs from ${from.toFixed(1)} m to ${to.toFixed(1)} m of course "${course.id}"; expected "from" before "to".`;
  return [{ code: 'part-backwards', severity: 'error', message, where }];
}

function segmentOf({ course, from, to }: Stretch): GpxSegment {
  const points = sliceLine(course, from, to);
  const ele = new Float64Array(points.length).fill(NaN);
  if (course.ele !== null) {
    const first = rawOf(course, from);
    ele[0] = elevationAt(course, from) ?? NaN;
    ele[ele.length - 1] = elevationAt(course, Math.min(to, courseLength(course))) ?? NaN;
    const start = bisectRight(course.raw, first);
    for (let k = 1; k < ele.length - 1; k++) ele[k] = course.ele[start + k - 1]!;
  }
  return { lon: Float64Array.from(points, ([lon]) => lon), lat: Float64Array.from(points, ([, lat]) => lat), ele };
}

function apartFinding(before: GpxSegment, after: GpxSegment, where: Where): Finding[] {
  const length = segmentLength(before.lon.at(-1)!, before.lat.at(-1)!, after.lon[0]!, after.lat[0]!);
  if (length <= JOINED_GAP) return [];
  const message = `The part begins ${length.toFixed(1)} m from where the one before it ends; expected at most ${JOINED_GAP} m.`;
  return [{ code: 'parts-apart', severity: 'error', message, where, measured: length, limit: JOINED_GAP, unit: 'm' }];
}

/** Knots of every stretch, moved to the new course's raw measure; the joins between stretches count as they are. */
function scaleOf(input: PartsInput, course: Course): Course['scale'] {
  const raw: number[] = [];
  const measure: number[] = [];
  let rawEnd = 0;
  let measureEnd = 0;
  input.stretches.forEach((stretch, k) => {
    const rawFrom = rawOf(stretch.course, stretch.from);
    const rawTo = Math.min(rawOf(stretch.course, stretch.to), rawLength(stretch.course));
    const join = k === 0 ? 0 : (course.gaps.find((gap) => gap.after === pointsBefore(input, k) - 1)?.length ?? 0);
    const knots = [rawFrom, ...stretch.course.scale.raw.filter((knot) => knot > rawFrom && knot < rawTo), rawTo];
    for (const knot of knots) {
      raw.push(rawEnd + join + knot - rawFrom);
      measure.push(measureEnd + join + measureOf(stretch.course, knot) - stretch.from);
    }
    rawEnd = raw.at(-1)!;
    measureEnd = measure.at(-1)!;
  });
  const total = rawLength(course);
  const kept = raw.map((_, k) => k).filter((k) => k === 0 || k === raw.length - 1 || raw[k]! > raw[k - 1]!);
  const forward = { raw: kept.map((k) => (k === kept.at(-1) ? total : raw[k]!)), measure: kept.map((k) => measure[k]!) };
  if (!input.reverse) return forward;
  const length = forward.measure.at(-1)!;
  return { raw: forward.raw.map((r) => total - r).reverse(), measure: forward.measure.map((m) => length - m).reverse() };
}

const pointsBefore = (input: PartsInput, k: number): number =>
  input.stretches.slice(0, k).reduce((sum, { course, from, to }) => sum + sliceLine(course, from, to).length, 0);
