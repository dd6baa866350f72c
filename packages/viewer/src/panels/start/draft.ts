/** What stands in the start sheet while it is filled in, and the answers that it gives. */
import type { GapRule, RaceAnswers, SetUpAnswers, StationAnswers, Units } from '@halfcup/core/plan';
import { typedDistance } from '../ui/fields/typedDistance.ts';
import type { CourseFile } from '../../state/store/store.ts';

export interface CourseDraft {
  /** The file as it came. */
  readonly file: string;
  readonly name: string;
  readonly track: string;
  readonly gaps: GapRule;
  readonly reverse: boolean;
  /** Without the spikes and tangles of its track. */
  readonly fixed: boolean;
}

/** A cutoff is typed once, as a time limit or as a time of day. */
export interface RaceDraft {
  readonly name: string;
  /** Index among the courses. */
  readonly course: number;
  readonly runs: 'whole' | 'back' | 'laps';
  readonly turnAt: string;
  readonly laps: string;
  readonly start: string;
  readonly entrants: string;
  readonly finish: string;
  readonly cutoff: string;
  readonly cutoffIs: 'after' | 'at';
}

export type From = StationAnswers['from'];
export type SideChoice = 'right' | 'left' | 'alternate';

export interface Draft {
  readonly name: string;
  readonly date: string;
  readonly emergency: string;
  readonly courses: readonly CourseDraft[];
  readonly races: readonly RaceDraft[];
  readonly marks: boolean;
  readonly from: From;
  readonly every: string;
  readonly side: SideChoice;
  readonly list: string;
  readonly listFile: string;
  /** Index of the course of the list's distances. */
  readonly listOn: number;
}

const PASTED = 'the pasted list';
const baseOf = (name: string): string => name.replace(/\.gpx$/iu, '');

export const raceDraft = (name: string, course: number): RaceDraft => ({
  name,
  course,
  runs: 'whole',
  turnAt: '',
  laps: '2',
  start: '',
  entrants: '',
  finish: '',
  cutoff: '',
  cutoffIs: 'after',
});

export const courseName = ({ document, name }: CourseFile): string =>
  document.tracks[0]?.name ?? document.routes[0]?.name ?? document.name ?? baseOf(name);

/** The words with which all names begin: "Ganneth Island" of "Ganneth Island full" and "Ganneth Island half". */
function commonWords(names: readonly string[]): string {
  const words = names.map((name) => name.split(' '));
  const first = words[0] ?? [];
  const most = Math.min(...words.map((one) => one.length - 1));
  const differs = first.findIndex((word, k) => k >= most || words.some((one) => one[k] !== word));
  return first.slice(0, Math.max(differs, 0)).join(' ');
}

/** `waypoints`: how many look like stations. */
export function firstDraft(files: readonly CourseFile[], waypoints: number, units: Units): Draft {
  const names = files.map(courseName);
  const distinct = names.map((name, k) => (names.indexOf(name) === k ? name : baseOf(files[k]!.name)));
  return {
    name: files.length === 1 ? (files[0]!.document.name ?? distinct[0]!) : commonWords(distinct),
    date: '',
    emergency: '',
    courses: files.map(({ name }, k) => ({
      file: name,
      name: distinct[k]!,
      track: '',
      gaps: 'refuse',
      reverse: false,
      fixed: false,
    })),
    races: distinct.map((name, k) => raceDraft(name, k)),
    marks: true,
    from: waypoints > 0 ? 'waypoints' : 'every',
    every: units === 'metric' ? '2.5' : '2',
    side: 'right',
    list: '',
    listFile: PASTED,
    listOn: 0,
  };
}

/** Nothing is typed yet: it is not wrong, only empty. */
export const isUntouched = (race: RaceDraft): boolean =>
  [race.name, race.start, race.entrants, race.finish, race.cutoff, race.turnAt].every((text) => text.trim() === '');

/** A race there and back of which nobody has said where it turns. */
export const lacksTurn = ({ runs, turnAt }: RaceDraft): boolean => runs === 'back' && turnAt.trim() === '';

const runsOf = ({ runs, turnAt, laps }: RaceDraft): Pick<RaceAnswers, 'turnAt' | 'laps'> =>
  runs === 'back' ? { turnAt: turnAt.trim() || '?' } : runs === 'laps' ? { laps: laps.trim() || '?' } : {};

/** A turning place or number of laps that is not typed yet is told as one that cannot be read. */
export const raceAnswers = (race: RaceDraft, files: readonly CourseFile[]): RaceAnswers => ({
  name: race.name,
  gpx: files[race.course]!.name,
  ...runsOf(race),
  start: race.start,
  entrants: race.entrants,
  finish: race.finish,
  ...(race.cutoff.trim() === '' ? {} : race.cutoffIs === 'after' ? { cutoff: race.cutoff } : { cutoffAt: race.cutoff }),
});

/** Metres of a race on a course of that length; `null` while they are not known. */
export function racedLength({ runs, turnAt, laps }: RaceDraft, length: number | null, units: Units): number | null {
  if (length === null || runs === 'whole') return length;
  if (runs === 'laps') return /^[1-9]\d?$/u.test(laps.trim()) ? Number(laps) * length : null;
  const turn = typedDistance(turnAt, units);
  return turn === null || turn <= 0 || turn > length ? null : 2 * turn;
}

/** A course by another name; races that were called after it follow. */
export function renamed(draft: Draft, k: number, name: string): Partial<Draft> {
  const before = draft.courses[k]!;
  return {
    courses: draft.courses.with(k, { ...before, name }),
    races: draft.races.map((race) =>
      race.course === k && race.runs === 'whole' && race.name === before.name ? { ...race, name } : race,
    ),
  };
}

function stationAnswers(draft: Draft, files: readonly CourseFile[], units: Units): StationAnswers {
  if (draft.from === 'every') return { from: 'every', every: typedDistance(draft.every, units) ?? 0, side: draft.side };
  if (draft.from === 'list')
    return { from: 'list', text: draft.list, file: draft.listFile, gpx: files[draft.listOn]!.name };
  return { from: draft.from };
}

/** `files`: those that the courses are taken from, fixed where that was chosen. */
export const answersOf = (draft: Draft, files: readonly CourseFile[], units: Units): SetUpAnswers => ({
  name: draft.name.trim(),
  units,
  ...(draft.date.trim() === '' ? {} : { date: draft.date.trim() }),
  ...(draft.emergency.trim() === '' ? {} : { emergency: draft.emergency.trim() }),
  courses: draft.courses.map(({ name, track, gaps, reverse }, k) => ({
    gpx: files[k]!.name,
    ...(name.trim() === '' ? {} : { name: name.trim() }),
    ...(track === '' ? {} : { track: Number(track) }),
    ...(gaps === 'refuse' ? {} : { gaps }),
    ...(reverse ? { reverse } : {}),
  })),
  races: draft.races.map((race) => raceAnswers(race, files)),
  marks: draft.marks,
  stations: stationAnswers(draft, files, units),
});
