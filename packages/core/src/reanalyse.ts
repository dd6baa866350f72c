/**
 * The analysis of a changed plan, with what the change does not touch taken from the analysis before.
 * The result is the same as that of `analyse`.
 */
import { type Analysis, type Sources, analyseAfter } from './analyse.ts';
import { type Result, good } from './finding.ts';
import type { Plan } from './plan/plan.ts';

/**
 * As `analyse(plan, sources)`; `before`: an analysis of an earlier state of the plan over the very same sources. Courses,
 * and the layouts of stations, that the change leaves alone are the same objects. Errors: as `analyse`.
 */
export const reanalyse = (before: Analysis, plan: Plan, sources: Sources): Result<Analysis> => (before.plan === plan ? good(before) : analyseAfter(before, plan, sources));
