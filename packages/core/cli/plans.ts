/** A plan with the files that it names: read, kept inside its folder, analysed. */
import { dirname, join } from 'node:path';
import { type Finding, type Result, bad, good } from '../src/finding.ts';
import type { GpxDocument } from '../src/gpx/document.ts';
import { filesNamedBy } from '../src/plan/files.ts';
import { placeFindings } from '../src/plan/placeFindings.ts';
import type { PlanDocument } from '../src/plan/plan.ts';
import { readPlan } from '../src/plan/read.ts';
import { withVariant } from '../src/plan/variant.ts';
import { type PlanFile, type ReviewedPlan, reviewPlan } from '../src/whole.ts';
import { liesInside, readGpxFile, readText } from './files.ts';
import type { Io } from './io.ts';
import { REFUSAL } from './messages.ts';

/** An analysis whose findings have their places in the plan and in its files. */
export type AnalysedPlan = ReviewedPlan;

/** Reads and analyses the plan of a file, with a variant applied where one is named. */
export async function analysePlan(io: Io, file: string, variant: string | undefined): Promise<Result<AnalysedPlan>> {
  const text = await readText(io, file, 'plan');
  if (!text.ok) return text;
  const read = readPlan(text.value, file);
  const chosen = read.ok && variant !== undefined ? withVariant(read.value, variant) : read;
  if (!chosen.ok) return chosen;
  const document = chosen.value;
  const sources = await readSources(io, document);
  if (!sources.ok) return bad(placeFindings(sources.findings, document));
  const texts = await readResultTexts(io, document);
  if (!texts.ok) return texts;
  const maps = await readMaps(io, document);
  const reviewed = reviewPlan({
    plan: document,
    files: new Map<string, PlanFile>([...sources.value, ...texts.value, ...maps.texts]),
  });
  const before = placeFindings([...chosen.findings, ...sources.findings, ...maps.findings], document);
  const findings = [...before, ...reviewed.findings];
  if (!reviewed.ok) return bad(findings);
  return good({ document, analysis: { ...reviewed.value.analysis, findings } });
}

/** Files that a plan names, as paths from here; none where it cannot be read, which whoever reads it reports. */
export async function planFiles(io: Io, plan: string): Promise<readonly string[]> {
  const text = await readText(io, plan, 'plan');
  const read = text.ok ? readPlan(text.value, plan) : text;
  if (!read.ok) return [];
  const { gpx, results, context, ground } = filesNamedBy(read.value.plan);
  return [...gpx, ...results, ...context, ...ground].map((name) => join(dirname(plan), name));
}

/** Every GPX file of the plan's courses. A missing one is left out: the analysis says so at its place. */
async function readSources(io: Io, { file, plan }: PlanDocument): Promise<Result<ReadonlyMap<string, GpxDocument>>> {
  const folder = dirname(file);
  const sources = new Map<string, GpxDocument>();
  const findings: Finding[] = [];
  let unusable = false;
  for (const [index, { id, gpx }] of plan.courses.entries()) {
    if (gpx === undefined || sources.has(gpx)) continue;
    const path = join(folder, gpx);
    const inside = await liesInside(io, path, folder);
    if (inside === null) continue;
    const read = inside ? await readGpxFile(io, path) : bad([outside(gpx, index, id)]);
    findings.push(...read.findings);
    if (read.ok) sources.set(gpx, read.value);
    else unusable = true;
  }
  return unusable ? bad(findings) : good(sources, findings);
}

/** Texts of past results that races and waves name. A missing file is left out: race day says so. One that cannot be used is refused. */
async function readResultTexts(io: Io, document: PlanDocument): Promise<Result<ReadonlyMap<string, string>>> {
  const folder = dirname(document.file);
  const texts = new Map<string, string>();
  const findings: Finding[] = [];
  for (const csv of filesNamedBy(document.plan).results) {
    const path = join(folder, csv);
    if ((await liesInside(io, path, folder)) !== true) continue;
    const text = await readText(io, path, 'results');
    if (text.ok) texts.set(csv, text.value);
    else findings.push(...text.findings);
  }
  return findings.length > 0 ? bad(findings) : good(texts);
}

/** Texts of the ground. A missing file is left out, and one that cannot be read besides: the review goes on without. */
async function readMaps(
  io: Io,
  document: PlanDocument,
): Promise<{ readonly texts: ReadonlyMap<string, string>; readonly findings: readonly Finding[] }> {
  const folder = dirname(document.file);
  const texts = new Map<string, string>();
  const findings: Finding[] = [];
  for (const name of filesNamedBy(document.plan).ground) {
    const path = join(folder, name);
    if ((await liesInside(io, path, folder)) !== true) continue;
    const text = await readText(io, path, 'ground');
    if (text.ok) texts.set(name, text.value);
    else findings.push(...text.findings);
  }
  return { texts, findings };
}

function outside(gpx: string, index: number, course: string): Finding {
  return {
    code: 'gpx-outside',
    severity: 'error',
    message: REFUSAL.linkOutside(gpx),
    where: { path: `/courses/${index}/gpx`, course },
  };
}

/** Why the finish times of a race are not known though the plan names a file of them: what is made of race day lacks that race. */
export const unreadResults = ({ findings }: { readonly findings: readonly Finding[] }): readonly Finding[] =>
  findings.filter(({ code, severity }) => severity === 'error' && code.startsWith('results-'));
