/** A plan with the texts of its GPX files in, its review out. The same in, the same out: it may be done again without harm. */
import { analyse, findingDocument, readPlan, reviewDocument } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import { sha256 } from './queue.mjs';

/** `plan`: its text; `files`: a Map of GPX texts by the names that the plan uses. A plan that cannot be used gives its problems. */
export function review(plan, files) {
  const read = readPlan(plan, 'plan.json');
  if (!read.ok) return { problems: read.findings.map(findingDocument) };
  const gpx = new Map();
  for (const [name, text] of files) {
    const course = readGpx(text, name);
    if (!course.ok) return { problems: course.findings.map(findingDocument) };
    gpx.set(name, course.value);
  }
  const analysed = analyse(read.value.plan, { gpx });
  if (!analysed.ok) return { problems: analysed.findings.map(findingDocument) };
  const inputs = Array.from(files, ([file, text]) => ({ file, sha256: sha256(text) }));
  return reviewDocument(analysed.value, { sha256: sha256(plan), inputs });
}
