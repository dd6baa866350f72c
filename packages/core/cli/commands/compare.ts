/** `halfcup compare`: what changes between two variants of a plan, or between the plan itself and one of them. */
import { compareDocument } from '../../src/export/compareDocument.ts';
import { type Result, bad, good } from '../../src/finding.ts';
import { compareAnalyses } from '../../src/improve/compare.ts';
import { type Run, has } from '../call.ts';
import { planView } from '../findings.ts';
import type { Io } from '../io.ts';
import { type AnalysedPlan, analysePlan } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import { AS_PLANNED, compareText } from '../text/compare.ts';

export const run: Run = async (call, io) => {
  const [file, ...named] = call.positionals as [string, ...string[]];
  const names = (named.length === 1 ? [AS_PLANNED, named[0]!] : named) as [string, string];
  const before = await version(io, file, names[0]);
  const after = await version(io, file, names[1]);
  if (!before.ok) return after.ok ? before : bad([...before.findings, ...after.findings]);
  if (!after.ok) return after;
  const comparison = compareAnalyses(names, before.value.analysis, after.value.analysis);
  const units = unitsOf(call, before.value.analysis.plan.units);
  return good({
    text: has(call, 'json')
      ? json(compareDocument(comparison))
      : (screen) =>
          compareText(
            comparison,
            [before.value.analysis, after.value.analysis],
            planView(screen, units, before.value.analysis.plan),
          ),
  });
};

/** The plan with a variant applied. The name of the main plan gives the plan as it is, unless a variant has that name. */
async function version(io: Io, file: string, name: string): Promise<Result<AnalysedPlan>> {
  const plain = name === AS_PLANNED ? await analysePlan(io, file, undefined) : undefined;
  const taken = plain?.ok === true && plain.value.analysis.plan.variants.some((variant) => variant.name === name);
  return plain === undefined || taken ? analysePlan(io, file, name) : plain;
}
