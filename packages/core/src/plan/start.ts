/**
 * The text of a first plan, from a course and either the waypoints of its file or places along it.
 * It reads back cleanly by `readPlan`; nothing of the file is left out.
 */
import type { Course, GapRule } from '../course/course.ts';
import { courseLength } from '../course/course.ts';
import { buildCourse } from '../course/build.ts';
import { passesOf } from '../course/passes.ts';
import { indexCourse } from '../course/segmentIndex.ts';
import { type Finding, type Result, bad, good } from '../finding.ts';
import type { GpxDocument, GpxWaypoint } from '../gpx/document.ts';
import { type LengthUnit, type UnitSystem, formatLength, lengthIn, parseLength } from '../units.ts';
import { chooseLine } from './courses.ts';
import type { DeclaredSide } from './plan.ts';
import { readPlan } from './read.ts';

export interface StartOptions {
  /** Of the plan and its race. */
  readonly name: string;
  /** The GPX file as the plan is to name it: relative to the plan's folder. */
  readonly gpx: string;
  /** Written into the plan; with `metric` the practice too, in round metres. */
  readonly units?: UnitSystem;
  /** Places every so many metres, instead of waypoints. */
  readonly every?: number;
  /** Places at these measures, metres, instead of waypoints. */
  readonly at?: readonly number[];
  readonly side?: DeclaredSide | 'alternate';
  readonly track?: string;
  readonly gaps?: GapRule;
  readonly reverse?: boolean;
}

type Entry = Readonly<Record<string, unknown>>;
/** A station before it has its id. */
interface Draft {
  readonly name: string;
  readonly place: Entry;
}

const COURSE = 'course';
const MOST = 500;

/** Distances of the practice in round metres, for plans that are laid out with metric tapes. */
const METRIC_PRACTICE: Entry = { signAhead: '90 m', gelAhead: '8 m', tableGap: '3 m', tableLength: '1.8 m', trashFrom: '45 m', trashTo: '90 m' };

/**
 * A plan as JSON text: two spaces, coordinate pairs on one line and to 7 decimals (1 cm). Stations in course order by
 * the first pass of each, those off the course last. Errors: no usable line, no waypoints and no places asked for,
 * a place beyond the course, a name that a plan cannot hold.
 */
export function startPlan(document: GpxDocument, options: StartOptions): Result<string> {
  const line = chooseLine(document, options.track, { file: document.file });
  if (!line.ok) return line;
  const where = { file: document.file, line: line.value.line, column: line.value.column };
  const built = buildCourse({ ...options, id: COURSE, name: line.value.name ?? options.name, segments: line.value.segments, where });
  if (!built.ok) return built;
  const course = built.value;
  const drafts = draftsOf(document, course, options);
  if (!drafts.ok) return drafts;
  const text = planText(options, course, drafts.value);
  const read = readPlan(text, options.gpx);
  // The text is not in any file yet: its lines and columns would point nowhere.
  if (!read.ok) return bad(read.findings.map(({ code, severity, message }) => ({ code, severity, message, where: {} })));
  return good(text, [...line.findings, ...built.findings]);
}

const refuse = (message: string, document: GpxDocument, more: Partial<Finding> = {}): Result<never> =>
  bad([{ code: 'start-places', severity: 'error', message, where: { file: document.file }, ...more }]);

function draftsOf(document: GpxDocument, course: Course, options: StartOptions): Result<readonly Draft[]> {
  const { every, at } = options;
  if (every !== undefined && at !== undefined) return refuse('Found both "every" and "at"; expected one of them, or neither for the waypoints of the file.', document);
  if (every === undefined && at === undefined) {
    if (document.waypoints.length > 0) return good(fromWaypoints(document.waypoints, course, options));
    return refuse('The file has no waypoints to make stations of; say every how far, or at which course distances, stations are to stand.', document);
  }
  const length = courseLength(course);
  const long = formatLength(length, options.units ?? 'metric', 'long', 3);
  if (every !== undefined && !(every > 0 && every < length && length / every <= MOST)) {
    return refuse(`Found a station every ${every} m on a course of ${long}; expected a distance shorter than the course, for at most ${MOST} stations.`, document);
  }
  const measures = at === undefined ? multiples(every!, length) : [...new Set(at)].sort((a, b) => a - b);
  const beyond = measures.filter((measure) => measure > length);
  if (beyond.length > 0) {
    return refuse(`Found a station at ${beyond[0]} m, but the course is ${long} long; expected course distances on it.`, document, { code: 'measure-beyond-course', measured: beyond[0]!, limit: length, unit: 'm' });
  }
  return good(measures.map((measure, k) => alongCourse(measure, sideOf(options.side, k) ?? 'right', options.units)));
}

