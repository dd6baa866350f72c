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

type Columns<K extends string> = Readonly<Record<K, string>>;

export interface ReportText {
  readonly title: string;
  readonly documentTitle: (plan: string) => string;
  readonly noName: string;
  readonly facts: Columns<'revision' | 'raceDay' | 'races' | 'stations' | 'made'>;
  readonly notStated: string;
  readonly madeBy: (date: string, program: string) => string;
  readonly result: (counts: Counted) => string;
  /** Printed at the foot of each page: of which plan, and who made it. */
  readonly foot: (mark: string) => string;
  readonly page: string;
  readonly of: string;
  readonly walkIt: string;
  readonly files: {
    readonly title: string;
    readonly about: string;
    readonly void: string;
    readonly plan: string;
  } & Columns<'file' | 'sha256'>;
  readonly findings: {
    readonly title: string;
    readonly groups: Readonly<Record<Severity, string>>;
    readonly none: string;
    readonly cannotTell: string;
    readonly waivedTitle: string;
    readonly waivedAbout: string;
    readonly waivedBy: string;
    readonly severity: Readonly<Record<Severity, string>>;
    readonly foundAndAccepted: string;
  } & Columns<'check' | 'at' | 'found' | 'measured' | 'limit'>;
  readonly placed: {
    readonly title: string;
    readonly about: string;
    readonly verdict: Readonly<Record<'holds' | 'fails' | 'cannot tell', string>>;
    readonly firstEnd: string;
    readonly lastEnd: string;
    readonly downstream: (length: string) => string;
    readonly upstream: (length: string) => string;
  } & Columns<'at' | 'item' | 'verdictHead' | 'distance' | 'limits' | 'move'>;
  readonly checks: {
    readonly title: string;
    readonly counts: (all: number, ran: number, silent: number, notRun: number, undecided: number) => string;
    readonly notRun: string;
    readonly foundNothing: string;
    readonly found: (count: number) => string;
    readonly undecided: (count: number) => string;
  } & Columns<'check' | 'shouldBe' | 'source' | 'result'>;
  readonly courses: {
    readonly title: string;
    readonly about: string;
    readonly drawn: Readonly<Record<'centre' | 'shortest' | 'recorded', string>>;
    readonly parts: string;
    readonly inPlan: string;
    readonly noCertificate: string;
  } & Columns<'course' | 'how' | 'line' | 'stated' | 'inUse' | 'certificate'>;
  readonly sides: {
    readonly title: string;
    readonly about: string;
    readonly nobody: string;
    readonly notDeclared: string;
    readonly offCourse: string;
    readonly unclear: string;
  } & Columns<'station' | 'at' | 'declared' | 'computed' | 'sure' | 'fromLine' | 'walkedBy'>;
  readonly practice: {
    readonly title: string;
    readonly about: string;
    readonly usual: string;
    readonly ofPlan: (usual: string) => string;
    readonly departTitle: string;
    readonly none: string;
    readonly noReason: string;
    readonly differs: (rule: string, own: string, plan: string) => string;
    readonly byHand: (item: string) => string;
    readonly fixed: string;
    /** Rules of the practice by their key in the plan. */
    readonly rules: Readonly<Record<PracticeRule, string>>;
  } & Columns<'rule' | 'value' | 'whose' | 'station' | 'what' | 'why'>;
  readonly day: { readonly title: string; readonly about: string } & Columns<'key' | 'what' | 'usual' | 'source'>;
  readonly signatures: {
    readonly title: string;
    readonly about: string;
    readonly offices: readonly string[];
  } & Columns<'office' | 'name' | 'signature' | 'date'>;
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
  | 'lastBefore';
