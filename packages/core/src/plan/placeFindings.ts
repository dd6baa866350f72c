/** Gives findings about a plan their place in the plan's text. */
import type { Finding } from '../finding.ts';
import type { PlanDocument } from './plan.ts';
import { listOf, want } from '../wants.ts';
import { isPlaced } from './shapes.ts';
import { isFinding } from '../finding.ts';

/**
 * Findings of an analysis with their place in the plan's text: those that carry a JSON pointer get the document's file, line
 * and column; all others, and places already known, stay as they are.
 * @example
 * ```ts
 * import { analyse, findingLine, readPlan } from '@halfcup/core';
 * import { placeFindings } from '@halfcup/core/plan';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "at": [-17.38, -33.21] }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const [first] = placeFindings(result.value.findings, read.value);
 * first?.code; // → 'station-off-course'
 * first && findingLine(first).slice(0, 14); // → 'plan.json:4:16'
 * ```
 */
export function placeFindings(
  findings: readonly Finding[],
  document: Pick<PlanDocument, 'file' | 'placeOf'>,
): Finding[] {
  want('placeFindings', 'findings', listOf(isFinding), findings);
  want('placeFindings', 'document', isPlaced, document);
  return findings.map((finding) => {
    const { where } = finding;
    if (where.path === undefined || where.line !== undefined) return finding;
    return { ...finding, where: { ...where, file: document.file, ...document.placeOf(where.path) } };
  });
}
