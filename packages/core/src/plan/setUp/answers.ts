/** What a person answers before a first plan: about its courses, its races and where its stations come from. */
import type { GapRule } from '../../course/course.ts';
import { isGapRule } from '../../course/course.ts';
import { isTrackChoice } from '../../gpx/shapes.ts';
import type { DeclaredSide } from '../../kinds.ts';
import type { Metres, UnitSystem } from '../../units.ts';
import { type Shape, aFlag, aText, either, finite, listOf, maybe, oneOf, positive, recordOf } from '../../wants.ts';

/** A course of a file. */
export interface CourseAnswers {
  /** The GPX file as the plan is to name it. */
  readonly gpx: string;
  /** Absent: the name of its line, else of its file. */
  readonly name?: string;
  /** Name or index of the line that is the course; absent: the first with points. */
  readonly track?: string | number;
  /** Absent: refused. */
  readonly gaps?: GapRule;
  readonly reverse?: boolean;
  /** Known length, metres. */
  readonly length?: Metres;
}

/** A race as it is typed: times and numbers are texts, checked by `setUp` and, field by field, by `raceFaults`. */
export interface RaceAnswers {
  readonly name: string;
  /** One of the courses' files. */
  readonly gpx: string;
  /** It runs from the start of the course to here and back: "2.5" (km, or miles in an imperial plan), "2.5 km". Absent: the whole course. */
  readonly turnAt?: string;
  /** Or so many laps of the course: "2". */
  readonly laps?: string;
  /** Time of day of the start: "08:00". */
  readonly start?: string;
  /** Runners entered: "1200", "1,200". */
  readonly entrants?: string;
  /** What a typical runner takes: "2:10", "2:10:00", "130 min". With one colon it is hours and minutes. */
  readonly finish?: string;
  /** The last runners may take so long: "3:30". */
  readonly cutoff?: string;
  /** Or they must be in by this time of day: "11:30". */
  readonly cutoffAt?: string;
}

/** Where the stations of a first plan come from. */
export type StationAnswers =
  | { readonly from: 'waypoints'; readonly side?: DeclaredSide | 'alternate' }
  /** Every so many metres of each course, but where it runs along one before it. */
  | { readonly from: 'every'; readonly every: Metres; readonly side?: DeclaredSide | 'alternate' }
  /** A list, as `readStationList` reads it; `gpx`: the course of its distances, absent: the first. */
  | { readonly from: 'list'; readonly text: string; readonly file: string; readonly gpx?: string }
  | { readonly from: 'none' };

/** What a first plan is made from, beside its files. */
export interface SetUpAnswers {
  /** Of the plan. */
  readonly name: string;
  readonly units?: UnitSystem;
  /** Of the race, as "2027-09-12". */
  readonly date?: string;
  /** The number to call in an emergency. */
  readonly emergency?: string;
  /** One or more; the first is the one on which a list's distances are, unless its rows say another. */
  readonly courses: readonly CourseAnswers[];
  /** Empty: one race for each course, with its name. */
  readonly races: readonly RaceAnswers[];
  /** Whether waypoints that are named by a distance become marks of their course. */
  readonly marks: boolean;
  readonly stations: StationAnswers;
}

const isSide = maybe(oneOf('left', 'right', 'alternate'));
const STATIONS: readonly Shape[] = [
  recordOf('stations from waypoints', { from: oneOf('waypoints'), side: isSide }),
  recordOf('stations every so many metres', { from: oneOf('every'), every: finite, side: isSide }),
  recordOf('stations of a list', { from: oneOf('list'), text: aText, file: aText, gpx: maybe(aText) }),
  recordOf('no stations', { from: oneOf('none') }),
];

export const isRaceAnswers: Shape = recordOf<RaceAnswers>('a race { name, gpx }', {
  name: aText,
  gpx: aText,
  turnAt: maybe(aText),
  laps: maybe(aText),
  start: maybe(aText),
  entrants: maybe(aText),
  finish: maybe(aText),
  cutoff: maybe(aText),
  cutoffAt: maybe(aText),
});

export const isSetUpAnswers: Shape = recordOf<SetUpAnswers>('answers { name, courses, races, marks, stations }', {
  name: aText,
  units: maybe(oneOf('metric', 'imperial')),
  date: maybe(aText),
  emergency: maybe(aText),
  courses: listOf(
    recordOf<CourseAnswers>('a course { gpx }', {
      gpx: aText,
      name: maybe(aText),
      track: maybe(isTrackChoice),
      gaps: maybe(isGapRule),
      reverse: maybe(aFlag),
      length: maybe(positive),
    }),
    1,
  ),
  races: listOf(isRaceAnswers),
  marks: aFlag,
  stations: STATIONS.reduce((one, other) => either(one, other)),
});
