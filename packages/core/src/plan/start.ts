/**
 * The text of a first plan, from a course and either the waypoints of its file or places along it.
 * It reads back cleanly by `readPlan`; a waypoint that becomes no station is reported.
 */
import { type Mark, calibrate } from '../course/calibrate.ts';
import { courseFinding } from '../course/courseFinding.ts';
import { type Course, type GapRule, courseLength, startMeasure } from '../course/course.ts';
import { buildCourse } from '../course/build.ts';
import { measureOfName } from '../course/markNames.ts';
import { type IndexedCourse, indexCourse } from '../course/segmentIndex.ts';
import { type Finding, type Result, bad, good } from '../finding.ts';
import type { GpxDocument } from '../gpx/document.ts';
import type { UnitSystem } from '../units.ts';
import { chooseLine } from '../gpx/chooseLine.ts';
import { foundOf, shortText } from '../text/found.ts';
import type { PlanParams } from '../text/params/plan.ts';
import { planFinding } from './fault.ts';
import { type Draft, MOST, alongCourse, firstPlanText, multiples, sideOf, waypointDrafts } from './firstPlan.ts';
import type { DeclaredSide } from './plan.ts';
import { readPlan } from './read.ts';
import { type GivenMarks, rolesOf, rounded } from './waypointRoles.ts';
import { type Shape, aFlag, aNumber, aText, finite, listOf, maybe, oneOf, positive, recordOf, want } from '../wants.ts';
import { isUnits } from './shapes.ts';
import { isGapRule } from '../course/course.ts';
import { isMark } from '../course/calibrate.ts';
import { isGpxDocument } from '../gpx/shapes.ts';

/** What a first plan is to say; stations from waypoints unless `every` or `at` is given. */
export interface StartOptions {
  /** Of the plan and its race. */
  readonly name: string;
  /** The GPX file as the plan is to name it: relative to the plan's folder. */
  readonly gpx: string;
  /** Written into the plan. But for `imperial`, the practice is written too, in round metres. */
  readonly units?: UnitSystem;
  /** Places every so many metres, instead of waypoints. */
  readonly every?: number;
  /** Places at these measures, metres, instead of waypoints. */
  readonly at?: readonly number[];
  /** Declared for every station, or right and left in turn, the first right. */
  readonly side?: DeclaredSide | 'alternate';
  /** Name or index of the line that is the course; absent: the first with points. */
  readonly track?: string;
  /** Absent: refused. */
  readonly gaps?: GapRule;
  /** Run from the last point to the first. */
  readonly reverse?: boolean;
  /** Known length of the course, metres: written into the plan, as are the marks. */
  readonly length?: number;
  /** Points of known measure, which calibrate the course. */
  readonly marks?: readonly Mark[];
  /** Of the race, as "2027-09-12". */
  readonly date?: string;
  /** The number to call in an emergency. */
  readonly emergency?: string;
}

const isStartOptions: Shape = recordOf<StartOptions>('options { name, gpx }', {
  name: aText,
  gpx: aText,
  units: maybe(isUnits),
  every: maybe(aNumber),
  at: maybe(listOf(finite)),
  side: maybe(oneOf('left', 'right', 'alternate')),
  track: maybe(aText),
  gaps: maybe(isGapRule),
  reverse: maybe(aFlag),
  length: maybe(positive),
  marks: maybe(listOf(isMark)),
  date: maybe(aText),
  emergency: maybe(aText),
});

interface Drafts {
  readonly drafts: readonly Draft[];
  readonly marks: readonly Mark[];
}

const COURSE = 'course';
/**
 * The text of a first plan, as JSON: two spaces, coordinate pairs on one line and to 7 decimals (1 cm). Stations in course order by
 * the first pass of each, those off the course last. Waypoints whose names are distances become marks, those at the start
 * and the finish that are called so are left out, each with a note. Errors: no usable line, no waypoints and no places
 * asked for, a place beyond the course, marks that calibrate nothing, a name that a plan cannot hold.
 * @example
 * ```ts
 * import { readPlan, startPlan } from '@halfcup/core';
 * import { readGpx } from '@halfcup/core/gpx';
 * const gpx = readGpx(`<gpx version="1.1" creator="me"><trk><trkseg>
 *   <trkpt lat="-33.2" lon="-17.4"/><trkpt lat="-33.2" lon="-17.36"/></trkseg></trk></gpx>`, 'full.gpx');
 * if (!gpx.ok) throw new Error(gpx.findings[0]?.message);
 * const text = startPlan(gpx.value, { name: 'Tern Cay 4', gpx: 'full.gpx', at: [1000, 2500], side: 'right' });
 * const plan = text.ok ? readPlan(text.value, 'plan.json') : text;
 * plan.ok && plan.value.plan.stations.map(({ name }) => name); // → ['1 km', '2.5 km']
 * ```
 */
