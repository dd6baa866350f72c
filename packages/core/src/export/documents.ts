/**
 * The JSON documents that the command line prints, from the records of core. Lengths in metres
 * to 1e-6, degrees to 1e-9. Their JSON Schemas stand in `schemas/`, one file a document.
 */
import type { Mark } from '../course/calibrate.ts';
import { type Course, type Pass, courseLength, rawLength, wantCourse } from '../course/course.ts';
import { ascentOf } from '../course/locate.ts';
import type { Finding, LonLat } from '../finding.ts';
import type { Item, LaidDirection, Layout, StationLayout, ToldPlace } from '../layout/layout.ts';
import type { RaceSpacing, StationPass } from '../station/station.ts';
import { type Bounds, boundsOf } from './bounds.ts';
import { toMicro, toNano, toPosition } from './rounding.ts';
import { type Shape, aText, finite, listOf, orNull, position, recordOf, want } from '../wants.ts';
import { isPass } from '../course/course.ts';
import { isMark } from '../course/calibrate.ts';
import { isFinding } from '../finding.ts';
import { isLayout } from '../layout/shapes.ts';

/** What `halfcup course` prints. Lengths metres. */
export interface CourseDocument {
  readonly name: string;
  /** As the file has them. */
  readonly points: number;
  /** Points that repeat the one before: dropped. */
  readonly duplicates: number;
  /** Calibrated. */
  readonly length: number;
  /** WGS 84 geodesic length of the line. */
  readonly raw: number;
  readonly bounds: Bounds;
  /** `after`: index of the point before the gap. */
  readonly gaps: readonly { readonly after: number; readonly length: number }[];
  /** Climbed in all; `null` where elevations are missing. */
  readonly ascent: number | null;
  /** Calibrated over raw length, by stretch of course distance; one factor of 1 where nothing is calibrated. */
  readonly factors: readonly { readonly from: number; readonly to: number; readonly factor: number }[];
  readonly findings: readonly Finding[];
  /** Marks that the course is calibrated by, metres; none where there were none. */
  readonly marks: readonly { readonly name: string | null; readonly measure: number }[];
}

/** A point held against a course. */
export interface SnappedPoint {
  readonly at: LonLat;
  /** Of the waypoint; `null` where it has none. */
  readonly name: string | null;
  /** In running order; none where the course is farther away than the snap radius. */
  readonly passes: readonly Pass[];
  /** The nearest place on the course, however far. */
  readonly nearest: Pick<Pass, 'measure' | 'distance' | 'offset'>;
}

const isSnapped: Shape = recordOf<SnappedPoint>('a point with its passes', {
  at: position,
  name: orNull(aText),
  passes: listOf(isPass),
  nearest: recordOf('a nearest place', { measure: finite, distance: finite, offset: finite }),
});

/** What `halfcup snap` prints. */
export interface SnapDocument {
  readonly points: readonly SnappedPoint[];
}

/** A station as `halfcup layout` prints it. */
export interface StationDocument {
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
  readonly passes: readonly StationPass[];
  readonly directions: readonly LaidDirection[];
  /** By its street; absent where neither the plan nor its map tells. */
  readonly street?: ToldPlace;
}

/** What `halfcup layout` prints. Lengths metres. */
export interface LayoutDocument {
  readonly courses: readonly { readonly id: string; readonly length: number; readonly raw: number }[];
  readonly stations: readonly StationDocument[];
  readonly spacing: readonly RaceSpacing[];
  readonly findings: readonly Finding[];
}

/**
 * A finding with its numbers rounded and its keys in the usual order, as every document has it.
 * @example
 * ```ts
 * import { findingDocument } from '@halfcup/core/schemas';
 * const measured = 71.20000004;
 * const found = findingDocument({ where: { measure: 5012.3456789 }, message: 'Near.', severity: 'warning', code: 'sign-distance', measured });
 * found.where.measure; // → 5012.345679
 * ```
 */
