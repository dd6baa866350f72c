/** The answers of `halfcup start`: courses, races and stations as a call says them. */
import { type Result, bad, good } from '../src/finding.ts';
import type { GapRule } from '../src/course/course.ts';
import type { CourseAnswers, RaceAnswers, SetUpAnswers, StationAnswers } from '../src/plan/setUp/answers.ts';
import { suggestion } from '../src/plan/nearest.ts';
import type { UnitSystem } from '../src/units.ts';
import { type Call, has, lengthOf, refuse } from './call.ts';
import { readText } from './files.ts';
import type { Io } from './io.ts';
import { START } from './messages.ts';

/** A file as the call names it, and as the plan does. */
export interface StartFile {
  readonly given: string;
  readonly gpx: string;
}

/** Options about one course, which cannot be told apart for several. */
const OF_ONE = ['at', 'length', 'mark', 'waypoint-marks', 'track', 'reverse'];
/** Options that stations of several courses, or of a list, have no use for yet. */
const OF_PLACES = ['at', 'mark', 'waypoint-marks'];

/** Whether a call asks for more than a plan of one course with its places. */
export const needsAnswers = (call: Call): boolean =>
  call.positionals.length > 2 || call.values.has('stations') || (call.lists.get('race') ?? []).length > 0;

export async function answersOf(call: Call, io: Io, files: readonly StartFile[]): Promise<Result<SetUpAnswers>> {
  const given = (names: readonly string[]): string[] =>
    names.filter((name) => call.values.has(name) || (call.lists.get(name) ?? []).length > 0);
  const wrong = given(files.length > 1 ? OF_ONE : OF_PLACES);
  if (wrong.length > 0) return refuse(START.ofOneCourse(wrong));
  if (call.values.has('stations') && (call.values.has('every') || call.values.has('side')))
    return refuse(START.listAndPlaces());
  const races = (call.lists.get('race') ?? []).map((text) => raceOf(text, files));
  const faults = races.flatMap(({ findings }) => findings);
  if (faults.length > 0) return bad(faults);
  const stations = await stationsOf(call, io, files);
  if (!stations.ok) return stations;
  const units = call.values.get('units') as UnitSystem | undefined;
  return good({
    name: call.positionals[0]!,
    ...textsOf(call),
    ...(units === undefined ? {} : { units }),
    courses: files.map(({ gpx }) => courseOf(call, gpx)),
    races: races.flatMap((race) => (race.ok ? [race.value] : [])),
    marks: stations.value.from === 'waypoints',
    stations: stations.value,
  });
}

/** What the plan says of the day, as it is given. */
export function textsOf(call: Call): { readonly date?: string; readonly emergency?: string } {
  const [date, emergency] = [call.values.get('date'), call.values.get('emergency')];
  return { ...(date === undefined ? {} : { date }), ...(emergency === undefined ? {} : { emergency }) };
}

function courseOf(call: Call, gpx: string): CourseAnswers {
  const track = call.values.get('track');
  const gaps = call.values.get('gaps') as GapRule | undefined;
  const length = lengthOf(call, 'length');
  return {
    gpx,
    ...(track === undefined ? {} : { track }),
    ...(gaps === undefined ? {} : { gaps }),
    ...(has(call, 'reverse') ? { reverse: true } : {}),
    ...(length === undefined ? {} : { length }),
  };
}

async function stationsOf(call: Call, io: Io, files: readonly StartFile[]): Promise<Result<StationAnswers>> {
  const file = call.values.get('stations');
  const every = lengthOf(call, 'every');
  const side = call.values.get('side') as 'left' | 'right' | 'alternate' | undefined;
  const sided = side === undefined ? {} : { side };
  if (file === undefined)
    return good(every === undefined ? { from: 'waypoints', ...sided } : { from: 'every', every, ...sided });
  const along = call.values.get('stations-on');
  const course = along === undefined ? files[0] : files.find(({ given }) => given === along);
  if (course === undefined)
    return refuse(
      START.listFile(
        along ?? '',
        files.map(({ given }) => given),
      ),
    );
  const text = await readText(io, file, 'list');
  return text.ok ? good({ from: 'list', text: text.value, file, gpx: course.gpx }) : text;
}

const KEYS = ['name', 'file', 'turn-at', 'laps', 'start', 'entrants', 'finish', 'cutoff', 'cutoff-at'] as const;
type Key = (typeof KEYS)[number];

/** "name=Half, file=half.gpx, start=08:00": a comma parts values where a key and "=" follow it. */
function raceOf(text: string, files: readonly StartFile[]): Result<RaceAnswers> {
  const values = new Map<Key, string>();
  for (const part of text.split(/,\s*(?=[\w-]+\s*=)/u)) {
    const [, key, value] = /^\s*([\w-]+)\s*=(.*)$/su.exec(part) ?? [];
    if (key === undefined || value === undefined) return refuse(START.raceUnread(text));
    const known = KEYS.find((one) => one === key.toLowerCase());
    if (known === undefined) return refuse(START.raceKey(key, suggestion(key, KEYS, 'they are')));
    if (values.has(known)) return refuse(START.raceTwice(text, known));
    values.set(known, value.trim());
  }
  const name = values.get('name');
  if (name === undefined) return refuse(START.raceWithout(text, 'name'));
  const asked = values.get('file');
  const file =
    asked === undefined ? (files.length === 1 ? files[0] : undefined) : files.find((one) => one.given === asked);
  if (file === undefined)
    return refuse(
      asked === undefined
        ? START.raceWithout(text, 'file')
        : START.raceFile(
            asked,
            files.map((one) => one.given),
          ),
    );
  const turnAt = values.get('turn-at');
  const cutoffAt = values.get('cutoff-at');
  const typed = (key: 'laps' | 'start' | 'entrants' | 'finish' | 'cutoff'): Partial<RaceAnswers> =>
    values.has(key) ? { [key]: values.get(key)! } : {};
  return good({
    name,
    gpx: file.gpx,
    ...(turnAt === undefined ? {} : { turnAt }),
    ...typed('laps'),
    ...typed('start'),
    ...typed('entrants'),
    ...typed('finish'),
    ...typed('cutoff'),
    ...(cutoffAt === undefined ? {} : { cutoffAt }),
  });
}
