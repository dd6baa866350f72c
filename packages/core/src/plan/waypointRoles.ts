/**
 * What the waypoints of a file stand for in a first plan: marks of the course, where a name is a
 * distance; its start or finish; else stations. Whatever becomes no station is reported.
 */
import { type Mark, calibrate } from '../course/calibrate.ts';
import { courseLength, startMeasure } from '../course/course.ts';
import { pointAt } from '../course/locate.ts';
import { measureOfName } from '../course/markNames.ts';
import { passesOf } from '../course/passes.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { lengthBetween } from '../geodesy/segment.ts';
import { type Finding, type LonLat, type Where, good, type Result } from '../finding.ts';
import type { GpxDocument, GpxWaypoint } from '../gpx/document.ts';
import { shortText } from '../text/found.ts';
import { planFinding } from './fault.ts';

/** A waypoint with its index in the file. */
export interface NumberedWaypoint {
  readonly waypoint: GpxWaypoint;
  readonly k: number;
}

export interface WaypointRoles {
  /** Calibrated by the marks. */
  readonly indexed: IndexedCourse;
  /** Those given, then those that waypoints are. */
  readonly marks: readonly Mark[];
  readonly stations: readonly NumberedWaypoint[];
}

export interface GivenMarks {
  readonly marks: readonly Mark[];
  /** Known length of the course, metres. */
  readonly length?: number;
  readonly where: Where;
}

/** As a plan holds it: 7 decimals are 1 cm. */
export const rounded = ([lon, lat]: LonLat): LonLat => [Number(lon.toFixed(7)), Number(lat.toFixed(7))];

const samePlace = (a: LonLat, b: LonLat): boolean => a[0] === b[0] && a[1] === b[1];

/**
 * Marks, ends and stations among a file's waypoints, on a course that is not calibrated yet. Waypoints that say a distance
 * but stand off the course, or have no order on it, stay stations, with a warning. Errors: those of the given marks.
 */
export function rolesOf(document: GpxDocument, raw: IndexedCourse, given: GivenMarks): Result<WaypointRoles> {
  const base = calibrate(raw, given);
  if (!base.ok) return base;
  const all = document.waypoints.map((waypoint, k) => ({ waypoint, k }));
  const named = all.flatMap((one) => markOf(one, document.file));
  // One that is given as a mark already may be given with another distance than its name says.
  const asked = named.filter(({ mark }) => given.marks.some(({ at }) => samePlace(at, mark.at)));
  const distances = named.filter((one) => !asked.includes(one));
  const near = distances.filter(({ mark }) => passesOf(raw, mark.at).length > 0);
  const marks = [...given.marks, ...near.map(({ mark }) => mark)];
  const tried = near.length === 0 ? base : calibrate(raw, { ...given, marks });
  const calibrated = tried.ok ? tried : base;
  const taken = tried.ok ? [...asked, ...near] : asked;
  const marked = new Set(taken.map(({ k }) => k));
  const ends = all.flatMap(({ waypoint, k }) =>
    marked.has(k) ? [] : endOf(waypoint, calibrated.value).map((end) => ({ waypoint, k, end })),
  );
  const left = new Set([...marked, ...ends.map(({ k }) => k)]);
  const findings = [
    ...calibrated.findings,
    ...taken.map(({ mark }) =>
      planFinding(
        'start-waypoint',
        { problem: 'mark', name: shortText(mark.name) },
        { severity: 'note', where: mark.where },
      ),
    ),
    ...distances
      .filter(({ k }) => !marked.has(k))
      .map(({ mark }) => unplaced(mark, tried.ok || !near.some((one) => one.mark === mark))),
    ...ends.map(({ waypoint, end }) =>
      planFinding(
        'start-waypoint',
        { problem: 'end', name: shortText(waypoint.name ?? ''), end },
        { severity: 'note', where: whereOf(waypoint, document.file) },
      ),
    ),
  ];
  return good(
    { indexed: calibrated.value, marks: tried.ok ? marks : given.marks, stations: all.filter(({ k }) => !left.has(k)) },
    findings,
  );
}

const placeOf = ({ lon, lat }: GpxWaypoint): LonLat => rounded([lon, lat]);
const whereOf = ({ line, column }: GpxWaypoint, file: string): Where => ({ file, line, column });

type NamedMark = Mark & { readonly name: string; readonly where: Where };

function markOf({ waypoint, k }: NumberedWaypoint, file: string): { readonly k: number; readonly mark: NamedMark }[] {
  const name = waypoint.name?.trim() ?? '';
  const measure = measureOfName(name);
  return measure === null
    ? []
    : [{ k, mark: { at: placeOf(waypoint), measure, name, where: whereOf(waypoint, file) } }];
}

/** A waypoint that says a distance and stays a station. */
function unplaced({ name, where, at }: NamedMark, ordered: boolean): Finding {
  const problem = ordered ? 'offCourse' : 'unordered';
  const facts = { severity: 'warning', where: { ...where, at } } as const;
  return planFinding('start-waypoint', { problem, name: shortText(name) }, facts);
}

const START = /^(the |race )?start([ -]?(line|arch))?$|^(línea de )?salida$/iu;
const FINISH = /^(the |race )?finish([ -]?(line|arch))?$|^(línea de )?meta$/iu;
const BOTH = /^start *(\/|&|\+|-|and) *finish([ -]?line)?$|^salida *(\/|&|\+|-|y) *meta$/iu;
/** A waypoint no farther along the course from its start or finish stands there, metres. */
const AT_END = 50;
/** Nor does one so near to that end on the ground, as one beside the road or before the line is, metres (an assumption). */
const NEAR_END = 250;

/** The end of the course that a waypoint is called by and stands at; none where it is not so. */
function endOf({ name, lon, lat }: GpxWaypoint, { course, ...rest }: IndexedCourse): ('start' | 'finish')[] {
  const called = name?.replaceAll(/^[\s"'“”‘’«»]+|[\s"'“”‘’«»]+$/gu, '') ?? '';
  if (![START, FINISH, BOTH].some((pattern) => pattern.test(called))) return [];
  const measures = passesOf({ course, ...rest }, [lon, lat]).map(({ measure }) => measure);
  const beside = (measure: number): boolean => {
    const end = pointAt(course, measure)?.at;
    return end !== undefined && lengthBetween(lon, lat, end[0], end[1]) <= NEAR_END;
  };
  const [start, length] = [startMeasure(course), courseLength(course)];
  const starts = measures.some((measure) => measure - start <= AT_END) || (!FINISH.test(called) && beside(start));
  const finishes = measures.some((measure) => length - measure <= AT_END) || (!START.test(called) && beside(length));
  if (FINISH.test(called) && finishes) return ['finish'];
  return starts ? ['start'] : finishes ? ['finish'] : [];
}
