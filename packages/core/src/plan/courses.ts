/**
 * The plan's courses built from its GPX files, its own lines, or parts of one another.
 * What is wrong is said with the place in the plan or in the GPX file.
 */
import { courseOfParts } from '../course/parts.ts';
import { buildCourse } from '../course/build.ts';
import { calibrate } from '../course/calibrate.ts';
import { type Course, type Drawn, courseLength } from '../course/course.ts';
import { flawFindings, flawsOf, tangleFindings } from '../course/quality.ts';
import { type IndexedCourse, indexCourse } from '../course/segmentIndex.ts';
import { type Finding, type Result, type Where, bad, good } from '../finding.ts';
import type { GpxDocument, GpxLine, GpxSegment } from '../gpx/document.ts';
import { resolveMarks } from './marks.ts';
import type { Plan, PlanCourse } from './plan.ts';

/** Files that a plan names, already read, by the name used in the plan. */
export interface Sources {
  readonly gpx: ReadonlyMap<string, GpxDocument>;
}

/** Every course of the plan, measured, indexed and calibrated, in its order. Not ok where one of them cannot be built. */
export function coursesOf(plan: Plan, sources: Sources): Result<readonly IndexedCourse[]> {
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

function courseOf(course: PlanCourse, path: string, sources: Sources, build: Build): Result<IndexedCourse> {
  const raw = course.parts === undefined ? fromPoints(course, path, sources) : fromParts(course, path, build);
  if (!raw.ok) return raw;
  const document = course.gpx === undefined ? undefined : sources.gpx.get(course.gpx);
  const marks = resolveMarks(course.marks, document, (k) => ({ path: `${path}/marks/${k}`, course: course.id }));
  if (!marks.ok) return bad([...raw.findings, ...marks.findings]);
  const where = { path, course: course.id };
  const indexed = indexCourse(raw.value);
  const calibrated = calibrate(indexed, { marks: marks.value, where, ...(course.length === undefined ? {} : { length: course.length }) });
  const findings = [...raw.findings, ...calibrated.findings, ...(course.parts === undefined ? tangleFindings(indexed, where) : [])];
  return calibrated.ok ? good(calibrated.value, findings) : bad(findings);
}

function fromPoints(course: PlanCourse, path: string, sources: Sources): Result<Course> {
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
    return source.ok ? { course: source.value.course, from: part.from, to: part.to ?? courseLength(source.value.course), where } : null;
  });
  const stretches = parts.filter((part) => part !== null);
  // The course that a part is taken from has said its own findings.
  if (stretches.length < parts.length) return bad([]);
  return courseOfParts({ ...course, drawn: drawnOf(course, stretches.map((stretch) => stretch.course.drawn)), stretches, where: { path, course: course.id } });
}

/** Parts are drawn as what they are parts of, unless the plan says otherwise (`recorded` is also what it says by saying nothing). */
const drawnOf = ({ drawn }: PlanCourse, sources: readonly Drawn[]): Drawn =>
  drawn === 'recorded' && sources.every((source) => source === sources[0]) ? (sources[0] ?? drawn) : drawn;

function lineSegments(course: PlanCourse, path: string): Result<readonly GpxSegment[]> {
  const line = course.line ?? [];
  if (line.length < 2) {
    const message = `The line of course "${course.id}" has ${line.length} points; expected at least two.`;
    return bad([{ code: 'course-too-short', severity: 'error', message, where: { path: `${path}/line`, course: course.id } }]);
  }
  const column = (k: number): Float64Array => Float64Array.from(line, (point) => point[k] ?? NaN);
  return good([{ lon: column(0), lat: column(1), ele: column(2) }]);
}

function gpxSegments(course: PlanCourse, path: string, sources: Sources): Result<readonly GpxSegment[]> {
  const file = course.gpx!;
  const document = sources.gpx.get(file);
  if (document === undefined) {
    const message = `The plan names "${file}", which was not found beside it; put the file there or mend the name.`;
    return bad([{ code: 'gpx-missing', severity: 'error', message, where: { path: `${path}/gpx`, course: course.id } }]);
  }
  const where: Where = course.track === undefined ? { file: document.file } : { path: `${path}/track`, course: course.id };
  const line = chooseLine(document, course.track, where);
  return line.ok ? good(line.value.segments, line.findings) : line;
}

const pointsOf = (line: GpxLine): number => line.segments.reduce((sum, segment) => sum + segment.lon.length, 0);

const hasPoints = (line: GpxLine): boolean => pointsOf(line) > 0;

const listed = (lines: readonly GpxLine[]): string =>
  lines.map((line, k) => `${k}: ${line.name === null ? `${line.kind} without a name` : `"${line.name}"`}`).join(', ');

/**
 * The line that `track` names: its name, or its index over tracks, then routes. Without `track` the first with more points
 * than one, and a note where there are others. Errors: no line, no such line, a name that two lines have.
 */
export function chooseLine(document: GpxDocument, track: string | number | undefined, where: Where): Result<GpxLine> {
  const lines = [...document.tracks, ...document.routes];
  const fail = (message: string): Result<GpxLine> => bad([{ code: 'track-unknown', severity: 'error', message, where }]);
  // The place that is printed before the message has the file's name already.
  const file = where.file === undefined ? document.file : 'The file';
  if (track === undefined) {
    const usable = lines.filter(hasPoints);
    if (usable.length === 0) return fail(`${file} has no track or route with points; expected one to be the course.`);
    const taken = usable.find((line) => pointsOf(line) > 1) ?? usable[0]!;
    return good(taken, usable.length > 1 ? [chosenFinding(document, lines, taken)] : []);
  }
  const named = lines.filter((line) => line.name === track);
  if (named.length > 1) return fail(`${file} has ${named.length} lines named "${track}"; say which by index: ${listed(lines)}.`);
  const line = named[0] ?? lines[/^\d+$/.test(String(track)) ? Number(track) : -1];
  if (line === undefined) return fail(`${file} has no line "${track}"; it has ${lines.length === 0 ? 'none' : listed(lines)}.`);
  return hasPoints(line) ? good(line) : fail(`Line "${track}" of ${file === 'The file' ? 'the file' : file} has no points.`);
}

function chosenFinding(document: GpxDocument, lines: readonly GpxLine[], line: GpxLine): Finding {
  const message = `The file has ${lines.length} lines (${listed(lines)}); took ${lines.indexOf(line)}. Name another as the track where that is wrong.`;
  return { code: 'track-chosen', severity: 'note', message, where: { file: document.file, line: line.line, column: line.column } };
}
