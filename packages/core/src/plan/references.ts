/**
 * What one part of a plan says of another: ids that are unique, names that exist, exactly one of
 * several keys, no circle of parts. Works on the file's own value, whatever its shape, so that these
 * faults are reported together with those of single values.
 */
import { foundOf, shortText } from '../text/found.ts';
import type { Choice } from '../text/params/plan.ts';
import type { Fault, Path } from './fault.ts';
import { unknownWords } from './nearest.ts';

type Entry = { readonly [key: string]: unknown };

/** Stands for what is no object, which the schema reports. */
const NONE: Entry = {};
const entryOf = (value: unknown): Entry =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Entry) : NONE;
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const entriesOf = (plan: unknown, key: string): readonly Entry[] => listOf(entryOf(plan)[key]).map(entryOf);
const idsOf = (entries: readonly Entry[]): readonly string[] =>
  entries.map((entry) => entry['id']).filter((id) => typeof id === 'string');

function duplicates(entries: readonly Entry[], list: string, key: 'id' | 'name'): Fault[] {
  const first = new Map<string, number>();
  const faults: Fault[] = [];
  entries.forEach((entry, index) => {
    const id = entry[key];
    if (typeof id !== 'string') return;
    const before = first.get(id);
    if (before === undefined) first.set(id, index);
    else
      faults.push({
        code: 'plan-reference',
        path: [list, index, key],
        problem: { problem: 'twice', found: foundOf(id), number: before + 1 },
      });
  });
  return faults;
}

function exactlyOne(entry: Entry, path: Path, choices: readonly Choice[]): Fault[] {
  const found = choices.filter((key) => entry[key] !== undefined);
  if (found.length === 1 || entry === NONE) return [];
  if (found.length === 0) return [{ code: 'plan-value', path, problem: { problem: 'noneOf', choices } }];
  return [{ code: 'plan-value', path: [...path, found[1]!], problem: { problem: 'together', found, choices } }];
}

interface Known {
  readonly course: readonly string[];
  readonly race: readonly string[];
  readonly station: readonly string[];
  readonly unknown: ReturnType<typeof unknownWords>;
  /** Names that are still reported. */
  left: number;
}

/** Names that do not exist, of which no more are reported: nobody is shown so many. */
const REPORTED = 300;

function named(value: unknown, kind: 'course' | 'race' | 'station', known: Known, path: Path): Fault[] {
  if (typeof value !== 'string' || value.trim() === '' || known[kind].includes(value) || known.left === 0) return [];
  known.left -= 1;
  return [
    {
      code: 'plan-reference',
      path,
      problem: { problem: 'missing', of: kind, name: known.unknown(value, known[kind]) },
    },
  ];
}

function stationFaults(station: Entry, index: number, known: Known): Fault[] {
  const path: Path = ['stations', index];
  const served = Array.isArray(station['races'])
    ? station['races'].filter((race) => typeof race === 'string')
    : known.race;
  // A race that does not exist is the fault; what the station serves is not known until it is corrected.
  const unsure = served.some((race) => !known.race.includes(race));
  const chosen = (value: unknown, at: Path): Fault[] => {
    const race = entryOf(value)['race'];
    const missing = named(race, 'race', known, [...at, 'race']);
    if (missing.length > 0 || typeof race !== 'string' || race.trim() === '' || unsure || served.includes(race))
      return missing;
    return [
      {
        code: 'plan-reference',
        path: [...at, 'race'],
        problem: { problem: 'notServed', name: known.unknown(race, served) },
      },
    ];
  };
  return [
    ...exactlyOne(station, path, ['at', 'on']),
    ...named(entryOf(station['on'])['course'], 'course', known, [...path, 'on', 'course']),
    ...listOf(station['races']).flatMap((race, at) => named(race, 'race', known, [...path, 'races', at])),
    ...(station['lead'] === undefined ? [] : chosen(station['lead'], [...path, 'lead'])),
    ...listOf(station['passes']).flatMap((choice, at) => chosen(choice, [...path, 'passes', at])),
  ];
}

const partsOf = (course: Entry): readonly string[] =>
  listOf(course['parts'])
    .map((part) => entryOf(part)['of'])
    .filter((of) => typeof of === 'string');

