/** From files that a person dropped or chose to a plan that is computed, one that waits, or the reasons why not. */
import { findingLine, type Finding, type Result } from '@halfcup/core';
import { analyseOn, type IndexedCourse } from '@halfcup/core/stages';
import { computeOpen, openPlanOf } from '../view/compute.ts';
import type { NamedFile } from './fileKinds.ts';
import { gatherFiles, type Gathered } from './gather.ts';
import type { OpenPlan, Starting, WaitingPlan } from '../store/store.ts';

export type { NamedFile } from './fileKinds.ts';

export type Opening =
  /** `started`: see `Gathered`. */
  | { readonly kind: 'opened'; readonly plan: OpenPlan; readonly started?: boolean }
  | { readonly kind: 'waiting'; readonly plan: WaitingPlan }
  | { readonly kind: 'starting'; readonly starting: Starting }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] };

/** What was read, computed. `courses`: where another thread has made them already. */
export function openGathered(gathered: Gathered, courses?: Result<readonly IndexedCourse[]>): Opening {
  if (gathered.kind !== 'ready') return gathered;
  const { document, files, started } = gathered;
  const open =
    courses === undefined
      ? computeOpen(document, files, null, null)
      : openPlanOf({ document, variant: null, files }, analyseOn(courses, document.plan, files));
  return open.ok ? { kind: 'opened', plan: open.value, started } : { kind: 'refused', findings: open.findings };
}

/** Opens what was given: see `gatherFiles`. */
export const openFiles = (files: readonly NamedFile[], waiting: WaitingPlan | null): Opening =>
  openGathered(gatherFiles(files, waiting));

/** The findings as lines to copy: `FILE:LINE:COLUMN: message`. */
export const asLines = (findings: readonly Finding[]): string => findings.map(findingLine).join('\n');