/** Up to the finish, which needs no station of its own; a metre short of it is the finish too. */
function multiples(every: number, length: number): number[] {
  const count = Math.ceil((length - 1) / every) - 1;
  return Array.from({ length: Math.max(count, 0) }, (_, k) => every * (k + 1));
}

const sideOf = (side: StartOptions['side'], k: number): DeclaredSide | undefined => (side === 'alternate' ? (k % 2 === 0 ? 'right' : 'left') : side);

function alongCourse(measure: number, side: DeclaredSide, units: UnitSystem | undefined): Draft {
  const text = exactText(measure, units);
  const name = text ?? formatLength(measure, units ?? 'metric', 'long', 3);
  return { name, place: { on: { course: COURSE, measure: text ?? measure, side } } };
}

/** A measure as a text that reads back as the very same number, in the wanted unit or the other; nothing where neither is short. */
function exactText(measure: number, units: UnitSystem = 'metric'): string | undefined {
  const preferred: readonly LengthUnit[] = units === 'metric' ? ['km', 'mi'] : ['mi', 'km'];
  for (const unit of preferred) {
    const text = `${Number(lengthIn(measure, unit).toFixed(3))} ${unit}`;
    const back = parseLength(text);
    if (back.ok && Math.abs(back.value - measure) < 1e-9) return text;
  }
  return undefined;
}

function fromWaypoints(waypoints: readonly GpxWaypoint[], course: Course, options: StartOptions): Draft[] {
  const indexed = indexCourse(course);
  const found = waypoints.map((waypoint, k) => ({ waypoint, k, measure: passesOf(indexed, [waypoint.lon, waypoint.lat])[0]?.measure ?? Infinity }));
  // Equal measures, and two that are both off the course, keep the file's order.
  const ordered = found.sort((a, b) => (a.measure === b.measure ? a.k - b.k : a.measure - b.measure));
  return ordered.map(({ waypoint, k, measure }, index) => {
    const unnamed = measure === Infinity ? `Waypoint ${k + 1}` : formatLength(measure, options.units ?? 'metric', 'long');
    const side = sideOf(options.side, index);
    const at = [Number(waypoint.lon.toFixed(7)), Number(waypoint.lat.toFixed(7))];
    return { name: waypoint.name?.trim() || unnamed, place: { at, ...(side === undefined ? {} : { side }) } };
  });
}

function planText(options: StartOptions, course: Course, drafts: readonly Draft[]): string {
  const { name, gpx, units, track, gaps, reverse } = options;
  const plan: Entry = {
    format: 'halfcup-plan',
    version: 1,
    name,
    ...(units === undefined ? {} : { units }),
    courses: [
      {
        id: COURSE,
        name: course.name,
        gpx,
        ...(track === undefined ? {} : { track }),
        ...(gaps === undefined ? {} : { gaps }),
        ...(reverse === true ? { reverse } : {}),
      },
    ],
    races: [{ id: 'race', name, course: COURSE }],
    stations: drafts.map((draft, k) => ({ id: `s${k + 1}`, name: draft.name, ...draft.place })),
    ...(units === 'metric' ? { practice: METRIC_PRACTICE } : {}),
  };
  return `${oneLinePairs(JSON.stringify(plan, null, 2))}\n`;
}

/** A line break cannot stand inside a JSON text, so this meets lists of two numbers only. */
const oneLinePairs = (json: string): string => json.replaceAll(/\[\n\s+(-?[\d.e+-]+),\n\s+(-?[\d.e+-]+)\n\s+\]/gu, '[$1, $2]');