/** The circle that begins and ends with a course, by the shortest way, if there is one. */
function circleOf(start: string, partsById: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const queue: (readonly string[])[] = [[start]];
  const seen = new Set<string>();
  for (let way = queue.shift(); way !== undefined; way = queue.shift()) {
    for (const next of partsById.get(way.at(-1)!) ?? []) {
      if (next === start) return [...way, start];
      if (seen.has(next)) continue;
      seen.add(next);
      queue.push([...way, next]);
    }
  }
  return undefined;
}

/** One fault for each circle, at the first of its courses. */
function circles(courses: readonly Entry[]): Fault[] {
  const partsById = new Map(courses.map((course) => [String(course['id']), partsOf(course)]));
  const reported = new Set<string>();
  const faults: Fault[] = [];
  courses.forEach((course, index) => {
    const id = course['id'];
    if (typeof id !== 'string' || reported.has(id)) return;
    const circle = circleOf(id, partsById);
    if (circle === undefined) return;
    for (const member of circle) reported.add(member);
    faults.push({
      code: 'plan-reference',
      path: ['courses', index, 'parts'],
      problem: { problem: 'circle', way: circle.map(shortText) },
    });
  });
  return faults;
}

function courseFaults(course: Entry, index: number, known: Known): Fault[] {
  return [
    ...exactlyOne(course, ['courses', index], ['gpx', 'line', 'parts']),
    ...listOf(course['parts']).flatMap((part, at) =>
      named(entryOf(part)['of'], 'course', known, ['courses', index, 'parts', at, 'of']),
    ),
  ];
}

/** Kept numbers of stations that there are, each given once. */
function numberFaults(plan: unknown, known: Known): Fault[] {
  const first = new Map<number, string>();
  return Object.entries(entryOf(entryOf(plan)['numbers'])).flatMap(([station, number]): Fault[] => {
    const path: Path = ['numbers', station];
    const before = typeof number === 'number' ? first.get(number) : undefined;
    if (typeof number !== 'number' || before === undefined) {
      if (typeof number === 'number') first.set(number, station);
      return named(station, 'station', known, path);
    }
    return [{ code: 'plan-reference', path, problem: { problem: 'sameNumber', number, stations: [before, station] } }];
  });
}

/** Faults of references, ids and keys that exclude each other in a plan's value, in the order of the file's keys. */
export function referenceFaults(plan: unknown): readonly Fault[] {
  const [courses, races, stations] = [
    entriesOf(plan, 'courses'),
    entriesOf(plan, 'races'),
    entriesOf(plan, 'stations'),
  ];
  const known: Known = {
    course: idsOf(courses),
    race: idsOf(races),
    station: idsOf(stations),
    unknown: unknownWords(),
    left: REPORTED,
  };
  return [
    ...duplicates(courses, 'courses', 'id'),
    ...courses.flatMap((course, index) => courseFaults(course, index, known)),
    ...circles(courses),
    ...duplicates(races, 'races', 'id'),
    ...races.flatMap((race, index) => named(race['course'], 'course', known, ['races', index, 'course'])),
    ...listOf(entryOf(entryOf(plan)['people'])['crew']).flatMap((person, index) =>
      named(entryOf(person)['station'], 'station', known, ['people', 'crew', index, 'station']),
    ),
    ...duplicates(stations, 'stations', 'id'),
    ...stations.flatMap((station, index) => stationFaults(station, index, known)),
    ...duplicates(entriesOf(plan, 'vehicles'), 'vehicles', 'id'),
    ...entriesOf(plan, 'clock').flatMap((times, index) =>
      named(times['course'], 'course', known, ['clock', index, 'course']),
    ),
    ...entriesOf(plan, 'waivers').flatMap((waiver, index) =>
      named(waiver['station'], 'station', known, ['waivers', index, 'station']),
    ),
    ...duplicates(entriesOf(plan, 'variants'), 'variants', 'name'),
    ...entriesOf(plan, 'variants').flatMap((variant, index) =>
      Object.keys(entryOf(variant['stations'])).flatMap((station) =>
        named(station, 'station', known, ['variants', index, 'stations', station]),
      ),
    ),
    ...numberFaults(plan, known),
  ];
}
