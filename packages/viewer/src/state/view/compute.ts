/** A plan's document and the files it names, computed for the variant shown; keeps what an earlier state has already. */
import {
  analyse,
  placeFindings,
  reanalyse,
  withVariant,
  type Analysis,
  type Finding,
  type Plan,
  type PlanDocument,
  type Result,
} from '@halfcup/core';
import type { PlanFiles } from '../store/planFiles.ts';
import type { OpenPlan } from '../store/store.ts';

const analysed = (plan: Plan, files: PlanFiles, before: OpenPlan | null): Result<Analysis> =>
  before !== null && before.files === files ? reanalyse(before.analysis, plan, files) : analyse(plan, files);

/** The plan as shown: with the variant of that name laid over, or the main plan. Not ok where it cannot be computed, with places in its text. */
export function computeOpen(
  document: PlanDocument,
  files: PlanFiles,
  variant: string | null,
  before: OpenPlan | null,
): Result<OpenPlan> {
  const laid = variant === null ? { ok: true as const, value: document, findings: [] } : withVariant(document, variant);
  if (!laid.ok) return laid;
  const analysis = analysed(laid.value.plan, files, before);
  if (!analysis.ok) return { ok: false, findings: placeFindings([...files.findings, ...analysis.findings], document) };
  const value: OpenPlan = {
    document,
    variant,
    files,
    analysis: analysis.value,
    findings: placeFindings(allFindings(files, analysis.value), document),
  };
  return { ok: true, value, findings: [] };
}

export const allFindings = (files: PlanFiles, analysis: Analysis): Finding[] => [
  ...files.findings,
  ...analysis.findings,
];
