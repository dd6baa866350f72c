/**
 * The text of one plan from several courses and what a person answers about them: the start sheet of the page and
 * `halfcup start` make their plans here, so that the same answers give the same bytes.
 */
import { courseLength, startMeasure } from '../../course/course.ts';
import { pointAt } from '../../course/locate.ts';
import { passesOf } from '../../course/passes.ts';
import type { IndexedCourse } from '../../course/segmentIndex.ts';
import { type Finding, type Result, bad, good } from '../../finding.ts';
import type { GpxDocument } from '../../gpx/document.ts';
import { isGpxDocument } from '../../gpx/shapes.ts';
import { mapOf, want } from '../../wants.ts';
import { planFinding } from '../fault.ts';
import {
  type Draft,
  type Entry,
  MOST,
  alongCourse,
  firstPlanText,
  multiples,
  sideOf,
  waypointDrafts,
} from '../firstPlan.ts';
import { readStationList } from '../list/read.ts';
import { readPlan } from '../read.ts';
import { type CourseAnswers, type SetUpAnswers, isSetUpAnswers } from './answers.ts';
import type { PartsCourse } from './parts.ts';
import { idsOf, racesOf } from './plannedRaces.ts';
import { type ReadyCourse, readyCourse } from './ready.ts';

/**
 * The text of a first plan, as `startPlan` writes it: courses and races by the answers' order, stations from waypoints, by a
 * spacing, from a list or none. A waypoint that two files have is one station; a spacing makes no station where a course runs
 * along one before it. Findings: those of the files; of races, with `where.path` such as `/races/0/start`; of a list, by row.
 * Not ok: a file that was not given, a course that cannot be built, a field of a race that cannot be used, a spacing that
 * makes no station or over 500, a list without a usable head.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { readGpx } from '@halfcup/core/gpx';
 * import { setUpPlan } from '@halfcup/core/plan';
 * const gpx = readGpx(`<gpx version="1.1" creator="me"><trk><trkseg>
 *   <trkpt lat="-33.2" lon="-17.4"/><trkpt lat="-33.2" lon="-17.36"/></trkseg></trk></gpx>`, 'full.gpx');
 * if (!gpx.ok) throw new Error(gpx.findings[0]?.message);
 * const text = setUpPlan({
 *   name: 'Tern Cay', courses: [{ gpx: 'full.gpx' }], marks: true, stations: { from: 'every', every: 1000, side: 'left' },
 *   races: [{ name: 'Tern Cay 4', gpx: 'full.gpx', start: '08:00', entrants: '300', finish: '0:22', cutoff: '1:00' }],
 * }, new Map([['full.gpx', gpx.value]]));
 * const plan = text.ok ? readPlan(text.value, 'plan.json') : text;
 * plan.ok && plan.value.plan.races[0]?.cutoff; // → 32400
 * plan.ok && plan.value.plan.stations.map(({ name }) => name); // → ['1 km', '2 km', '3 km']
 * ```
 */
