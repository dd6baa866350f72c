/** `halfcup sheets`: every paper of a plan as HTML into one folder, to be printed by a browser. */
import { join } from 'node:path';
import type { Analysis } from '../../src/analyse.ts';
import { reviewDocument } from '../../src/export/reviewDocument.ts';
import type { Paper } from '../../src/papers/frameStyle.ts';
import { type PapersOptions, type PrintedPaper, indexPaper, papersOf } from '../../src/papers/papers.ts';
import { languageNote } from '../../src/text/languages.ts';
import { type Finding, type Result, good } from '../../src/finding.ts';
import { type Call, type Printed, type Run, has, refuse } from '../call.ts';
import { readContext } from '../context.ts';
import { reviewedFiles } from '../digests.ts';
import { guardFolder, writeFolder } from '../folders.ts';
import type { Io } from '../io.ts';
import { REFUSAL } from '../messages.ts';
import { type AnalysedPlan, analysePlan, planFiles, unreadResults } from '../plans.ts';
import { json } from '../printing.ts';
import { table } from '../tables.ts';
import { page } from '../text/blocks.ts';

export const run: Run = async (call, io) => {
  const folder = call.values.get('out');
  if (folder === undefined || folder === '') return refuse(REFUSAL.noFolder());
  const fits = await guardFolder(io, folder);
  if (!fits.ok) return fits;
  const [file] = call.positionals;
  const read = await analysePlan(io, file!, call.values.get('variant'));
  if (!read.ok) return read;
  const context = await readContext(io, read.value.document);
  const analysis = printed(read.value, call);
  const note = languageNote(call.values.get('lang') ?? analysis.plan.language);
  const review = reviewDocument(analysis, await reviewedFiles(io, read.value.document));
  const options: PapersOptions = {
    paper: (call.values.get('paper') as Paper | undefined) ?? 'a4',
    printedAt: clockHere(io),
    review,
    ...(call.values.has('lang') ? { language: call.values.get('lang')! } : {}),
    ...(context.drawing === null ? {} : { context: context.drawing }),
  };
  const written = await write(
    io,
    analysis,
    options,
    folder,
    [file!, ...(await planFiles(io, file!))],
    has(call, 'force'),
  );
  if (!written.ok) return written;
  const notes = [
    ...unreadResults(analysis),
    ...context.findings,
    ...(note === null
      ? []
      : [
          {
            code: 'language-missing',
            severity: 'note',
            message: note,
            where: { file: file!, path: '/language' },
          } satisfies Finding,
        ]),
  ];
  const files = written.value.map(({ name }) => join(folder, name));
  const rows = written.value.map(({ title }, k) => [title, files[k]!]);
  const text: Printed = has(call, 'json')
    ? json({ files })
    : (screen) => page([table(['Paper', 'File'], rows, screen)], screen);
  return good({ text, notes, saved: true });
};

/** The plan as it is printed: in the units of the call, and under a name that says which variant it is. */
function printed({ analysis }: AnalysedPlan, call: Call): Analysis {
  const { plan } = analysis;
  const variant = call.values.get('variant');
  const units = call.values.get('units') as typeof plan.units | undefined;
  return {
    ...analysis,
    plan: {
      ...plan,
      units: units ?? plan.units,
      name: variant === undefined ? plan.name : `${plan.name} (${variant})`,
    },
  };
}

async function write(
  io: Io,
  analysis: Analysis,
  options: PapersOptions,
  folder: string,
  inputs: readonly string[],
  force: boolean,
): Promise<Result<readonly PrintedPaper[]>> {
  const papers = papersOf(analysis, options);
  const all = [indexPaper(analysis, papers, options), ...papers];
  const written = await writeFolder(
    io,
    folder,
    all.map(({ name, html }) => ({ name, text: html })),
    inputs,
    force,
  );
  return written.ok ? good(all) : written;
}

/** Day and minute here, as people read them. */
function clockHere(io: Io): string {
  const now = io.now();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}:${two(now.getMinutes())}`;
}
