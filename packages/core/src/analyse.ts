/**
 * The whole job as one pure function: a plan and the files it names in, an Analysis out.
 * In stages that a caller can keep: courses depend on the plan's courses and the files only; who
 * passes where on those and the stations; race day on that; the layout on all; the review on the layout.
 * Of an analysis before, each stage takes what was made from the very same.
 */
import type { IndexedCourse } from './course/segmentIndex.ts';
import { type Finding, type Result, bad, good, isResultOf } from './finding.ts';
import { laySeen } from './layout/layStation.ts';
import { numbered } from './layout/numbers.ts';
import { inEnglish } from './text/inEnglish.ts';
import { voiceOf } from './plan/voice.ts';
import { courseTable, seeStation } from './station/seeStation.ts';
import type { SeenStation } from './station/station.ts';
import type { Layout } from './layout/layout.ts';
import { withStreets } from './layout/streets.ts';
import { type PlanGround, isPlanGround } from './ground/planGround.ts';
import { type GroundSources, groundOf, isGroundSources } from './plan/ground.ts';
import { type CourseSources, coursesOf, isCourseSources } from './plan/courses.ts';
import { equal } from './plan/equal.ts';
import type { Plan } from './plan/plan.ts';
import type { RaceDay, StationDay } from './raceday/day.ts';
import type { DayNeeds } from './layout/stretches.ts';
import {
  type DayFound,
  type Fields,
  type ResultTexts,
  daysOf,
  fieldsOf,
  hasField,
  raceDayFrom,
  raceDayOf,
} from './raceday/raceDay.ts';
import { type Review, reviewLayout } from './review/review.ts';
import type { CourseTable } from './station/directions.ts';
import { courseEnds, spacingOf } from './station/spacing.ts';
import { type Shape, aText, maybe, recordOf, want, listOf, mapOf, orNull } from './wants.ts';
import { isWholePlan } from './plan/shapes.ts';
import { isIndexed } from './course/indexedShape.ts';
import { isSeenStation } from './station/shapes.ts';
import { isRaceDay } from './raceday/shapes.ts';

/** Files that a plan names, already read, by the name that it uses for them. */
export interface Sources extends CourseSources, GroundSources {
  /** Texts of past results. */
  readonly results?: ResultTexts;
}

export const isSources: Shape = (value) =>
  isCourseSources(value) ?? isGroundSources(value) ?? recordOf('files', { results: maybe(mapOf(aText)) })(value);

/** All that is computed from a plan: the layout, race day and the review. Findings: of the courses first, then of race day, then of the layout by check. */
export interface Analysis extends Layout, Pick<Review, 'findings' | 'checks'> {
  /** `null` where no race of the plan has waves. */
  readonly day: RaceDay | null;
  /** Absent where somebody has put an analysis together from stages. */
  readonly kept?: Kept;
}

/** What the stages made on the way, for `reanalyse` alone: other versions keep other things. */
export interface Kept extends Pick<Review, 'atStations'> {
  /** Of reading and measuring. */
  readonly courseFindings: readonly Finding[];
  /** In the order of the stations, as are `days` and `atStations`. */
  readonly seen: readonly Result<SeenStation>[];
  /** `null` without a race day, whose `days` are none. */
  readonly fields: Fields | null;
  readonly days: readonly DayFound[];
}

/**
 * First stage: the plan's courses, measured, indexed and calibrated, in the plan's order. Errors: a missing file, a refused
 * gap, marks with no order, a part beyond its course.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseLength, courseStage } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const courses = courseStage(read.value.plan, { gpx: new Map() });
 * courses.ok && courses.value.map(({ course }) => courseLength(course)); // → [3729.67]
 * ```
 */
export function courseStage(plan: Plan, sources: CourseSources): Result<readonly IndexedCourse[]> {
  want('courseStage', 'plan', isWholePlan, plan);
  want('courseStage', 'sources', isCourseSources, sources);
  return coursesOf(plan, sources);
}