export function findingDocument(finding: Finding): Finding {
  want('findingDocument', 'finding', isFinding, finding);
  const { code, severity, message, params, where, measured, limit, ...rest } = finding;
  const { measure, at, ...place } = where;
  return {
    code,
    severity,
    message,
    ...(params === undefined ? {} : { params: rounded(params) as Readonly<Record<string, unknown>> }),
    where: {
      ...place,
      ...(measure === undefined ? {} : { measure: toMicro(measure) }),
      ...(at === undefined ? {} : { at: toPosition(at) }),
    },
    ...(measured === undefined ? {} : { measured: toMicro(measured) }),
    ...(limit === undefined
      ? {}
      : { limit: typeof limit === 'number' ? toMicro(limit) : [toMicro(limit[0]), toMicro(limit[1])] }),
    ...rest,
  };
}

/** Numbers to a millionth, wherever they stand. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return toMicro(value);
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, rounded(one)]));
}

/**
 * The facts of one course, named as its file or plan names it. `findings`: what reading and measuring it has found; `marks`:
 * those that it is calibrated by.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseStage } from '@halfcup/core/stages';
 * import { courseDocument } from '@halfcup/core/schemas';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const courses = courseStage(read.value.plan, { gpx: new Map() });
 * const [first] = courses.ok ? courses.value : [];
 * const facts = first && courseDocument(first.course, courses.findings);
 * facts?.bounds; // → [-17.4, -33.2, -17.36, -33.2]
 * facts?.factors; // → [{ from: 0, to: 3729.671946, factor: 1 }]
 * ```
 */
export function courseDocument(
  course: Course,
  findings: readonly Finding[],
  marks: readonly Mark[] = [],
): CourseDocument {
  wantCourse('courseDocument', course);
  want('courseDocument', 'findings', listOf(isFinding), findings);
  want('courseDocument', 'marks', listOf(isMark), marks);
  const ascent = ascentOf(course);
  const [west, south, east, north] = boundsOf(course.lon, course.lat);
  return {
    name: course.name,
    points: course.points,
    duplicates: course.duplicates,
    length: toMicro(courseLength(course)),
    raw: toMicro(rawLength(course)),
    bounds: [toNano(west), toNano(south), toNano(east), toNano(north)],
    gaps: course.gaps.map(({ after, length }) => ({ after, length: toMicro(length) })),
    ascent: ascent === null ? null : toMicro(ascent),
    factors: factorsOf(course),
    findings: findings.map(findingDocument),
    marks: marks.map(({ name, measure }) => ({ name: name ?? null, measure: toMicro(measure) })),
  };
}

function factorsOf({ scale }: Course): CourseDocument['factors'] {
  const { raw, measure } = scale;
  return measure.slice(1).map((to, k) => {
    const from = measure[k]!;
    return { from: toMicro(from), to: toMicro(to), factor: toNano((to - from) / (raw[k + 1]! - raw[k]!)) };
  });
}

/**
 * Points with all their passes of one course, in the order given; `passesOf` and `nearestOn` find these.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseStage } from '@halfcup/core/stages';
 * import { snapDocument } from '@halfcup/core/schemas';
 * import { nearestOn, passesOf } from '@halfcup/core/geometry';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const courses = courseStage(read.value.plan, { gpx: new Map() });
 * const [first] = courses.ok ? courses.value : [];
 * if (first === undefined) throw new Error(courses.findings[0]?.message);
 * const at = [-17.38, -33.20004] as const;
 * const { points } = snapDocument([{ at, name: 'Quay', passes: passesOf(first, at), nearest: nearestOn(first, at) }]);
 * points[0]?.passes.map(({ measure, side }) => [measure, side]); // → [[1864.84, 'right']]
 * ```
 */
export function snapDocument(points: readonly SnappedPoint[]): SnapDocument {
  want('snapDocument', 'points', listOf(isSnapped), points);
  return {
    points: points.map(({ at, name, passes, nearest }) => ({
      at: toPosition(at),
      name,
      passes: passes.map(passDocument),
      nearest: {
        measure: toMicro(nearest.measure),
        distance: toMicro(nearest.distance),
        offset: toMicro(nearest.offset),
      },
    })),
  };
}

