/** From files that a person dropped or chose to a plan that is computed, one that waits, or the reasons why not. */
import { findingLine, type Finding } from '@halfcup/core';
import { computeOpen } from '../view/compute.ts';
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

/** What was read, computed. */
export function openGathered(gathered: Gathered): Opening {
  if (gathered.kind !== 'ready') return gathered;
  const { document, files, started } = gathered;
  const open = computeOpen(document, files, null, null);
  return open.ok ? { kind: 'opened', plan: open.value, started } : { kind: 'refused', findings: open.findings };
}

/** Opens what was given: see `gatherFiles`. */
export const openFiles = (files: readonly NamedFile[], waiting: WaitingPlan | null): Opening =>
  openGathered(gatherFiles(files, waiting));

/** The findings as lines to copy: `FILE:LINE:COLUMN: message`. */
export const asLines = (findings: readonly Finding[]): string => findings.map(findingLine).join('\n');