/**
 * Second stage: where each station stands, who passes it and from which directions, in the plan's order. `courses`: what the
 * first stage gave for the same plan. Errors: a station at a measure that its course does not have.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseStage, passStage } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const courses = courseStage(plan, { gpx: new Map() });
 * if (!courses.ok) throw new Error(courses.findings[0]?.message);
 * const seen = passStage(plan, courses.value);
 * seen.ok && seen.value[0]?.passes.map(({ measure, side }) => [measure, side]); // → [[2000, 'right']]
 * ```
 */
export function passStage(plan: Plan, courses: readonly IndexedCourse[]): Result<readonly SeenStation[]> {
  want('passStage', 'plan', isWholePlan, plan);
  want('passStage', 'courses', listOf(isIndexed), courses);
  const table = courseTable(courses);
  return allSeen(plan.stations.map((_, index) => seeStation(plan, index, table)));
}

function allSeen(seen: readonly Result<SeenStation>[]): Result<readonly SeenStation[]> {
  const findings = seen.flatMap((result) => result.findings);
  const stations = seen.flatMap((result) => (result.ok ? [result.value] : []));
  return stations.length < seen.length ? bad(findings) : good(stations, findings);
}

/**
 * Third stage: arrivals, cups, crews and runs, or `null` where no race of the plan has waves. `seen`: what the second stage
 * gave; `results`: texts of past results by the plan's names. What is wrong or assumed is in its `findings`.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseStage, dayStage, passStage } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c",
 *     "waves": [{ "time": "08:00", "entrants": 200 }], "finish": { "median": "0:24:00", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const courses = courseStage(plan, { gpx: new Map() });
 * if (!courses.ok) throw new Error(courses.findings[0]?.message);
 * const seen = passStage(plan, courses.value);
 * const day = seen.ok ? dayStage(plan, courses.value, seen.value) : null;
 * day?.stations[0]?.cups; // → { water: 166, sportsDrink: 83 }
 * ```
 */
export function dayStage(
  plan: Plan,
  courses: readonly IndexedCourse[],
  seen: readonly SeenStation[],
  results: ResultTexts = new Map(),
): RaceDay | null {
  want('dayStage', 'plan', isWholePlan, plan);
  want('dayStage', 'courses', listOf(isIndexed), courses);
  want('dayStage', 'seen', listOf(isSeenStation), seen);
  want('dayStage', 'results', mapOf(aText), results);
  return hasField(plan) ? raceDayOf(plan, seen, courseTable(courses), results) : null;
}

/**
 * The ground beside the courses by the map that the plan names, or `undefined` where it names none or that is not among the files:
 * it depends on the courses and the map alone. `courses`: what the first stage gave for the same plan.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseStage, groundStage } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1, "ground": "ground.geojson",
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }], "stations": [] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const courses = courseStage(read.value.plan, { gpx: new Map() });
 * if (!courses.ok) throw new Error(courses.findings[0]?.message);
 * const source = { date: '2026-10-02', credit: '© OpenStreetMap contributors', licence: 'ODbL 1.0' };
 * const way = { id: 'way/1', tags: { highway: 'residential', name: 'Harbour Road' }, nodes: ['1', '2'],
 *   lon: Float64Array.of(-17.4, -17.36), lat: Float64Array.of(-33.2, -33.2) };
 * const ground = { source, ways: [way], areas: [], points: [] };
 * const along = groundStage(read.value.plan, courses.value, { ground: new Map([['ground.geojson', ground]]) })?.along;
 * along?.get('c')?.streets.map(({ name }) => name); // → ['Harbour Road']
 * ```
 */
export function groundStage(
  plan: Plan,
  courses: readonly IndexedCourse[],
  sources: GroundSources,
): PlanGround | undefined {
  want('groundStage', 'plan', isWholePlan, plan);
  want('groundStage', 'courses', listOf(isIndexed), courses);
  want('groundStage', 'sources', isGroundSources, sources);
  return groundOf(plan, courses, sources);
}

