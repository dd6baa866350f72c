/** `halfcup review`: every check of a plan, or of several with one JSON document a line. */
import { type ReviewDocument, reviewDocument } from '../../src/export/reviewDocument.ts';
import { findingDocument } from '../../src/export/documents.ts';
import { type Finding, type Result, bad, good } from '../../src/finding.ts';
import { type Call, type Output, type Run, has, refuse } from '../call.ts';
import { reviewedFiles, sha256Of } from '../digests.ts';
import { guardInputs, writeText } from '../files.ts';
import { withPlaced } from '../placed.ts';
import { type AnalysedPlan, analysePlan, filesNamedBy } from '../plans.ts';
import { json, unitsOf } from '../printing.ts';
import { progressOf } from '../progress.ts';
import { reviewText } from '../text/review.ts';

interface Reviewed extends AnalysedPlan {
  readonly review: ReviewDocument;
}

export const run: Run = async (call) => {
  if (has(call, 'json-lines') && has(call, 'placed')) return refuse('found --placed with --json-lines; expected one of them: recorded points are of one plan');
  if (has(call, 'json-lines')) return has(call, 'report') ? refuse('found --report with --json-lines; expected one of them: a report is of one plan') : manyPlans(call);
  const [file, ...more] = call.positionals;
  if (more.length > 0) return refuse(`found ${call.positionals.length} plans; expected one, or --json-lines, which prints one document a line`);
  return onePlan(file!, call);
};

async function onePlan(file: string, call: Call): Promise<Result<Output>> {
  const read = await reviewPlan(file, call.values.get('placed'));
  if (!read.ok) return read;
  const { analysis, review } = read.value;
  const written = await writeReport(read.value, call);
  if (!written.ok) return written;
  const text = has(call, 'json') ? json(review) : reviewText(analysis, review, unitsOf(call, analysis.plan.units));
  return good({ text, exit: exitOf(review, call) });
}

/** A plan's review; with the points of a file, that file is one of its inputs. */
async function reviewPlan(file: string, placed?: string): Promise<Result<Reviewed>> {
  const read = await analysePlan(file, undefined);
  if (!read.ok) return read;
  const files = await reviewedFiles(read.value.document);
  if (placed === undefined) return good({ ...read.value, review: reviewDocument(read.value.analysis, files) });
  const held = await withPlaced(placed, read.value);
  if (!held.ok) return held;
  const inputs = [...files.inputs, { file: placed, sha256: await sha256Of(placed) }];
  return good({ ...held.value, review: reviewDocument(held.value.analysis, { ...files, inputs, placed: held.value.placed }) });
}

/** 1 where an error stands that nobody has waived, with --strict also a warning. */
const exitOf = ({ counts }: ReviewDocument, call: Call): 0 | 1 => (counts.error > 0 || (has(call, 'strict') && counts.warning > 0) ? 1 : 0);

async function writeReport({ analysis, review }: Reviewed, call: Call): Promise<Result<null>> {
  const file = call.values.get('report');
  if (file === undefined) return good(null);
  if (file === call.values.get('out')) return refuse(`found "${file}" for both --report and --out; expected two files`);
  if (!/\.html?$/iu.test(file)) return refuse(`found "${file}" for --report, which writes HTML; expected a name that ends in .html`);
  const inputs = [...call.positionals, ...(call.values.has('placed') ? [call.values.get('placed')!] : []), ...(await filesNamedBy(call.positionals[0]!))];
  const guarded = await guardInputs(file, inputs);
  if (!guarded.ok) return guarded;
  const { reportHtml } = await import('../../src/export/sheets/report.ts');
  return writeText(file, reportHtml({ analysis, review, made: today() }), has(call, 'force'));
}

/** The calendar day here, ISO 8601. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

/** One line a plan. Of one that cannot be used the line holds its problems, which stderr tells as well: the others are not lost with it. */
async function manyPlans(call: Call): Promise<Result<Output>> {
  const lines: object[] = [];
  const problems: Finding[] = [];
  let exit: 0 | 1 | 2 = 0;
  const progress = progressOf('Reviewing plans');
  for (const [done, file] of call.positionals.entries()) {
    progress.show(done / call.positionals.length);
    const read = await reviewPlan(file);
    if (read.ok) {
      lines.push({ file, ...read.value.review });
      exit = Math.max(exit, exitOf(read.value.review, call)) as 0 | 1 | 2;
    } else {
      const own = read.findings.filter(({ severity }) => severity === 'error');
      lines.push({ file, problems: own.map(findingDocument) });
      problems.push(...own);
      exit = 2;
    }
  }
  progress.clear();
  // Of a single plan that cannot be used there is nothing to print but the refusal.
  if (lines.length === 1 && exit === 2) return bad(problems);
  return good({ text: lines.map((line) => `${JSON.stringify(line)}\n`).join(''), exit, notes: problems });
}