export function setUpPlan(answers: SetUpAnswers, documents: ReadonlyMap<string, GpxDocument>): Result<string> {
  want('setUpPlan', 'answers', isSetUpAnswers, answers);
  want('setUpPlan', 'documents', mapOf(isGpxDocument), documents);
  const ids = idsOf(
    answers.courses.map(({ gpx }) => gpx.replace(/^.*\//u, '').replace(/\.gpx$/iu, '')),
    'course',
  );
  const ready = answers.courses.map((course, k) => courseOf(course, ids[k]!, answers, documents));
  const courses = ready.flatMap((one) => (one.ok ? [one.value] : []));
  const races = racesOf(answers, courses);
  const found = [...ready.flatMap(({ findings }) => findings), ...races.findings];
  if (!races.ok || courses.length < ready.length) return bad(found.filter(keepsErrors(found)));
  const { parts } = races.value;
  const stations = stationsOf(answers, courses, parts);
  if (!stations.ok) return bad([...found, ...stations.findings]);
  const text = firstPlanText({
    name: answers.name,
    units: answers.units,
    date: filled(answers.date),
    emergency: filled(answers.emergency),
    courses: [
      ...courses.map(({ answers: course, id, name, marks }) => ({ ...course, id, name, marks })),
      ...parts.map((course) => ({ id: course.id, name: course.name, parts: course.parts, marks: [] })),
    ],
    races: races.value.entries,
    stations: stations.value,
  });
  const read = readPlan(text, 'plan.json');
  // The text is not in any file yet: its lines and columns would point nowhere.
  if (!read.ok) return bad(read.findings.map((finding) => ({ ...finding, where: {} })));
  return good(text, [...found, ...stations.findings]);
}

const filled = (text: string | undefined): string | undefined => text?.trim() || undefined;

/** Notes stay beside errors only where there are none of these. */
const keepsErrors = (found: readonly Finding[]): ((finding: Finding) => boolean) => {
  const some = found.some(({ severity }) => severity === 'error');
  return ({ severity }) => !some || severity === 'error';
};

function courseOf(
  answers: CourseAnswers,
  id: string,
  all: SetUpAnswers,
  documents: ReadonlyMap<string, GpxDocument>,
): Result<ReadyCourse> {
  const document = documents.get(answers.gpx);
  if (document !== undefined) return readyCourse(answers, id, all, document);
  const params = { problem: 'course', gpx: answers.gpx } as const;
  return bad([planFinding('setup-file', params, { severity: 'error', where: { file: answers.gpx } })]);
}

const numbered = (drafts: readonly Draft[]): Entry[] =>
  drafts.map(({ name, place }, k) => ({ id: `s${k + 1}`, name, ...place }));

function stationsOf(
  { stations, units }: SetUpAnswers,
  courses: readonly ReadyCourse[],
  parts: readonly PartsCourse[],
): Result<readonly Entry[]> {
  if (stations.from === 'none') return good([]);
  if (stations.from === 'waypoints') {
    const drafts = courses.flatMap(({ roles }) => waypointDrafts(roles, undefined, units));
    const once = drafts.filter((draft, k) => drafts.findIndex((other) => same(draft, other)) === k);
    const sided = once.map(({ name, place }, k) => {
      const side = sideOf(stations.side, k);
      return { name, place: { ...place, ...(side === undefined ? {} : { side }) } };
    });
    const none = planFinding('start-places', { problem: 'noStations' }, { severity: 'note', where: {} });
    return good(numbered(sided), sided.length === 0 ? [none] : []);
  }
  if (stations.from === 'every') return everySo(stations, units, courses);
  const list = readStationList(stations.text, {
    file: stations.file,
    units: units ?? 'metric',
    courses: [...firstOf(courses, stations.gpx), ...parts].map(({ id, name, indexed: { course } }) => ({
      id,
      name,
      start: startMeasure(course),
      length: courseLength(course),
    })),
  });
  if (!list.ok) return list;
  return good(listed(list.value.map(({ station }) => station as Entry)), list.findings);
}

/** The courses, the one of a file first. */
const firstOf = (courses: readonly ReadyCourse[], gpx: string | undefined): readonly ReadyCourse[] =>
  courses.toSorted((a, b) => Number(b.answers.gpx === gpx) - Number(a.answers.gpx === gpx));

const same = (a: Draft, b: Draft): boolean =>
  a.name === b.name && JSON.stringify(a.place['at']) === JSON.stringify(b.place['at']);

/** Stations of a list with ids: their own where they are there and not taken. */
function listed(stations: readonly Entry[]): Entry[] {
  const own = stations.map(({ id }) => id);
  const taken = new Set(own.filter((id, k) => id !== undefined && own.indexOf(id) === k));
  let next = 1;
  const free = (): string => {
    while (taken.has(`s${next}`)) next += 1;
    return `s${next++}`;
  };
  return stations.map(({ id, ...rest }, k) => ({
    id: id !== undefined && own.indexOf(id) === k ? id : free(),
    ...rest,
  }));
}

function everySo(
  { every, side }: { readonly every: number; readonly side?: 'left' | 'right' | 'alternate' },
  units: SetUpAnswers['units'],
  courses: readonly ReadyCourse[],
): Result<readonly Entry[]> {
  const usable = every > 0 && courses.every(({ indexed }) => courseLength(indexed.course) / every <= MOST);
  const places = usable
    ? courses.flatMap(({ id, indexed: { course } }, k) =>
        multiples(every, courseLength(course))
          .filter((measure) => measure > startMeasure(course))
          .filter((measure) => !courses.slice(0, k).some((before) => runsAlong(before.indexed, course, measure)))
          .map((measure) => ({ id, measure })),
      )
    : [];
  if (places.length === 0 || places.length > MOST)
    return bad([
      planFinding('setup-every', { every, most: MOST }, { severity: 'error', where: { path: '/stations' } }),
    ]);
  return good(
    numbered(places.map(({ id, measure }, k) => alongCourse(id, measure, sideOf(side, k) ?? 'right', units))),
  );
}

/** Whether another course passes the place, metres apart as two lines of one road are. */
function runsAlong(other: IndexedCourse, course: IndexedCourse['course'], measure: number): boolean {
  const point = pointAt(course, measure);
  return point !== null && passesOf(other, point.at, { snapRadius: 15 }).length > 0;
}
