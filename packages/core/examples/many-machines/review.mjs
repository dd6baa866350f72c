/** A plan with the texts of its GPX files in, its review out. The same in, the same out: it may be done again without harm. */
import { reviewPlan } from '@halfcup/core';
import { findingDocument, reviewDocument } from '@halfcup/core/schemas';
import { sha256 } from './queue.mjs';

/** `plan`: its text; `files`: a Map of GPX texts by the names that the plan uses. A plan that cannot be used gives its problems. */
export function review(plan, files) {
  const reviewed = reviewPlan({ plan, files });
  if (!reviewed.ok) return { problems: reviewed.findings.map(findingDocument) };
  const inputs = Array.from(files, ([file, text]) => ({ file, sha256: sha256(text) }));
  return reviewDocument(reviewed.value.analysis, { sha256: sha256(plan), inputs });
}
