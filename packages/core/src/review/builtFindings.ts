/**
 * What a review finds of stations as they were recorded, held against what it finds of the plan: only what is new or worse is said.
 * What the recorded error leaves open is a note that says so. Model: a length may be off by k·σ of the points that it is between; what
 * is no length (an angle, a grade, that something is there at all) must be found also where all points of the station lie k·σ farther
 * along the course, back, or to either side.
 */
import { sigmaOf } from '../course/passes.ts';
import type { Finding, Where } from '../finding.ts';
import { RADIANS } from '../geodesy/ellipsoid.ts';
import type { Layout } from '../layout/layout.ts';
import { findById, leadOf } from '../plan/lookups.ts';
import { type Shift, builtLayout } from './built.ts';
import type { DayFacts } from './check.ts';
import { GUARD } from './placedGround.ts';
import { type Held, pointFor, recordedError } from './placedHeld.ts';
import { type Reviewed, reviewLayout } from './review.ts';
import { seenOf, stillSeen } from './seen.ts';

/** What points recorded on the ground are asked with their errors, by checks of their own. */
const ASKED_OF_POINTS: ReadonlySet<string> = new Set([
  'sign-distance',
  'box-distance',
  'item-order',
  'item-across',
  'item-off-course',
  'side-unclear',
  'side-contradicted',
]);

/** Parameters that name another station. */
const STATIONS = ['other', 'before', 'from', 'to'] as const;

/** What findings as built are made from. */
export interface BuiltGround {
  readonly held: Held;
  /** What the plan's own review found. */
  readonly planned: readonly Finding[];
  readonly known: Reviewed | undefined;
  readonly day: DayFacts | null;
}

/** Errors, warnings and notes that the recorded stations add to the plan's, marked as built; waivers not counted. */
export function builtFindings(ground: BuiltGround): Finding[] {
  const { held, planned, known, day } = ground;
  const layout = builtLayout(held);
  const review = reviewLayout(layout, [], known, day);
  const own = { layout, known: { courses: layout.courses, stations: layout.stations, atStations: review.atStations } };
  return review.findings
    .filter(({ code }) => !ASKED_OF_POINTS.has(code))
    .filter((finding) => !planned.some((one) => one.code === finding.code && isKnown(one, finding, held)))
    .map((finding) => (isOpen(finding, ground, own) ? asOpen(finding) : finding))
    .map((finding) => ({ ...finding, where: onGround(finding.where, held), built: true }));
}

/**
 * Whether the plan's own review says it already: the same thing there, decided as well, as grave, and no worse than the error may make
 * it. A note only describes the thing: another figure is no other note.
 */
function isKnown(planned: Finding, built: Finding, held: Held): boolean {
  if (planned.where.station !== built.where.station || isGraver(built, planned)) return false;
  const items = itemsOf(planned);
  if (itemsOf(built).some((item) => !items.includes(item))) return false;
  const seen = stillSeen(seenOf(withoutItems(planned)), withoutItems(built));
  if (seen !== 'worse') return seen === 'same';
  if (built.severity === 'note') return true;
  const apart = Math.abs((built.measured ?? 0) - (planned.measured ?? 0));
  return built.unit === 'm' && apart <= errorsOf(built, held).reduce((sum, error) => sum + error, 0);
}

const GRAVITY = { error: 2, warning: 1, note: 0 } as const;

const isGraver = (one: Finding, other: Finding): boolean =>
  GRAVITY[one.severity] > GRAVITY[other.severity] || (other.cannotTell === true && one.cannotTell !== true);

/** Kinds of items that a finding is about: of several, noise decides which is named first. */
function itemsOf({ where, params }: Finding): readonly unknown[] {
  const several = params?.['items'];
  return [where.item, params?.['item'], ...(Array.isArray(several) ? (several as readonly unknown[]) : [])].filter(
    (item) => item !== undefined,
  );
}

function withoutItems({ where, params, ...finding }: Finding): Finding {
  const { item: _, ...place } = where;
  return {
    ...finding,
    where: place,
    ...(params === undefined ? {} : { params: { ...params, item: null, items: null } }),
  };
}

/** Stations that a finding is about and that were recorded, by their ids. */
function recordedIn({ where, params }: Finding, held: Held): string[] {
  const named = [where.station, ...STATIONS.map((key) => params?.[key])];
  return [...new Set(named)].filter((id): id is string => typeof id === 'string' && recordedError(held, id) !== null);
}

const errorsOf = (finding: Finding, held: Held): number[] =>
  recordedIn(finding, held).map((id) => recordedError(held, id)!);

/** By how much a length between the stations of a finding may be off, metres. */
const marginFor = (finding: Finding, held: Held): number =>
  GUARD * sigmaOf({ pinR95: Math.hypot(...errorsOf(finding, held)), courseR95: 0 });

/** How far a length lies beyond its limit; `null` where it is no length with a limit. */
function beyond({ measured, limit, unit }: Finding): number | null {
  if (measured === undefined || limit === undefined || unit !== 'm') return null;
  const [low, high] = typeof limit === 'number' ? [limit, limit] : limit;
  return Math.max(low - measured, measured - high);
}

function isOpen(finding: Finding, ground: BuiltGround, own: Pick<Shaken, 'layout' | 'known'>): boolean {
  if (finding.cannotTell === true) return true;
  const by = beyond(finding);
  if (by !== null) return by < marginFor(finding, ground.held);
  return recordedIn(finding, ground.held).some((station) =>
    shifts(station, finding, ground.held).some((shift) => !isFoundAt(shift, finding, { ...own, ground })),
  );
}

interface Shaken {
  readonly ground: BuiltGround;
  readonly layout: Layout;
  readonly known: Reviewed;
}

function isFoundAt(shift: Shift, finding: Finding, { ground: { held, day }, layout, known }: Shaken): boolean {
  const { findings } = reviewLayout(builtLayout(held, shift, layout), [], known, day);
  const seen = seenOf(finding);
  return findings.some(
    (one) =>
      one.code === finding.code && one.where.station === finding.where.station && stillSeen(seen, one) !== 'other',
  );
}

/** Along the course, back, and to both sides. */
function shifts(station: string, finding: Finding, held: Held): Shift[] {
  const lead = leadOf(findById(held.layout.stations, station)!);
  const azimuth = (lead?.azimuthDeg ?? 0) * RADIANS;
  const by = marginFor(finding, held);
  const [east, north] = [by * Math.sin(azimuth), by * Math.cos(azimuth)];
  return [
    { station, east, north },
    { station, east: -east, north: -north },
    { station, east: north, north: -east },
    { station, east: -north, north: east },
  ];
}

const asOpen = (finding: Finding): Finding => ({ ...finding, severity: 'note', cannotTell: true });

/** Its place in the points' file instead of the plan's. */
function onGround(planned: Where, held: Held): Where {
  const { path: _, ...where } = planned;
  const point = where.station === undefined ? null : pointFor(held, where.station, where.item);
  const { line, column } = point?.where ?? {};
  return {
    ...where,
    file: held.file,
    ...(line === undefined ? {} : { line }),
    ...(column === undefined ? {} : { column }),
  };
}
