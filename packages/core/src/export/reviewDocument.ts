/**
 * The review as a document: the plan and every file it was made from by their SHA-256, every check as it
 * went, findings, and counts in which a waived finding is counted as waived and nothing else.
 */
import type { Analysis } from '../analyse.ts';
import type { Finding } from '../finding.ts';
import type { PlacedVerdict } from '../review/placed.ts';
import type { PlacedStation } from '../review/placedStation.ts';
import type { CheckRun } from '../review/review.ts';
import { MADE_BY } from '../version.ts';
import { findingDocument } from './documents.ts';
import { toMicro, toPosition } from './rounding.ts';
import { type Shape, aText, finite, listOf, maybe, recordOf, want } from '../wants.ts';
import { isCheckRun, isPlacedStation, isVerdict } from '../review/shapes.ts';
import { isFinding } from '../finding.ts';

/** A file and the SHA-256 of its bytes, in hexadecimal; whoever reads the file computes it. */
export interface FileDigest {
  readonly file: string;
  readonly sha256: string;
}

/** What a review is of: no part of the plan tells it. */
export interface ReviewedFiles {
  /** SHA-256 of the plan's own bytes. */
  readonly sha256: string;
  /** Each file that the plan names, as the plan names it. */
  readonly inputs: readonly FileDigest[];
  /** Verdicts on what was recorded on the ground, where it was. */
  readonly placed?: readonly PlacedVerdict[];
  /** How far each recorded station stands from its plan. */
  readonly built?: readonly PlacedStation[];
}

/** Findings by severity without the waived ones; undecided findings are in both their severity and `cannotTell`. */
export interface ReviewCounts {
  readonly error: number;
  readonly warning: number;
  readonly note: number;
  readonly waived: number;
  readonly cannotTell: number;
  /** Checks that could not run. */
  readonly notRun: number;
}

/** What `halfcup review` prints. */
export interface ReviewDocument {
  /** "Halfcup 0.1.0": another version may find other things. */
  readonly madeBy: string;
  readonly plan: { readonly name: string; readonly sha256: string };
  readonly inputs: readonly FileDigest[];
  readonly checks: readonly CheckRun[];
  readonly findings: readonly Finding[];
  /** Where points recorded on the ground were given. */
  readonly placed?: readonly PlacedVerdict[];
  /** The same for stations; what the checks find of them as built is among the findings, which have `built`. */
  readonly built?: readonly PlacedStation[];
  readonly counts: ReviewCounts;
}

const isFiles: Shape = recordOf<ReviewedFiles>('the files { sha256, inputs }', {
  sha256: aText,
  inputs: listOf(recordOf<FileDigest>('a file', { file: aText, sha256: aText })),
  placed: maybe(listOf(isVerdict)),
  built: maybe(listOf(isPlacedStation)),
});

const isReviewed: Shape = recordOf('the analysis that analyse gives', {
  plan: recordOf('a plan', { name: aText }),
  checks: listOf(isCheckRun),
  findings: listOf(isFinding),
});

export const isReviewDocument: Shape = recordOf<ReviewDocument>('the document that reviewDocument gives', {
  madeBy: aText,
  plan: recordOf('a plan', { name: aText, sha256: aText }),
  inputs: listOf(recordOf<FileDigest>('a file', { file: aText, sha256: aText })),
  checks: listOf(isCheckRun),
  findings: listOf(isFinding),
  placed: maybe(listOf(isVerdict)),
  built: maybe(listOf(isPlacedStation)),
  counts: recordOf<ReviewCounts>('counts', {
    error: finite,
    warning: finite,
    note: finite,
    waived: finite,
    cannotTell: finite,
    notRun: finite,
  }),
});

/**
 * The document of an analysis, whose findings have their places in the plan (`placeFindings`), and of the files it was made from.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { reviewDocument } from '@halfcup/core/schemas';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { counts, checks } = reviewDocument(result.value, { sha256: '0'.repeat(64), inputs: [] });
 * [counts.error, counts.warning]; // → [0, 5]
 * checks.find(({ ran }) => !ran)?.reason; // → 'no race of the plan has waves'
 * ```
 */
export function reviewDocument(
  analysis: Pick<Analysis, 'plan' | 'checks' | 'findings'>,
  files: ReviewedFiles,
): ReviewDocument {
  want('reviewDocument', 'analysis', isReviewed, analysis);
  want('reviewDocument', 'files', isFiles, files);
  const { plan, checks, findings } = analysis;
  const { sha256, inputs, placed, built } = files;
  return {
    madeBy: MADE_BY,
    plan: { name: plan.name, sha256 },
    inputs,
    checks: checks.map(({ code, severity, title, theme, source, ran, found, reason, reasonCode, cannotTell }) => ({
      code,
      severity,
      title,
      theme,
      source,
      ran,
      ...(reason === undefined ? {} : { reason }),
      ...(reasonCode === undefined ? {} : { reasonCode }),
      found,
      cannotTell,
    })),
    findings: findings.map(findingDocument),
    ...(placed === undefined ? {} : { placed: placed.map(placedDocument) }),
    ...(built === undefined ? {} : { built: built.map(builtDocument) }),
    counts: countsOf(findings, checks),
  };
}

const placedDocument = (verdict: PlacedVerdict): PlacedVerdict => ({
  ...verdict,
  measured: toMicro(verdict.measured),
  limit: [toMicro(verdict.limit[0]), toMicro(verdict.limit[1])],
  margin: toMicro(verdict.margin),
  move: toMicro(verdict.move),
  at: toPosition(verdict.at),
  confidence: toMicro(verdict.confidence),
});

const builtDocument = (one: PlacedStation): PlacedStation => ({
  ...one,
  planned: toPosition(one.planned),
  recorded: toPosition(one.recorded),
  distance: toMicro(one.distance),
  margin: toMicro(one.margin),
  limit: toMicro(one.limit),
  along: one.along === null ? null : toMicro(one.along),
  measures: [toMicro(one.measures[0]), one.measures[1] === null ? null : toMicro(one.measures[1])],
});

/**
 * How many findings of each kind, and how many checks could not run.
 * @example
 * ```ts
 * import { countsOf } from '@halfcup/core/schemas';
 * const off = { code: 'station-off-course', severity: 'error', message: 'Far off.', where: {} } as const;
 * const waived = { ...off, waived: { by: 'course designer', reason: 'a footbridge' } };
 * countsOf([off, waived], []); // → { error: 1, warning: 0, note: 0, waived: 1, cannotTell: 0, notRun: 0 }
 * ```
 */
export function countsOf(findings: readonly Finding[], checks: readonly CheckRun[]): ReviewCounts {
  want('countsOf', 'findings', listOf(isFinding), findings);
  want('countsOf', 'checks', listOf(isCheckRun), checks);
  const standing = findings.filter(({ waived }) => waived === undefined);
  const of = (severity: Finding['severity']): number =>
    standing.filter((finding) => finding.severity === severity).length;
  return {
    error: of('error'),
    warning: of('warning'),
    note: of('note'),
    waived: findings.length - standing.length,
    cannotTell: standing.filter(({ cannotTell }) => cannotTell === true).length,
    notRun: checks.filter(({ ran }) => !ran).length,
  };
}