export function startPlan(document: GpxDocument, options: StartOptions): Result<string> {
  want('startPlan', 'document', isGpxDocument, document);
  want('startPlan', 'options', isStartOptions, options);
  const line = chooseLine(document, options.track, { file: document.file });
  if (!line.ok) return line;
  const where = { file: document.file, line: line.value.line, column: line.value.column };
  const built = buildCourse({
    ...options,
    id: COURSE,
    name: line.value.name ?? options.name,
    segments: line.value.segments,
    where,
  });
  if (!built.ok) return built;
  const { length } = options;
  const marks = (options.marks ?? []).map((mark) => ({ ...mark, at: rounded(mark.at) }));
  const drafted = draftsOf(document, indexCourse(built.value), options, {
    marks,
    where,
    ...(length === undefined ? {} : { length }),
  });
  if (!drafted.ok) return drafted;
  const text = firstPlanText({
    name: options.name,
    units: options.units,
    date: options.date,
    emergency: options.emergency,
    courses: [{ ...options, id: COURSE, name: built.value.name, marks: drafted.value.marks }],
    races: [{ id: 'race', name: options.name, course: COURSE }],
    stations: drafted.value.drafts.map((draft, k) => ({ id: `s${k + 1}`, name: draft.name, ...draft.place })),
  });
  const read = readPlan(text, options.gpx);
  // The text is not in any file yet: its lines and columns would point nowhere.
  if (!read.ok) return bad(read.findings.map((finding) => ({ ...finding, where: {} })));
  return good(text, [...line.findings, ...built.findings, ...drafted.findings]);
}

type Places = PlanParams['start-places'];

const refuse = (places: Places, { file }: GpxDocument): Result<never> =>
  bad([planFinding('start-places', places, { severity: 'error', where: { file } })]);

function draftsOf(document: GpxDocument, raw: IndexedCourse, options: StartOptions, given: GivenMarks): Result<Drafts> {
  const { every, at } = options;
  if (every !== undefined && at !== undefined) return refuse({ problem: 'everyAndAt' }, document);
  if (every === undefined && at === undefined) {
    if (document.waypoints.length > 0) return fromWaypoints(document, raw, options, given);
    return refuse({ problem: 'noWaypoints' }, document);
  }
  const calibrated = calibrate(raw, given);
  if (!calibrated.ok) return calibrated;
  const measures = measuresOf(document, calibrated.value.course, options);
  if (!measures.ok) return measures;
  const drafts = measures.value.map((measure, k) =>
    alongCourse(COURSE, measure, sideOf(options.side, k) ?? 'right', options.units),
  );
  return good({ drafts, marks: given.marks }, [
    ...calibrated.findings,
    ...measures.findings,
    ...unusedMarks(document, given.marks),
  ]);
}

/** Where stations are to stand along the course, ascending. */
function measuresOf(document: GpxDocument, course: Course, { every, at }: StartOptions): Result<readonly number[]> {
  const [start, length] = [startMeasure(course), courseLength(course)];
  if (every !== undefined && !(every > 0 && every < length && length / every <= MOST)) {
    return refuse({ problem: 'every', every: foundOf(every), length, most: MOST }, document);
  }
  const measures =
    at === undefined
      ? multiples(every!, length).filter((measure) => measure > start)
      : [...new Set(at)].sort((a, b) => a - b);
  const beyond = measures.find((measure) => measure > length || measure < start);
  if (beyond !== undefined) {
    const past = beyond > length;
    const problem = past ? ({ problem: 'past', length } as const) : ({ problem: 'before', start } as const);
    return bad([
      courseFinding(
        'measure-beyond-course',
        { what: 'station', measure: beyond, ...problem },
        {
          severity: 'error',
          where: { file: document.file },
          measured: beyond,
          limit: past ? length : start,
          unit: 'm',
        },
      ),
    ]);
  }
  const repeated = measures.filter((measure) => (at ?? []).indexOf(measure) !== (at ?? []).lastIndexOf(measure));
  return good(
    measures,
    repeated.map((measure) => note({ problem: 'repeated', measure }, document)),
  );
}

const note = (places: Places, { file }: GpxDocument): Finding =>
  planFinding('start-places', places, { severity: 'note', where: { file } });

const NAMED = 5;

/** Reported where the file marks distances that nobody asked to use. */
function unusedMarks(document: GpxDocument, marks: readonly Mark[]): Finding[] {
  const names = document.waypoints.flatMap(({ name }) =>
    name !== null && measureOfName(name) !== null && !marks.some((mark) => mark.name === name) ? [shortText(name)] : [],
  );
  if (names.length === 0) return [];
  const more = Math.max(0, names.length - NAMED);
  return [note({ problem: 'unusedMarks', names: names.slice(0, NAMED), more }, document)];
}

function fromWaypoints(
  document: GpxDocument,
  raw: IndexedCourse,
  options: StartOptions,
  given: GivenMarks,
): Result<Drafts> {
  const roles = rolesOf(document, raw, given);
  if (!roles.ok) return roles;
  const drafts = waypointDrafts(roles.value, options.side, options.units);
  const none = drafts.length === 0 ? [note({ problem: 'noStations' }, document)] : [];
  return good({ drafts, marks: roles.value.marks }, [...roles.findings, ...none]);
}
