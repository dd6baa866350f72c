/** One plan's review as it is printed, and its report as a file. */
import { type Result, good } from '../src/finding.ts';
import type { Paper } from '../src/papers/frameStyle.ts';
import { type Call, type Output, type Printed, has, refuse } from './call.ts';
import { guardInputs, writeText } from './files.ts';
import type { Io } from './io.ts';
import { REFUSAL } from './messages.ts';
import { planFiles } from './plans.ts';
import { json, unitsOf } from './printing.ts';
import { type Reviewed, exitOf, reviewPlan } from './reviewPlan.ts';
import { reviewText } from './text/review.ts';

/** `halfcup review` of one plan: text or JSON, and the report where `--report` names a file for it. */
export async function reviewOne(io: Io, file: string, call: Call): Promise<Result<Output>> {
  const read = await reviewPlan(io, file, call.values.get('placed'));
  if (!read.ok) return read;
  const { analysis, review } = read.value;
  const written = await writeReport(io, read.value, call);
  if (!written.ok) return written;
  const text: Printed = has(call, 'json')
    ? json(review)
    : (screen) =>
        reviewText(analysis, review, { screen, units: unitsOf(call, analysis.plan.units), all: has(call, 'all') });
  return good({ text, exit: exitOf(review, has(call, 'strict')) });
}

async function writeReport(io: Io, { analysis, document, review }: Reviewed, call: Call): Promise<Result<null>> {
  const file = call.values.get('report');
  if (file === undefined) return has(call, 'paper') ? refuse(REFUSAL.paperOfReport()) : good(null);
  if (file === call.values.get('out')) return refuse(REFUSAL.sameFile(file));
  if (!/\.html?$/iu.test(file)) return refuse(REFUSAL.reportNotHtml(file));
  const inputs = [
    ...call.positionals,
    ...(call.values.has('placed') ? [call.values.get('placed')!] : []),
    ...(await planFiles(io, call.positionals[0]!)),
  ];
  const guarded = await guardInputs(io, file, inputs);
  if (!guarded.ok) return guarded;
  const [{ reportHtml }, { readContext }] = await Promise.all([
    import('../src/papers/report.ts'),
    import('./context.ts'),
  ]);
  const { drawing } = await readContext(io, document);
  const paper = (call.values.get('paper') as Paper | undefined) ?? 'a4';
  const input = { analysis, review, made: today(io), paper, ...(drawing === null ? {} : { context: drawing }) };
  return writeText(io, file, reportHtml(input), has(call, 'force'));
}

/** The calendar day here, ISO 8601. */
function today(io: Io): string {
  const now = io.now();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}
