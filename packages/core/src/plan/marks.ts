/**
 * A plan's marks as points on the ground: those given by place, and those that name a waypoint of
 * the course's GPX file.
 */
import type { Mark } from '../course/calibrate.ts';
import { measureOfName } from '../course/markNames.ts';
import { type Finding, type Result, type Where, bad, good } from '../finding.ts';
import type { GpxDocument, GpxWaypoint } from '../gpx/document.ts';
import { shortText } from '../text/found.ts';
import type { PlanParams } from '../text/params/plan.ts';
import type { Unknown } from '../text/params/unknown.ts';
import { unknownWords } from './nearest.ts';
import { sourceFinding } from './sourceFinding.ts';

/** A mark as a plan or a call gives it: see `PlanMark`. */
export interface MarkText {
  readonly at?: Mark['at'];
  readonly measure?: number;
  readonly name?: string;
}

/** Marks with their places. Errors: a name that no waypoint has, or two; a name that says no distance where none is given. */
export function resolveMarks(
  marks: readonly MarkText[],
  document: GpxDocument | undefined,
  whereOf: (index: number) => Where,
): Result<readonly Mark[]> {
  const found: Mark[] = [];
  const findings: Finding[] = [];
  const named = namedIn(document);
  marks.forEach((mark, k) => {
    const where = whereOf(k);
    const resolved = resolve(mark, named);
    if ('problem' in resolved) findings.push(sourceFinding('mark-unknown', resolved, { severity: 'error', where }));
    else found.push({ ...resolved, where });
  });
  return findings.length > 0 ? bad(findings) : good(found);
}

type Unknowable = PlanParams['mark-unknown'];

/** The waypoints of a file by their names, made once for all marks; no file, no names. */
interface Named {
  readonly file: string | undefined;
  readonly waypoints: ReadonlyMap<string, readonly GpxWaypoint[]>;
  readonly unknown: ReturnType<typeof unknownWords>;
}

function namedIn(document: GpxDocument | undefined): Named {
  const waypoints = new Map<string, GpxWaypoint[]>();
  for (const waypoint of document?.waypoints ?? []) {
    if (waypoint.name === null) continue;
    const same = waypoints.get(waypoint.name);
    if (same === undefined) waypoints.set(waypoint.name, [waypoint]);
    else same.push(waypoint);
  }
  return { file: document?.file, waypoints, unknown: unknownWords() };
}

function resolve({ at, measure, name }: MarkText, of: Named): Mark | Unknowable {
  const known = measure ?? (name === undefined ? null : measureOfName(name));
  const meant = { ...(name === undefined ? {} : { name: shortText(name) }), ...hintOf(name, of) };
  if (known === null) return { problem: 'unmeasured', ...meant };
  const named = name === undefined ? {} : { name };
  if (at !== undefined) return { at, measure: known, ...named };
  const waypoints = of.waypoints.get(name ?? '') ?? [];
  const [waypoint] = waypoints;
  if (waypoint !== undefined && waypoints.length === 1)
    return { at: [waypoint.lon, waypoint.lat], measure: known, ...named };
  const gpx = of.file === undefined ? {} : { gpx: { file: shortText(of.file), waypoints: waypoints.length } };
  return { problem: 'unplaced', ...meant, ...gpx };
}

/** The waypoint that may have been meant, where none has the name. */
function hintOf(name: string | undefined, { waypoints, unknown }: Named): { readonly waypoint?: Unknown } {
  if (name === undefined || waypoints.size === 0 || waypoints.has(name)) return {};
  return { waypoint: unknown(name, [...waypoints.keys()]) };
}

/** A mark for each waypoint whose name says a course distance. */
export const marksOfWaypoints = (document: GpxDocument): Mark[] =>
  document.waypoints.flatMap(({ name, lon, lat, line, column }) => {
    const measure = name === null ? null : measureOfName(name);
    return name === null || measure === null
      ? []
      : [{ at: [lon, lat] as const, measure, name, where: { file: document.file, line, column } }];
  });

const SPEAKS_OF_A_DISTANCE =
  /(^|[^\p{L}\p{N}])(\d+([.,]\d+)?\s*(km?|mi|miles?|kilomet(re|er)s?)|(km|mi|miles?|kilomet(re|er))\.?\s*\d+([.,]\d+)?)($|[^\p{L}\p{N}])/iu;

/** Waypoints whose names speak of a distance among other words, such as "KM 40 water": nobody can tell whether they are marks. */
export const nearlyMarks = (document: GpxDocument): readonly GpxWaypoint[] =>
  document.waypoints.filter(
    ({ name }) => name !== null && measureOfName(name) === null && SPEAKS_OF_A_DISTANCE.test(name),
  );
