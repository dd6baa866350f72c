/** The races of a first plan as it writes them, with the courses that some of them need. */
import { courseLength } from '../../course/course.ts';
import { type Result, bad, good } from '../../finding.ts';
import { planFinding } from '../fault.ts';
import type { Entry } from '../firstPlan.ts';
import type { RaceAnswers, SetUpAnswers } from './answers.ts';
import { type PartsCourse, partsCourse } from './parts.ts';
import { raceEntry } from './races.ts';
import type { ReadyCourse } from './ready.ts';

/** Ids of names: one alone is called by its kind, as a plan of one course has always been. */
export function idsOf(names: readonly string[], alone: string): readonly string[] {
  if (names.length === 1) return [alone];
  const ids: string[] = [];
  for (const name of names) {
    const plain = name.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();
    const slug = plain.replaceAll(/[^a-z0-9]+/gu, '-').replaceAll(/^-|-$/gu, '') || alone;
    const base = slug === 'start' || slug === 'finish' ? `${alone}-${slug}` : slug;
    let id = base;
    for (let k = 2; ids.includes(id); k++) id = `${base}-${k}`;
    ids.push(id);
  }
  return ids;
}

export interface Races {
  readonly entries: readonly Entry[];
  /** Courses that races run on and no file has. */
  readonly parts: readonly PartsCourse[];
}

/** The races of the answers, or one for each course. */
export function racesOf(answers: SetUpAnswers, courses: readonly ReadyCourse[]): Result<Races> {
  const alone = courses.length === 1;
  const races: readonly RaceAnswers[] =
    answers.races.length > 0
      ? answers.races
      : courses.map(({ answers: { gpx }, name }) => ({ name: alone ? answers.name : name, gpx }));
  const ids = idsOf(
    races.map(({ name }) => name),
    'race',
  );
  const parts = new Map<string, PartsCourse>();
  const read = races.map((race, k): Result<Entry> => {
    const course = courses.find(({ answers: { gpx } }) => gpx === race.gpx);
    if (course === undefined) {
      // A course that cannot be built has said why itself.
      if (answers.courses.some(({ gpx }) => gpx === race.gpx)) return bad([]);
      const params = { problem: 'race', gpx: race.gpx } as const;
      return bad([planFinding('setup-file', params, { severity: 'error', where: { path: `/races/${k}/gpx` } })]);
    }
    const path = `/races/${k}`;
    const entry = raceEntry(race, path, courseLength(course.indexed.course), answers.units ?? 'metric');
    if (!entry.ok) return entry;
    const { runs } = entry.value;
    const own = { id: ids[k], name: race.name.trim() };
    if (runs.turnAt === undefined && (runs.laps ?? 1) === 1)
      return good({ ...own, course: course.id, ...entry.value.entry });
    // Two races on the same parts share a course.
    const key = JSON.stringify([course.id, runs]);
    const id = freeId(ids[k]!, [...courses, ...parts.values()]);
    const known = parts.get(key);
    const made =
      known === undefined
        ? partsCourse({ id, name: own.name }, runs, course, { units: answers.units, path })
        : good(known);
    if (!made.ok) return made;
    parts.set(key, made.value);
    return good({ ...own, course: made.value.id, ...entry.value.entry });
  });
  const findings = read.flatMap((one) => one.findings);
  const entries = read.flatMap((one) => (one.ok ? [one.value] : []));
  return entries.length === read.length ? good({ entries, parts: [...parts.values()] }, findings) : bad(findings);
}

function freeId(wanted: string, taken: readonly { readonly id: string }[]): string {
  let id = wanted;
  for (let k = 2; taken.some((one) => one.id === id); k++) id = `${wanted}-${k}`;
  return id;
}
