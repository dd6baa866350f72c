/** The job of a worker thread: a plan's file in, its finished line out. The pool calls what is exported as default. */
import { findingDocument } from '../src/export/documents.ts';
import { silentIn } from './io.ts';
import { exitOf, reviewPlan } from './reviewPlan.ts';
import { type ReviewJob, type ReviewedLine, lineOf } from './reviewedLine.ts';

/** Reviews one of several plans. Of one that cannot be used the line holds its problems. */
export default async function reviewLine({ file, cwd, strict }: ReviewJob): Promise<ReviewedLine> {
  const read = await reviewPlan(silentIn(cwd), file);
  if (read.ok) return { line: lineOf(file, read.value.review), problems: [], exit: exitOf(read.value.review, strict) };
  const problems = read.findings.filter(({ severity }) => severity === 'error');
  return { line: lineOf(file, { problems: problems.map(findingDocument) }), problems, exit: 2 };
}
