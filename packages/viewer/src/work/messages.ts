/**
 * What passes between the page and its worker: plain records, and columns of numbers whose memory is handed
 * over, not copied. A plan's document passes as its text, which is quick to read again.
 */
import { readPlan, type Analysis, type Finding, type PlanDocument } from '@halfcup/core';
import type { OfferedCourse, SetUpAnswers } from '@halfcup/core/plan';
import type { Result } from '@halfcup/core';
import type { GpxDocument } from '@halfcup/core/stages';
import type { CourseChoice } from '../state/open/offering.ts';
import type { Opening } from '../state/open/open.ts';
import type { PlanFiles } from '../state/store/planFiles.ts';
import type { CourseFile, OpenPlan, Starting, WaitingPlan } from '../state/store/store.ts';

export interface NamedBlob {
  readonly name: string;
  readonly blob: Blob;
}

interface Text {
  readonly file: string;
  readonly text: string;
}

export interface PlainWaiting {
  readonly document: Text;
  readonly files: PlanFiles;
  readonly missing: readonly string[];
  readonly unclear: WaitingPlan['unclear'];
}

export interface PlainPlan {
  readonly document: Text;
  readonly files: PlanFiles;
  readonly analysis: Analysis;
  readonly findings: readonly Finding[];
}

export type PlainOpening =
  | { readonly kind: 'opened'; readonly plan: PlainPlan; readonly started: boolean }
  | { readonly kind: 'waiting'; readonly plan: PlainWaiting }
  | { readonly kind: 'starting'; readonly starting: Starting }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] };

export type Task =
  | {
      readonly kind: 'read';
      readonly files: readonly NamedBlob[];
      readonly waiting: PlainWaiting | null;
    }
  | { readonly kind: 'pack'; readonly files: readonly NamedBlob[] }
  /** The course of a file, by what was chosen in the start sheet. */
  | { readonly kind: 'offer'; readonly file: CourseFile; readonly choice: CourseChoice }
  /** The plan that the start sheet asks for. */
  | { readonly kind: 'start'; readonly starting: Starting; readonly answers: SetUpAnswers };

export type Told =
  /** Bytes of courses read so far, of how many; `null` once they are being computed. */
  | {
      readonly kind: 'progress';
      readonly read: { readonly file: string; readonly done: number; readonly total: number } | null;
    }
  | { readonly kind: 'read'; readonly opening: PlainOpening }
  | { readonly kind: 'offered'; readonly file: CourseFile; readonly offered: Result<OfferedCourse> }
  /** Without stations, and as answered; or why not. */
  | { readonly kind: 'started'; readonly bare: PlainPlan; readonly whole: PlainPlan }
  | { readonly kind: 'unstarted'; readonly findings: readonly Finding[] }
  | { readonly kind: 'packed'; readonly zip: Blob }
  /** `absent`: the worker has not started at all. */
  | { readonly kind: 'failed'; readonly message: string; readonly absent?: true };

const textOf = ({ file, text }: PlanDocument): Text => ({ file, text });

export const plainWaiting = ({ document, ...rest }: WaitingPlan): PlainWaiting => ({
  ...rest,
  document: textOf(document),
});

export const plainPlan = ({ document, files, analysis, findings }: OpenPlan): PlainPlan => ({
  document: textOf(document),
  files,
  analysis,
  findings,
});

/** What was opened, ready to pass. */
export function plainOpening(opening: Opening): PlainOpening {
  if (opening.kind === 'waiting') return { kind: 'waiting', plan: plainWaiting(opening.plan) };
  if (opening.kind !== 'opened') return opening;
  return { kind: 'opened', plan: plainPlan(opening.plan), started: opening.started === true };
}

const columnsOf = ({ tracks, routes }: GpxDocument): Float64Array[] =>
  [...tracks, ...routes].flatMap(({ segments }) => segments.flatMap(({ lon, lat, ele }) => [lon, lat, ele]));

const columnsOfPlan = ({ files, analysis }: PlainPlan): Float64Array[] => [
  ...[...files.gpx.values()].flatMap(columnsOf),
  ...analysis.courses.flatMap(({ course: { lon, lat, ele, raw } }) =>
    ele === null ? [lon, lat, raw] : [lon, lat, ele, raw],
  ),
];

/** Memory to hand over with a record; each block once. */
export function blocksOf(plain: PlainOpening): ArrayBuffer[] {
  if (plain.kind === 'refused') return [];
  if (plain.kind === 'starting') {
    const offered = plain.starting.files.flatMap(({ offered: one }) =>
      one?.ok === true ? [one.value.course.course] : [],
    );
    return blocks([
      ...plain.starting.files.flatMap(({ document }) => columnsOf(document)),
      ...offered.flatMap(({ lon, lat, raw }) => [lon, lat, raw]),
    ]);
  }
  return plain.kind === 'opened'
    ? blocks(columnsOfPlan(plain.plan))
    : blocks([...plain.plan.files.gpx.values()].flatMap(columnsOf));
}

const blocks = (columns: readonly Float64Array[]): ArrayBuffer[] => [
  ...new Set(columns.map(({ buffer }) => buffer as ArrayBuffer)),
];

/** A document again from a text that another thread has read without an error. */
function documentOf({ file, text }: Text): PlanDocument {
  const read = readPlan(text, file);
  if (!read.ok) throw new Error(`a plan that was read is none: ${read.findings[0]?.message ?? ''}`);
  return read.value;
}

export const waitingOf = (plain: PlainWaiting): WaitingPlan => ({ ...plain, document: documentOf(plain.document) });

export const planOf = ({ document, ...rest }: PlainPlan): OpenPlan => ({
  ...rest,
  document: documentOf(document),
  variant: null,
});

/** The counterpart of `plainOpening` on the other side. */
export function arrived(plain: PlainOpening): Opening {
  if (plain.kind === 'waiting') return { kind: 'waiting', plan: waitingOf(plain.plan) };
  return plain.kind === 'opened' ? { ...plain, plan: planOf(plain.plan) } : plain;
}