/**
 * A whole layout; `findings` as they are to be printed, with their places in the plan (`placeFindings`).
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { layoutDocument } from '@halfcup/core/schemas';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { courses, stations } = layoutDocument(result.value, result.value.findings);
 * courses; // → [{ id: 'c', length: 3729.671946, raw: 3729.671946 }]
 * stations[0]?.directions[0]?.items.find(({ kind }) => kind === 'sign')?.wording; // → 'Water ahead'
 * ```
 */
export function layoutDocument(layout: Layout, findings: readonly Finding[]): LayoutDocument {
  want('layoutDocument', 'layout', isLayout, layout);
  want('layoutDocument', 'findings', listOf(isFinding), findings);
  return {
    courses: layout.courses.map(({ course }) => ({
      id: course.id,
      length: toMicro(courseLength(course)),
      raw: toMicro(rawLength(course)),
    })),
    stations: layout.stations.map(stationDocument),
    spacing: layout.spacing.map(spacingDocument),
    findings: findings.map(findingDocument),
  };
}

const stationDocument = ({ id, name, at, passes, directions, street }: StationLayout): StationDocument => ({
  id,
  name,
  at: toPosition(at),
  passes: passes.map(({ race, course, pass, served, ...rest }) => ({
    race,
    course,
    pass,
    ...passDocument(rest),
    served,
  })),
  directions: directions.map(directionDocument),
  ...(street === undefined ? {} : { street }),
});

const passDocument = (pass: Pass): Pass => ({
  measure: toMicro(pass.measure),
  distance: toMicro(pass.distance),
  offset: toMicro(pass.offset),
  side: pass.side,
  ...(pass.why === undefined ? {} : { why: pass.why }),
  confidence: toMicro(pass.confidence),
  azimuthDeg: toMicro(pass.azimuthDeg),
  foot: toPosition(pass.foot),
  ...(pass.end === undefined ? {} : { end: pass.end }),
});

const directionDocument = ({
  lead,
  race,
  course,
  measure,
  azimuthDeg,
  side,
  passes,
  items,
}: LaidDirection): LaidDirection => ({
  lead,
  race,
  course,
  measure: toMicro(measure),
  azimuthDeg: toMicro(azimuthDeg),
  side,
  passes,
  items: items.map(itemDocument),
});

const twoLengths = ([a, b]: readonly [number, number]): readonly [number, number] => [toMicro(a), toMicro(b)];

const placeOrNull = (at: LonLat | null): LonLat | null => (at === null ? null : toPosition(at));

const itemDocument = (item: Item): Item => ({
  kind: item.kind,
  from: toMicro(item.from),
  to: toMicro(item.to),
  along: twoLengths(item.along),
  wheel: item.wheel === null ? null : twoLengths(item.wheel),
  wheelMargin: toMicro(item.wheelMargin),
  side: item.side,
  offset: toMicro(item.offset),
  at: [placeOrNull(item.at[0]), placeOrNull(item.at[1])],
  ...(item.wording === undefined ? {} : { wording: item.wording }),
  ...(item.boxes === undefined
    ? {}
    : { boxes: item.boxes.map(({ measure, at }) => ({ measure: toMicro(measure), at: placeOrNull(at) })) }),
  ...(item.byHand === undefined ? {} : { byHand: item.byHand }),
  ...(item.street === undefined ? {} : { street: item.street }),
});

const spacingDocument = ({ race, course, legs, longest, shortest, mean }: RaceSpacing): RaceSpacing => ({
  race,
  course,
  legs: legs.map((leg) => ({ from: leg.from, to: leg.to, length: toMicro(leg.length), end: toMicro(leg.end) })),
  longest: toMicro(longest),
  shortest: toMicro(shortest),
  mean: toMicro(mean),
});
