/**
 * What passes between the page and its worker: plain records, and columns of numbers whose memory is handed
 * over, not copied. A plan's document passes as its text, a course without its index, which is quick to make again.
 */
import { readPlan, type Finding, type PlanDocument, type Result } from '@halfcup/core';
import { placeFindings } from '@halfcup/core/plan';
import { courseStage, type Course, type GpxDocument, type IndexedCourse } from '@halfcup/core/stages';
import { indexCourse } from '@halfcup/core/geometry';
import type { PlanFiles } from '../state/store/planFiles.ts';
import type { Gathered } from '../state/open/gather.ts';
import type { Starting, WaitingPlan } from '../state/store/store.ts';

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

export type PlainGathered =
  | {
      readonly kind: 'ready';
      readonly document: Text;
      readonly files: PlanFiles;
      readonly started: boolean;
      readonly courses: readonly Course[];
      readonly courseFindings: readonly Finding[];
    }
  | { readonly kind: 'waiting'; readonly plan: PlainWaiting }
  | { readonly kind: 'starting'; readonly starting: Starting }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] };

export type Task =
  | {
      readonly kind: 'read';
      readonly files: readonly NamedBlob[];
      readonly waiting: PlainWaiting | null;
    }
  | { readonly kind: 'pack'; readonly files: readonly NamedBlob[] };

export type Told =
  /** Bytes of courses read so far, of how many; `null` once they are being computed. */
  | {
      readonly kind: 'progress';
      readonly read: { readonly file: string; readonly done: number; readonly total: number } | null;
    }
  | { readonly kind: 'read'; readonly gathered: PlainGathered }
  | { readonly kind: 'packed'; readonly zip: Blob }
  | { readonly kind: 'failed'; readonly message: string };

const textOf = ({ file, text }: PlanDocument): Text => ({ file, text });

export const plainWaiting = ({ document, ...rest }: WaitingPlan): PlainWaiting => ({
  ...rest,
  document: textOf(document),
});

/** What was read, with its courses made, ready to pass. */
export function plainGathered(gathered: Gathered): PlainGathered {
  if (gathered.kind === 'refused' || gathered.kind === 'starting') return gathered;
  if (gathered.kind === 'waiting') return { kind: 'waiting', plan: plainWaiting(gathered.plan) };
  const { document, files, started } = gathered;
  const courses = courseStage(document.plan, files);
  if (!courses.ok)
    return { kind: 'refused', findings: placeFindings([...files.findings, ...courses.findings], document) };
  return {
    kind: 'ready',
    document: textOf(document),
    files,
    started,
    courses: courses.value.map(({ course }) => course),
    courseFindings: courses.findings,
  };
}

const columnsOf = ({ tracks, routes }: GpxDocument): Float64Array[] =>
  [...tracks, ...routes].flatMap(({ segments }) => segments.flatMap(({ lon, lat, ele }) => [lon, lat, ele]));

/** Memory to hand over with a record; each block once. */
export function blocksOf(plain: PlainGathered): ArrayBuffer[] {
  if (plain.kind === 'refused') return [];
  if (plain.kind === 'starting') return blocks(plain.starting.files.flatMap(({ document }) => columnsOf(document)));
  const { gpx } = plain.kind === 'ready' ? plain.files : plain.plan.files;
  const courses = plain.kind === 'ready' ? plain.courses : [];
  const columns = [
    ...[...gpx.values()].flatMap(columnsOf),
    ...courses.flatMap(({ lon, lat, ele, raw }) => (ele === null ? [lon, lat, raw] : [lon, lat, ele, raw])),
  ];
  return blocks(columns);
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

export interface Arrived {
  readonly gathered: Gathered;
  readonly courses?: Result<readonly IndexedCourse[]>;
}

/** The counterpart of `plainGathered` on the other side. */
export function arrived(plain: PlainGathered): Arrived {
  if (plain.kind === 'refused' || plain.kind === 'starting') return { gathered: plain };
  if (plain.kind === 'waiting') return { gathered: { kind: 'waiting', plan: waitingOf(plain.plan) } };
  const { document, files, started, courses, courseFindings } = plain;
  return {
    gathered: { kind: 'ready', document: documentOf(document), files, started },
    courses: { ok: true, value: courses.map(indexCourse), findings: courseFindings },
  };
}