/**
 * Fourth stage: items on the ground and spacing, with the tables and the hand-out line of race day and the streets of the ground
 * where there are any.
 * Errors: as `passStage`. The checks are not run: see `reviewLayout`.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { courseStage, layoutStage } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const courses = courseStage(plan, { gpx: new Map() });
 * if (!courses.ok) throw new Error(courses.findings[0]?.message);
 * const layout = layoutStage(plan, courses.value);
 * const [station] = layout.ok ? layout.value.stations : [];
 * station?.directions[0]?.items.map(({ kind, along }) => [kind, along[0]]); // → [['sign', -91.44], ['sportsDrink', 0], ['water', 4.88], ['trash', 52.43]]
 * ```
 */
export function layoutStage(
  plan: Plan,
  courses: readonly IndexedCourse[],
  day: RaceDay | null = null,
  ground?: PlanGround,
): Result<Layout> {
  want('layoutStage', 'plan', isWholePlan, plan);
  want('layoutStage', 'courses', listOf(isIndexed), courses);
  want('layoutStage', 'day', orNull(isRaceDay), day);
  want('layoutStage', 'ground', maybe(isPlanGround), ground);
  const seen = passStage(plan, courses);
  return seen.ok ? good(layoutOfSeen(plan, courses, seen.value, { day, ground }), seen.findings) : seen;
}

function layoutOfSeen(
  plan: Plan,
  courses: readonly IndexedCourse[],
  seen: readonly SeenStation[],
  { day, ground }: { readonly day: RaceDay | null; readonly ground: PlanGround | undefined },
  held: Held | null = null,
): Layout {
  const table = courseTable(courses);
  const days = new Map(
    day?.stations.filter(({ quantiles }) => quantiles !== null).map((station) => [station.id, needsOf(station)]),
  );
  const laid = seen.map((station, k) => {
    const [needs, before] = [days.get(station.id), held?.before.stations[k]];
    // Of the plan only its language and the crew's rules enter, and those with the needs alone, which are made anew with them.
    return before !== undefined &&
      isSeen(held?.kept.seen[k], station) &&
      equal(before.needs, needs) &&
      held?.before.plan.language === plan.language &&
      held.before.ground === ground
      ? before
      : withStreets(laySeen(plan, station, table, needs), ground);
  });
  const stations = numbered(plan, laid);
  return {
    plan,
    courses,
    stations,
    spacing: plan.races.map((race) => spacingOf(race, courseEnds(table.get(race.course)!.course), stations)),
    ...(ground === undefined ? {} : { ground }),
  };
}

/** What the layout takes of a station's day: it stands while these do, however the arrivals change. */
const needsOf = ({ tables, boxes, crew }: StationDay): DayNeeds => ({
  tables,
  ...(boxes === undefined ? {} : { boxes }),
  crew: { handOut: crew.handOut },
});

const isSeen = (result: Result<SeenStation> | undefined, station: SeenStation): boolean =>
  result?.ok === true && result.value === station;

/**
 * The whole job: courses, passes, race day, layout and review of a plan and the files that it names. Pure: the same in, the
 * same out. Not ok where the plan cannot be used (a missing file, a refused gap, a measure beyond its course); what is wrong
 * with a usable one is in `value.findings`.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { findings, spacing } = result.value;
 * findings.filter(({ severity }) => severity === 'error').length; // → 0
 * spacing[0]?.legs.map(({ from, to, length }) => [from, to, length]); // → [['start', 's1', 2000], ['s1', 'finish', 1729.67]]
 * ```
 */
export function analyse(plan: Plan, sources: Sources): Result<Analysis> {
  want('analyse', 'plan', isWholePlan, plan);
  want('analyse', 'sources', isSources, sources);
  return analyseAfter(null, plan, sources);
}

/**
 * As `analyse`, on what `courseStage` has given for the same plan and files: once for many plans over the same courses, say.
 * Errors: as `analyse`.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { analyseOn, courseStage } from '@halfcup/core/stages';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const { plan } = read.value;
 * const sources = { gpx: new Map() };
 * const result = analyseOn(courseStage(plan, sources), plan, sources);
 * result.ok && result.value.spacing[0]?.longest; // → 2000
 * ```
 */
