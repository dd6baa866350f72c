/** A plan's document and the files it names, computed for the positions shown; keeps what an earlier state has already. */
import { analyse, placeFindings, reanalyse, withVariant, type Analysis, type Finding, type GpxDocument, type Plan, type PlanDocument, type Result } from '@halfcup/core';
import type { FeatureCollection } from 'geojson';
import type { OpenPlan } from './store.ts';

/** All that is read beside the plan itself. One record lives as long as no file is added. */
export interface PlanFiles {
  readonly gpx: ReadonlyMap<string, GpxDocument>;
  readonly results: ReadonlyMap<string, string>;
  readonly context: FeatureCollection | null;
  /** What reading them has found. */
  readonly findings: readonly Finding[];
  /** The bytes of every file, as they came, by the name by which the plan calls it. */
  readonly originals: ReadonlyMap<string, Blob>;
}

const analysed = (plan: Plan, files: PlanFiles, before: OpenPlan | null): Result<Analysis> =>
  before !== null && before.files === files ? reanalyse(before.analysis, plan, files) : analyse(plan, files);

/** The plan as shown: with the variant of that name laid over, or as planned. Not ok where it cannot be computed, with places in its text. */
export function computeOpen(document: PlanDocument, files: PlanFiles, variant: string | null, before: OpenPlan | null): Result<OpenPlan> {
  const laid = variant === null ? { ok: true as const, value: document, findings: [] } : withVariant(document, variant);
  if (!laid.ok) return laid;
  const analysis = analysed(laid.value.plan, files, before);
  if (!analysis.ok) return { ok: false, findings: placeFindings([...files.findings, ...analysis.findings], document) };
  const value: OpenPlan = { document, variant, files, analysis: analysis.value, findings: placeFindings(allFindings(files, analysis.value), document) };
  return { ok: true, value, findings: [] };
}

export const allFindings = (files: PlanFiles, analysis: Analysis): Finding[] => [...files.findings, ...analysis.findings];
