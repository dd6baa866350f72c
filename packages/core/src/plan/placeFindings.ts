/** Gives findings about a plan their place in the plan's text. */
import type { Finding } from '../finding.ts';
import type { PlanDocument } from './plan.ts';

/** Findings that carry a JSON pointer get file, line and column from the document; all others, and places already known, stay as they are. */
export const placeFindings = (findings: readonly Finding[], document: Pick<PlanDocument, 'file' | 'placeOf'>): Finding[] =>
  findings.map((finding) => {
    const { where } = finding;
    if (where.path === undefined || where.line !== undefined) return finding;
    return { ...finding, where: { ...where, file: document.file, ...document.placeOf(where.path) } };
  });
