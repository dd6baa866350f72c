/**
 * The plan's courses built from its GPX files, its own lines, or parts of one another.
 * What is wrong is reported with the place in the plan or in the GPX file.
 */
import { type Stretch, courseOfParts } from '../course/parts.ts';
import { buildCourse } from '../course/build.ts';
import { calibrate } from '../course/calibrate.ts';
import { courseFinding } from '../course/courseFinding.ts';
import { type Course, type Drawn, courseLength, rawLength } from '../course/course.ts';
import { flawFindings, flawsOf, tangleFindings } from '../course/quality.ts';
import { type IndexedCourse, indexCourse } from '../course/segmentIndex.ts';
import { type Result, type Where, bad, good } from '../finding.ts';
import { chooseLine } from '../gpx/chooseLine.ts';
import type { GpxDocument, GpxSegment } from '../gpx/document.ts';
import { resolveMarks } from './marks.ts';
import type { Plan, PlanCourse } from './plan.ts';
import { sourceFinding } from './sourceFinding.ts';
import { type Shape, mapOf, recordOf } from '../wants.ts';
import { isGpxDocument } from '../gpx/shapes.ts';

/** The GPX files that a plan names, already read. */
export interface CourseSources {
  /** By the name used in the plan. */
  readonly gpx: ReadonlyMap<string, GpxDocument>;
}

export const isCourseSources: Shape = recordOf<CourseSources>('the files { gpx } of the plan', {
  gpx: mapOf(isGpxDocument),
});

/** Every course of the plan, measured, indexed and calibrated, in its order. Not ok where one of them cannot be built. */
export function coursesOf(plan: Plan, sources: CourseSources): Result<readonly IndexedCourse[]> {
  const built = new Map<string, Result<IndexedCourse>>();
  const build = (id: string): Result<IndexedCourse> => {
    const known = built.get(id);
    if (known !== undefined) return known;
    const index = plan.courses.findIndex((course) => course.id === id);
    const result = courseOf(plan.courses[index]!, `/courses/${index}`, sources, build);
    built.set(id, result);
    return result;
  };
  const results = plan.courses.map(({ id }) => build(id));
  const findings = results.flatMap((result) => result.findings);
  const courses = results.flatMap((result) => (result.ok ? [result.value] : []));
  return courses.length === results.length ? good(courses, findings) : bad(findings);
}

type Build = (id: string) => Result<IndexedCourse>;

function courseOf(course: PlanCourse, path: string, sources: CourseSources, build: Build): Result<IndexedCourse> {
  const raw = course.parts === undefined ? fromPoints(course, path, sources) : fromParts(course, path, build);
  if (!raw.ok) return raw;
  const document = course.gpx === undefined ? undefined : sources.gpx.get(course.gpx);
  const marks = resolveMarks(course.marks, document, (k) => ({ path: `${path}/marks/${k}`, course: course.id }));
  if (!marks.ok) return bad([...raw.findings, ...marks.findings]);
  const where = { path, course: course.id };
  const indexed = indexCourse(raw.value);
  const calibrated = calibrate(indexed, {
    marks: marks.value,
    where,
    ...(usesLength(course, raw.value) ? { length: course.length! } : {}),
  });
  const findings = [
    ...raw.findings,
    ...calibrated.findings.filter(({ code }) => code !== 'mark-factor' || marks.value.length > 0),
    ...(course.parts === undefined ? tangleFindings(indexed, where) : []),
  ];
  return calibrated.ok ? good(calibrated.value, findings) : bad(findings);
}

/** A line that is off by more than this share of the stated length is another line, or the length another course's. */
const ANOTHER = 0.1;

/** Whether distances are stretched to the stated length: not where the line surely is no line of that length. The review tells it (`length-differs`). */
export const usesLength = ({ length, marks }: PlanCourse, course: Course): boolean =>
  length !== undefined && (marks.length > 0 || Math.abs(rawLength(course) / length - 1) <= ANOTHER);

function fromPoints(course: PlanCourse, path: string, sources: CourseSources): Result<Course> {
  const segments = course.gpx === undefined ? lineSegments(course, path) : gpxSegments(course, path, sources);
  if (!segments.ok) return segments;
  const where = { path, course: course.id };
  const built = buildCourse({ ...course, segments: segments.value, where });
  const findings = [...segments.findings, ...built.findings, ...flawFindings(flawsOf(segments.value), where)];
  return built.ok ? good(built.value, findings) : bad(findings);
}

function fromParts(course: PlanCourse, path: string, build: Build): Result<Course> {
  const parts = course.parts!.map((part, k) => {
    const source = build(part.of);
    const where = { path: `${path}/parts/${k}`, course: course.id };
    if (!source.ok) return null;
    const { course: of } = source.value;
    const stretch = { course: of, from: part.from, to: part.to ?? courseLength(of), where };
    return part.reverse === true ? turned(stretch) : good(stretch);
  });
  const wrong = parts.flatMap((part) => (part !== null && !part.ok ? part.findings : []));
  if (wrong.length > 0) return bad(wrong);
  const stretches = parts.flatMap((part) => (part !== null && part.ok ? [part.value] : []));
  // The course that a part is taken from has reported its own findings.
  if (stretches.length < parts.length) return bad([]);
  return courseOfParts({
    ...course,
    drawn: drawnOf(
      course,
      stretches.map((stretch) => stretch.course.drawn),
    ),
    stretches,
    where: { path, course: course.id },
  });
}

/** The stretch from its end back to its beginning. */
function turned({ where, ...stretch }: Stretch): Result<Stretch> {
  const { id, name, drawn } = stretch.course;
  const back = courseOfParts({ id, name, drawn, reverse: true, where, stretches: [{ ...stretch, where }] });
  return back.ok ? good({ course: back.value, from: 0, to: courseLength(back.value), where }) : back;
}

/** Parts are drawn as what they are parts of, unless the plan says otherwise (`recorded` is also what it says by saying nothing). */
const drawnOf = ({ drawn }: PlanCourse, sources: readonly Drawn[]): Drawn =>
  drawn === 'recorded' && sources.every((source) => source === sources[0]) ? sources[0]! : drawn;

function lineSegments(course: PlanCourse, path: string): Result<readonly GpxSegment[]> {
  const line = course.line ?? [];
  if (line.length < 2) {
    const where = { path: `${path}/line`, course: course.id };
    return bad([
      courseFinding('course-too-short', { problem: 'few', points: line.length }, { severity: 'error', where }),
    ]);
  }
  const column = (k: number): Float64Array => Float64Array.from(line, (point) => point[k] ?? NaN);
  return good([{ lon: column(0), lat: column(1), ele: column(2) }]);
}

function gpxSegments(course: PlanCourse, path: string, sources: CourseSources): Result<readonly GpxSegment[]> {
  const file = course.gpx!;
  const document = sources.gpx.get(file);
  if (document === undefined) {
    const where = { path: `${path}/gpx`, course: course.id };
    return bad([sourceFinding('gpx-missing', { gpx: file }, { severity: 'error', where })]);
  }
  const where: Where =
    course.track === undefined ? { file: document.file } : { path: `${path}/track`, course: course.id };
  const line = chooseLine(document, course.track, where);
  return line.ok ? good(line.value.segments, line.findings) : line;
}
