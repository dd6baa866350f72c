/** The safety report, as a language fills it in. Sentences with figures take texts that are already formatted. */
import type { Severity } from '../finding.ts';

/** What the review comes to; `cannotTell` and `notRun` are beside the counts, never in them. */
export interface Counted {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
  readonly waived: number;
  readonly cannotTell: number;
  readonly notRun: number;
}

/** "UTC+2", with minutes where a zone has some: "UTC+5:30". */
export function aheadOfUtc(hours: number): string {
  const all = Math.round(Math.abs(hours) * 60);
  const minutes = all % 60 === 0 ? '' : `:${String(all % 60).padStart(2, '0')}`;
  return `UTC${hours < 0 ? '−' : '+'}${Math.floor(all / 60)}${minutes}`;
}

type Columns<K extends string> = Readonly<Record<K, string>>;

/** A race in one line; what the plan does not say is absent. */
export interface RaceFacts {
  readonly length: string;
  /** Clock times. */
  readonly starts: readonly string[];
  readonly entrants: string | null;
  readonly cutoff: string | null;
}

export interface ReportText {
  readonly title: string;
  readonly documentTitle: (plan: string) => string;
  readonly noName: string;
  readonly facts: Columns<'raceDay' | 'races' | 'road' | 'stations' | 'contacts' | 'made'>;
  readonly race: (race: RaceFacts) => string;
  /** Times on the clock: the first at which a road closes, the last at which it opens again. */
  readonly road: (closes: string, reopens: string) => string;
  /** `medical`: names of those with a medical point. */
  readonly stationCount: (all: number, medical: readonly string[]) => string;
  /** Clock times are those of the zone; `ahead`: of UTC, hours. */
  readonly local: (ahead: number) => string;
  readonly contacts: Columns<'emergency' | 'raceControl' | 'radioChannel'>;
  readonly notStated: string;
  readonly madeBy: (date: string, program: string, revision: string | null) => string;
  readonly result: (counts: Counted) => string;
  /** What that means, in a sentence or two. */
  readonly verdict: (counts: Counted) => string;
  readonly decide: {
    readonly title: string;
    readonly closures: string;
    readonly noClosures: string;
    readonly findings: (count: number) => string;
    readonly more: (count: number) => string;
    readonly waived: (count: number) => string;
    readonly notRun: (count: number) => string;
  };
  readonly stations: {
    readonly title: string;
    readonly about: string;
    readonly sheets: string;
    /** The side on which tables stand; whether it is declared, and whether the position bears it out. */
    readonly sideWords: (side: string | null, computed: string | null) => string;
    readonly again: string;
    readonly crew: (from: string) => string;
    readonly open: (from: string, until: string) => string;
    readonly road: (closes: string, reopens: string) => string;
    readonly runners: (first: string, last: string, count: string) => string;
    readonly busiest: (count: string, at: string) => string;
    readonly passings: (count: string) => string;
    readonly walked: (by: string, date: string) => string;
    readonly notWalked: string;
    readonly captain: (name: string) => string;
    readonly points: string;
    readonly noFindings: string;
    readonly below: string;
    readonly departs: string;
    readonly reason: string;
  } & Columns<'station' | 'at' | 'side' | 'runnersHead' | 'roadHead' | 'found' | 'where' | 'when'>;
  /** Printed at the foot of each page: of which plan, and who made it. */
  readonly foot: (mark: string) => string;
  readonly page: string;
  readonly of: string;
  readonly walkIt: string;
  /** What the review does not look at. */
  readonly scope: string;
  readonly files: {
    readonly title: string;
    readonly about: string;
    readonly void: string;
    readonly plan: string;
  } & Columns<'file' | 'sha256'>;
  readonly findings: {
    /** Of those that are about no station. */
    readonly title: string;
    readonly severity: Readonly<Record<Severity, string>>;
    readonly none: string;
    readonly cannotTell: string;
    /** Of a station as it was recorded on the ground. */
    readonly built: string;
    readonly waivedBy: string;
  } & Columns<'measured' | 'limit'>;
  readonly placed: {
    readonly title: string;
    readonly about: string;
    readonly verdict: Readonly<Record<'holds' | 'fails' | 'cannot tell', string>>;
    readonly firstEnd: string;
    readonly lastEnd: string;
    readonly downstream: (length: string) => string;
    readonly upstream: (length: string) => string;
    readonly builtAbout: string;
    readonly offCourse: string;
    readonly nothingNew: string;
  } & Columns<
    'at' | 'item' | 'verdictHead' | 'distance' | 'limits' | 'move' | 'planned' | 'recorded' | 'apart' | 'changes'
  >;
  readonly checks: {
    readonly notRunTitle: string;
    readonly notRunAbout: string;
    readonly allRan: string;
    readonly notChecked: string;
    readonly notApplicable: string;
    /** Checks of files and data by their number. */
    readonly alsoPassed: (count: number) => string;
    readonly passedTitle: (count: number) => string;
    readonly passedAbout: string;
    readonly foundNothing: string;
    readonly found: (count: number) => string;
    readonly undecided: (count: number) => string;
    readonly unclearAt: (count: number) => string;
  };
  readonly courses: {
    readonly title: string;
    readonly about: string;
    readonly drawn: Readonly<Record<'centre' | 'shortest' | 'recorded', string>>;
    readonly parts: string;
    readonly inPlan: string;
    readonly noCertificate: string;
  } & Columns<'course' | 'how' | 'line' | 'stated' | 'inUse' | 'certificate'>;
  readonly practice: {
    readonly title: string;
    readonly about: string;
    readonly ofPlan: (usual: string) => string;
    readonly noReason: string;
    readonly differs: (rule: string, own: string, plan: string) => string;
    readonly byHand: (item: string) => string;
    readonly fixed: string;
    /** Rules of the practice by their key in the plan. */
    readonly rules: Readonly<Record<PracticeRule, string>>;
  };
  readonly signatures: {
    readonly title: string;
    readonly about: string;
    readonly offices: readonly string[];
  } & Columns<'office' | 'name' | 'signature' | 'date' | 'agreed' | 'conditions'>;
}

/** The rules of the practice that the report lists. */
export type PracticeRule =
  | 'signAhead'
  | 'signTolerance'
  | 'gelAhead'
  | 'tableLength'
  | 'tableGap'
  | 'trashFrom'
  | 'trashTo'
  | 'boxEvery'
  | 'kerb'
  | 'setback'
  | 'clearWidth'
  | 'snapRadius'
  | 'pinR95'
  | 'courseR95'
  | 'sideConfidence'
  | 'maxSpacing'
  | 'minSpacing'
  | 'maxGrade'
  | 'bendClear'
  | 'firstAfter'
  | 'lastBefore'
  | 'placedWithin';