export function analyseOn(courses: Result<readonly IndexedCourse[]>, plan: Plan, sources: Sources): Result<Analysis> {
  want('analyseOn', 'courses', isResultOf(listOf(isIndexed)), courses);
  want('analyseOn', 'plan', isWholePlan, plan);
  want('analyseOn', 'sources', isSources, sources);
  return analyseAfter(null, plan, sources, courses);
}

/** As `analyse`, with what stands of an analysis of an earlier state of the plan over the very same sources: see `reanalyse`. */
export function analyseAfter(
  before: Analysis | null,
  plan: Plan,
  sources: Sources,
  measured?: Result<readonly IndexedCourse[]>,
): Result<Analysis> {
  const held = heldOf(before, plan);
  const courses =
    held === null ? (measured ?? courseStage(plan, sources)) : good(held.before.courses, held.kept.courseFindings);
  const voice = voiceOf(plan);
  if (!courses.ok) return bad(inEnglish(courses.findings, voice));
  const table = courseTable(courses.value);
  const passes = seenAfter(plan, table, held);
  const seen = allSeen(passes);
  if (!seen.ok) return bad(inEnglish([...courses.findings, ...seen.findings], voice));
  const fields = hasField(plan) ? fieldsAfter(plan, table, sources.results, held) : null;
  const days = fields === null ? [] : daysAfter(plan, seen.value, fields, held);
  const made = fields === null ? null : raceDayFrom(plan, seen.value, fields, days);
  const day = made === null ? null : { ...made, findings: inEnglish(made.findings, voice) };
  const ground = groundAfter(plan, courses.value, sources, held);
  const layout = layoutOfSeen(plan, courses.value, seen.value, { day, ground }, held);
  const known = held === null ? undefined : { ...held.before, ...held.kept };
  const { atStations, ...review } = reviewLayout(
    layout,
    [...courses.findings, ...seen.findings, ...(day?.findings ?? [])],
    known,
    fields === null || day === null ? null : { races: fields.races, day },
  );
  return good({
    ...layout,
    day,
    ...review,
    kept: { courseFindings: courses.findings, seen: passes, fields, days, atStations },
  });
}

/** An analysis whose courses stand, and whether a part of its plan says the same as that of the new one. */
interface Held {
  readonly before: Analysis;
  readonly kept: Kept;
  readonly same: (part: (plan: Plan) => unknown) => boolean;
}

/** `null` where there is none, or where its courses are others: everything hangs on them. */
function heldOf(before: Analysis | null, plan: Plan): Held | null {
  if (before?.kept === undefined) return null;
  const same = (part: (plan: Plan) => unknown): boolean => equal(part(before.plan), part(plan));
  return same(({ courses }) => courses) ? { before, kept: before.kept, same } : null;
}

/** Made once: courses stand, and so does the map while the plan names the same one. */
function groundAfter(
  plan: Plan,
  courses: readonly IndexedCourse[],
  sources: GroundSources,
  held: Held | null,
): PlanGround | undefined {
  const known = held?.before.ground;
  return known !== undefined && known.file === plan.ground ? known : groundOf(plan, courses, sources);
}

function seenAfter(plan: Plan, table: CourseTable, held: Held | null): Result<SeenStation>[] {
  const stand = held?.same(({ practice, races }) => [practice, races.map(({ id, course }) => [id, course])]) === true;
  return plan.stations.map((station, index) => {
    const known = stand && equal(held?.before.plan.stations[index], station) ? held?.kept.seen[index] : undefined;
    return known ?? seeStation(plan, index, table);
  });
}

function fieldsAfter(plan: Plan, table: CourseTable, results: ResultTexts | undefined, held: Held | null): Fields {
  const known = held?.same(({ races, clock }) => [races, clock]) === true ? held.kept.fields : null;
  return known ?? fieldsOf(plan, table, results ?? new Map());
}

function daysAfter(plan: Plan, seen: readonly SeenStation[], fields: Fields, held: Held | null): DayFound[] {
  const stand = held?.kept.fields === fields && held.same(({ supplies, crew, language }) => [supplies, crew, language]);
  return daysOf(plan, seen, fields, (index) =>
    stand && isSeen(held?.kept.seen[index], seen[index]!) ? held?.kept.days[index] : undefined,
  );
}
