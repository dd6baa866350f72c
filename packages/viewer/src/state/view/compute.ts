/** A plan's document and the files it names, computed for the variant shown; keeps what an earlier state has already. */
import {
  analyse,
  reanalyse,
  withVariant,
  type Analysis,
  type Finding,
  type Plan,
  type PlanDocument,
  type Result,
} from '@halfcup/core';
import { placeFindings } from '@halfcup/core/plan';
import type { PlanFiles } from '../store/planFiles.ts';
import type { OpenPlan } from '../store/store.ts';

/**
 * The one maker of the open plan: of what was read, and what came of computing it for a variant. All findings have their
 * places in the plan's text, also where it could not be computed.
 */
export function openPlanOf(
  { document, variant, files }: Pick<OpenPlan, 'document' | 'variant' | 'files'>,
  analysed: Result<Analysis>,
): Result<OpenPlan> {
  const of = (found: readonly Finding[]): Finding[] => placeFindings([...files.findings, ...found], document);
  if (!analysed.ok) return { ok: false, findings: of(analysed.findings) };
  const analysis = analysed.value;
  return {
    ok: true,
    value: { document, variant, files, analysis, findings: of(analysis.findings) },
    findings: [],
  };
}

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
  return laid.ok ? openPlanOf({ document, variant, files }, analysed(laid.value.plan, files, before)) : laid;
}
