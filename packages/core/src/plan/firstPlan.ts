/** What the text of a first plan is made of, whoever asks for it. */
import type { Mark } from '../course/calibrate.ts';
import type { GapRule } from '../course/course.ts';
import { passesOf } from '../course/passes.ts';
import { formatLength } from '../format.ts';
import type { DeclaredSide } from '../kinds.ts';
import type { UnitSystem } from '../units.ts';
import { exactText } from './exactText.ts';
import { type WaypointRoles, rounded } from './waypointRoles.ts';

export type Entry = Readonly<Record<string, unknown>>;

/** A station before it has its id. */
export interface Draft {
  readonly name: string;
  readonly place: Entry;
}

/** Declared for every station, or right and left in turn, the first right. */
export type Sides = DeclaredSide | 'alternate' | undefined;

/** Most stations that a spacing may make. */
export const MOST = 500;

/** Distances of the practice in round metres, for plans that are laid out with metric tapes: all but those in yards. */
const METRIC_PRACTICE: Entry = {
  signAhead: '90 m',
  signTolerance: '9 m',
  gelAhead: '8 m',
  tableGap: '3 m',
  tableLength: '1.8 m',
  trashFrom: '45 m',
  trashTo: '90 m',
};

export const sideOf = (side: Sides, k: number): DeclaredSide | undefined =>
  side === 'alternate' ? (k % 2 === 0 ? 'right' : 'left') : side;

/** A station at a distance of a course, called by it. */
export function alongCourse(course: string, measure: number, side: DeclaredSide, units: UnitSystem | undefined): Draft {
  const text = exactText(measure, units);
  const name = text ?? formatLength(measure, units ?? 'metric', 'long', 3);
  return { name, place: { on: { course, measure: text ?? measure, side } } };
}

/** Up to the finish, which needs no station of its own; a metre short of it is the finish too. */
export function multiples(every: number, length: number): number[] {
  const count = Math.ceil((length - 1) / every) - 1;
  return Array.from({ length: Math.max(count, 0) }, (_, k) => every * (k + 1));
}

/** Stations of waypoints in course order by the first pass of each, those off the course last. */
export function waypointDrafts(
  { indexed, stations }: WaypointRoles,
  side: Sides,
  units: UnitSystem | undefined,
): Draft[] {
  const found = stations.map(({ waypoint, k }) => ({
    waypoint,
    k,
    measure: passesOf(indexed, [waypoint.lon, waypoint.lat])[0]?.measure ?? Infinity,
  }));
  // Equal measures, and two that are both off the course, keep the file's order.
  const ordered = found.sort((a, b) => (a.measure === b.measure ? a.k - b.k : a.measure - b.measure));
  return ordered.map(({ waypoint, k, measure }, index) => {
    const unnamed = measure === Infinity ? `Waypoint ${k + 1}` : formatLength(measure, units ?? 'metric', 'long');
    const declared = sideOf(side, index);
    return {
      name: waypoint.name?.trim() || unnamed,
      place: {
        at: rounded([waypoint.lon, waypoint.lat]),
        ...(declared === undefined ? {} : { side: declared }),
      },
    };
  });
}

/** A course as the plan writes it. */
export interface FirstCourse {
  readonly id: string;
  readonly name: string;
  readonly gpx?: string;
  /** Instead of a file. */
  readonly parts?: readonly Entry[];
  readonly track?: string | number | undefined;
  readonly gaps?: GapRule | undefined;
  readonly reverse?: boolean | undefined;
  readonly length?: number | undefined;
  readonly marks: readonly Mark[];
}

function courseEntry(
  { track, gaps, reverse, length, marks, ...course }: FirstCourse,
  units: UnitSystem | undefined,
): Entry {
  return {
    id: course.id,
    name: course.name,
    ...(course.gpx === undefined ? {} : { gpx: course.gpx }),
    ...(course.parts === undefined ? {} : { parts: course.parts }),
    ...(track === undefined ? {} : { track }),
    ...(gaps === undefined ? {} : { gaps }),
    ...(reverse === true ? { reverse } : {}),
    ...(length === undefined ? {} : { length: exactText(length, units) ?? length }),
    ...(marks.length === 0
      ? {}
      : { marks: [...marks].sort((a, b) => a.measure - b.measure).map((mark) => markEntry(mark, units)) }),
  };
}

const markEntry = ({ at, measure, name }: Mark, units: UnitSystem | undefined): Entry => ({
  at,
  measure: exactText(measure, units) ?? measure,
  ...(name === undefined ? {} : { name }),
});

export interface FirstPlan {
  readonly name: string;
  readonly units: UnitSystem | undefined;
  readonly date?: string | undefined;
  readonly emergency?: string | undefined;
  readonly courses: readonly FirstCourse[];
  readonly races: readonly Entry[];
  /** With their ids. */
  readonly stations: readonly Entry[];
}

/** As JSON: two spaces, coordinate pairs on one line. */
export function firstPlanText({ name, units, date, emergency, courses, races, stations }: FirstPlan): string {
  const plan: Entry = {
    format: 'halfcup-plan',
    version: 1,
    name,
    ...(date === undefined ? {} : { date }),
    ...(units === undefined ? {} : { units }),
    courses: courses.map((course) => courseEntry(course, units)),
    races,
    stations,
    ...(units === 'imperial' ? {} : { practice: METRIC_PRACTICE }),
    ...(emergency === undefined ? {} : { contacts: { emergency } }),
  };
  return `${oneLinePairs(JSON.stringify(plan, null, 2))}\n`;
}

/** A line break cannot stand inside a JSON text, so this meets lists of two numbers only. */
const oneLinePairs = (json: string): string =>
  json.replaceAll(/\[\n\s+(-?[\d.e+-]+),\n\s+(-?[\d.e+-]+)\n\s+\]/gu, '[$1, $2]');
