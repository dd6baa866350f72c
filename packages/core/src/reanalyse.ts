/**
 * The analysis of a changed plan, with what the change does not touch taken from the analysis before.
 * The result is the same as that of `analyse`.
 */
import { type Analysis, type Sources, analyseAfter, isSources } from './analyse.ts';
import { type Result, good } from './finding.ts';
import type { Plan } from './plan/plan.ts';
import { want } from './wants.ts';
import { isWholePlan } from './plan/shapes.ts';
import { isAnalysis } from './review/shapes.ts';

/**
 * As `analyse(plan, sources)`, in less time; `before`: an analysis of an earlier state of the plan over the very same
 * sources. Courses, and the layouts of stations, that the change leaves alone are the same objects. Errors: as `analyse`.
 * @example
 * ```ts
 * import { analyse, reanalyse, readPlan } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { plan } = read.value;
 * const changed = { ...plan, stations: plan.stations.map((station) => ({ ...station, name: 'Quay Steps' })) };
 * const after = reanalyse(result.value, changed, { gpx: new Map() });
 * after.ok && after.value.courses === result.value.courses; // → true
 * ```
 */
export function reanalyse(before: Analysis, plan: Plan, sources: Sources): Result<Analysis> {
  want('reanalyse', 'before', isAnalysis, before);
  want('reanalyse', 'plan', isWholePlan, plan);
  want('reanalyse', 'sources', isSources, sources);
  return before.plan === plan ? good(before) : analyseAfter(before, plan, sources);
}
