/**
 * Many plans' reviews: one line of JSON each, in the order given and as soon as it can be printed, made by worker
 * threads. Memory does not grow with the number of plans.
 */
import { type Result, bad, good } from '../src/finding.ts';
import { type Call, type Output, countOf, has, refuse } from './call.ts';
import { type TextSink, guardInputs, isThere, openText } from './files.ts';
import { inOrder } from './inOrder.ts';
import { CLOSED, type Exit, type Io, STDIN } from './io.ts';
import { REFUSAL } from './messages.ts';
import { progressOf } from './progress.ts';
import type { ReviewJob } from './reviewedLine.ts';
import { type Reviewers, inThisThread, inThreads } from './reviewers.ts';
import { screenOf } from './screen.ts';
import { cleanText } from './clean.ts';
import { problemLine } from './spoken.ts';

/** Plans begun for each thread before the oldest of them must be printed: a plan much larger than its neighbours holds up none of them. */
const AHEAD = 4;

/** Prints, or writes to `--out`, the lines of all plans. A single one that cannot be used is refused. */
export async function reviewMany(io: Io, call: Call): Promise<Result<Output>> {
  const { positionals: files } = call;
  if (files.includes(STDIN)) return refuse(REFUSAL.inputOfOne());
  const workers = io.processors === 0 ? 0 : Math.min(countOf(call, 'workers') ?? io.processors, files.length);
  if (files.length === 1) return onlyLine({ file: files[0]!, cwd: io.cwd, strict: has(call, 'strict') });
  const opened = await sinkOf(io, call);
  if (!opened.ok) return opened;
  const reviewers = workers === 0 ? await inThisThread() : await inThreads(workers);
  try {
    const exit = await printLines(io, call, workers === 0 ? 1 : workers * AHEAD, reviewers, opened.value);
    const closed = await opened.value.close();
    if (!exit.ok) return exit;
    return closed.ok ? good({ text: '', saved: true, exit: exit.value }) : closed;
  } finally {
    reviewers.close();
  }
}

async function onlyLine(job: ReviewJob): Promise<Result<Output>> {
  const { review } = await inThisThread();
  const { line, problems, exit } = await review(job);
  return problems.length > 0 ? bad(problems) : good({ text: line, exit });
}

async function printLines(
  io: Io,
  { positionals: files, values }: Call,
  ahead: number,
  { review }: Reviewers,
  sink: TextSink,
): Promise<Result<Exit>> {
  const strict = values.has('strict');
  const progress = progressOf('Reviewing plans', io.stderr);
  const screen = screenOf(io.stderr, io.env);
  let exit: 0 | 1 | 2 = 0;
  let printed = 0;
  progress.show(0);
  for await (const { line, problems, exit: own } of inOrder(files, ahead, async (file) =>
    review({ file, cwd: io.cwd, strict }),
  )) {
    if (own > exit) exit = own;
    if (problems.length > 0 || io.stdout.isTTY) progress.clear();
    if (problems.length > 0)
      await io.stderr.write(
        problems.map((problem) => `${cleanText(problemLine(problem, screen), screen.coloured)}\n`).join(''),
      );
    const written = await sink.write(line);
    if (!written.ok) return written;
    // A reader that has seen enough ends the program.
    if (!written.value) {
      progress.clear();
      return good(CLOSED);
    }
    printed += 1;
    progress.show(printed / files.length);
  }
  progress.clear();
  return good(exit);
}

/** Where lines go as they come: the file of `--out`, else stdout, for which it waits where that is slow. */
async function sinkOf(io: Io, call: Call): Promise<Result<TextSink>> {
  const file = call.values.get('out');
  if (file !== undefined) {
    const guarded = await guardInputs(io, file, (await isThere(io, file)) ? await filesRead(io, call.positionals) : []);
    return guarded.ok ? openText(io, file, has(call, 'force')) : guarded;
  }
  const write = async (text: string): Promise<Result<boolean>> => good(await io.stdout.write(text));
  return good({ write, close: async () => good(null) });
}

/** Plans and all files that they name, each once; one plan after the other, so that however many there are few are open. */
async function filesRead(io: Io, plans: readonly string[]): Promise<readonly string[]> {
  const { planFiles } = await import('./plans.ts');
  const files = new Set(plans);
  for (const plan of plans) for (const file of await planFiles(io, plan)) files.add(file);
  return [...files];
}
