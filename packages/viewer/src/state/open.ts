/**
 * From files that a person dropped or chose to a plan that is computed, one that waits for more
 * files, or the reasons why not. Reads and computes; changes nothing.
 */
import { findingLine, readPlan, startPlan, type Finding, type GpxDocument, type PlanDocument, type Result, type Units } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import type { FeatureCollection } from 'geojson';
import { computeOpen, type PlanFiles } from './compute.ts';
import type { OpenPlan, WaitingPlan } from './store.ts';

export interface NamedFile {
  /** With its folder where the browser gives one. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export type Opening =
  /** `started`: the plan was begun here, from a course without one, and is in no file yet. */
  | { readonly kind: 'opened'; readonly plan: OpenPlan; readonly started?: boolean }
  | { readonly kind: 'waiting'; readonly plan: WaitingPlan }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] };

interface Sorted {
  readonly plans: readonly NamedFile[];
  readonly gpx: readonly NamedFile[];
  readonly drawings: readonly NamedFile[];
  readonly results: readonly NamedFile[];
  readonly others: readonly NamedFile[];
}

const lastName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
const textOf = (file: NamedFile): string => new TextDecoder().decode(file.bytes);
/** With its byte order mark, so that saving gives the very bytes. */
const planTextOf = (file: NamedFile): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(file.bytes);
const refused = (findings: readonly Finding[]): Opening => ({ kind: 'refused', findings });
const trouble = (code: string, file: string, message: string): Finding => ({ code, severity: 'error', message, where: { file } });

/** What a file is meant to be, by its name, and where the name says nothing by its first character. */
function kindOf(file: NamedFile): keyof Sorted {
  const name = file.name.toLowerCase();
  if (name.endsWith('.gpx')) return 'gpx';
  if (name.endsWith('.geojson')) return 'drawings';
  if (name.endsWith('.csv')) return 'results';
  if (name.endsWith('.json')) return /"type"\s*:\s*"FeatureCollection"/u.test(textOf(file).slice(0, 2000)) ? 'drawings' : 'plans';
  const first = textOf({ name, bytes: file.bytes.subarray(0, 200) }).replace(/^\uFEFF/u, '').trimStart()[0];
  return first === '<' ? 'gpx' : first === '{' ? 'plans' : 'others';
}

const sort = (files: readonly NamedFile[]): Sorted => {
  const of = (kind: keyof Sorted): NamedFile[] => files.filter((file) => kindOf(file) === kind);
  return { plans: of('plans'), gpx: of('gpx'), drawings: of('drawings'), results: of('results'), others: of('others') };
};

/** GPX files that the plan's courses name, each once. */
export const namedFiles = ({ plan }: PlanDocument): string[] => [...new Set(plan.courses.flatMap((course) => (course.gpx === undefined ? [] : [course.gpx])))];

/** Files of past results that its races and waves name, each once. */
export const namedResults = ({ plan }: PlanDocument): string[] => [
  ...new Set(plan.races.flatMap(({ finish, waves }) => [finish, ...waves.map((wave) => wave.finish)]).flatMap((one) => (one !== undefined && 'csv' in one ? [one.csv] : []))),
];

/** A drawing for the background; what cannot be read is a note, since nothing computed depends on it. */
export function readDrawing(text: string, file: string): { readonly context: FeatureCollection | null; readonly findings: readonly Finding[] } {
  try {
    const value = JSON.parse(text) as Partial<FeatureCollection> | null;
    if (value?.type === 'FeatureCollection' && Array.isArray(value.features)) return { context: value as FeatureCollection, findings: [] };
  } catch {
    // Said below, in the same words as for a file of another kind.
  }
  const message = `The background drawing could not be read: expected a GeoJSON FeatureCollection. The plan opens without it; save the drawing as GeoJSON and add it again.`;
  return { context: null, findings: [{ code: 'context-unreadable', severity: 'note', message, where: { file } }] };
}

function readAll(files: readonly NamedFile[]): { readonly gpx: readonly GpxDocument[]; readonly failed: boolean; readonly findings: readonly Finding[] } {
  const results: Result<GpxDocument>[] = files.map((file) => readGpx(file.bytes, file.name));
  return {
    gpx: results.flatMap((result) => (result.ok ? [result.value] : [])),
    failed: results.some((result) => !result.ok),
    findings: results.flatMap((result) => result.findings),
  };
}

/** Adds each file under the name by which the plan calls it. */
function matched<T>(wanted: readonly string[], have: ReadonlyMap<string, T>, found: readonly { readonly file: string; readonly content: T }[]): ReadonlyMap<string, T> {
  const all = new Map(have);
  for (const name of wanted) {
    const one = found.find(({ file }) => file === name || file.endsWith(`/${name}`)) ?? found.find(({ file }) => lastName(file) === lastName(name));
    if (one !== undefined) all.set(name, one.content);
  }
  return all;
}

const byFile = (documents: readonly GpxDocument[]): { readonly file: string; readonly content: GpxDocument }[] => documents.map((content) => ({ file: content.file, content }));
const resultTexts = (files: readonly NamedFile[]): { readonly file: string; readonly content: string }[] => files.map((file) => ({ file: file.name, content: textOf(file) }));

/** Files that came along and that nothing in the plan asks for: said, so that a misspelt name is seen. */
const unused = (document: PlanDocument, used: ReadonlyMap<string, GpxDocument>, found: readonly GpxDocument[]): Finding[] =>
  found
    .filter((one) => ![...used.values()].includes(one))
    .map((one) => ({
      code: 'file-not-named',
      severity: 'note' as const,
      message: `The plan ${document.file} names no course file called ${lastName(one.file)}; it was left aside. Expected: ${namedFiles(document).join(', ') || 'none'}.`,
      where: { file: one.file },
    }));

function compute(document: PlanDocument, files: PlanFiles, started = false): Opening {
  const missing = [...namedFiles(document).filter((name) => !files.gpx.has(name)), ...namedResults(document).filter((name) => !files.results.has(name))];
  if (missing.length > 0) return { kind: 'waiting', plan: { document, files, missing } };
  const open = computeOpen(document, files, null, null);
  return open.ok ? { kind: 'opened', plan: open.value, started } : refused(open.findings);
}

const NO_FILES: PlanFiles = { gpx: new Map(), results: new Map(), context: null, findings: [] };

/** Files for a plan added to those it has; `failed` where one of them cannot be read. */
function gather(document: PlanDocument, have: PlanFiles, sorted: Sorted): { readonly failed: boolean; readonly files: PlanFiles } {
  const read = readAll(sorted.gpx);
  const gpx = matched(namedFiles(document), have.gpx, byFile(read.gpx));
  const results = matched(namedResults(document), have.results, resultTexts(sorted.results));
  const wanted = document.plan.context === undefined ? undefined : lastName(document.plan.context);
  const drawing = sorted.drawings.find((file) => lastName(file.name) === wanted) ?? (sorted.drawings.length === 1 ? sorted.drawings[0] : undefined);
  const drawn = drawing === undefined ? { context: have.context, findings: [] } : readDrawing(textOf(drawing), drawing.name);
  const findings = [...have.findings, ...read.findings, ...drawn.findings, ...(read.failed ? [] : unused(document, gpx, read.gpx))];
  return { failed: read.failed, files: { gpx, results, context: drawn.context, findings } };
}

function fromPlan(plan: NamedFile, sorted: Sorted): Opening {
  const read = readPlan(planTextOf(plan), plan.name);
  if (!read.ok) return refused([...read.findings, ...readAll(sorted.gpx).findings]);
  const { failed, files } = gather(read.value, NO_FILES, sorted);
  return failed ? refused([...read.findings, ...files.findings]) : compute(read.value, { ...files, findings: [...read.findings, ...files.findings] });
}

function fromGpx(file: NamedFile, units: Units): Opening {
  const read = readGpx(file.bytes, file.name);
  if (!read.ok) return refused(read.findings);
  const name = read.value.name ?? lastName(file.name).replace(/\.gpx$/iu, '');
  // Without waypoints the plan opens with its course alone: places are for a person to choose.
  const started = startPlan(read.value, { name, units, gpx: lastName(file.name), ...(read.value.waypoints.length === 0 ? { at: [] } : {}) });
  if (!started.ok) return refused([...read.findings, ...started.findings]);
  const plan = readPlan(started.value, lastName(file.name).replace(/(\.gpx)?$/iu, '.plan.json'));
  if (!plan.ok) return refused([...read.findings, ...plan.findings]);
  const gpx = matched(namedFiles(plan.value), new Map(), byFile([read.value]));
  return compute(plan.value, { ...NO_FILES, gpx, findings: [...read.findings, ...started.findings, ...plan.findings] }, true);
}

function addTo(waiting: WaitingPlan, sorted: Sorted): Opening {
  const { failed, files } = gather(waiting.document, waiting.files, sorted);
  return failed ? refused(files.findings) : compute(waiting.document, files);
}

const answers = (waiting: WaitingPlan, files: readonly NamedFile[]): boolean =>
  files.some((file) => waiting.missing.some((name) => lastName(name) === lastName(file.name)));

/**
 * Opens what was given: a plan with its GPX files, GPX files that a waiting plan asked for, or one GPX file by
 * itself, whose waypoints become stations. Anything that cannot be read refuses the whole, with every reason.
 */
export function openFiles(files: readonly NamedFile[], waiting: WaitingPlan | null, units: Units): Opening {
  const sorted = sort(files);
  const strangers = sorted.others.map((file) =>
    trouble('file-kind', file.name, 'Neither a GPX file nor a plan: expected GPX (.gpx), a plan (.json) with the files it names (GPX, past results as CSV), or a background drawing (.geojson). Choose one of these.'),
  );
  if (strangers.length > 0) return refused(strangers);
  const [plan, second] = sorted.plans;
  if (plan !== undefined && second !== undefined) {
    return refused([trouble('several-plans', second.name, `Two plans came at once, ${plan.name} and ${second.name}; expected one. Open them one after the other.`)]);
  }
  if (plan !== undefined) return fromPlan(plan, sorted);
  if (waiting !== null && answers(waiting, [...sorted.gpx, ...sorted.drawings, ...sorted.results])) return addTo(waiting, sorted);
  const [gpx, another] = sorted.gpx;
  if (gpx !== undefined && another !== undefined) {
    return refused([trouble('several-courses', another.name, `${sorted.gpx.length} GPX files came without a plan; expected one, or the plan that names them. Open one of them, or add the plan.`)]);
  }
  if (gpx !== undefined) return fromGpx(gpx, units);
  const [drawing] = sorted.drawings;
  return refused([trouble('nothing-to-open', drawing?.name ?? 'nothing', 'No course and no plan among the files: expected a GPX file or a plan. Add one of them.')]);
}

/** The findings as lines to copy: `FILE:LINE:COLUMN: message`. */
export const asLines = (findings: readonly Finding[]): string => findings.map(findingLine).join('\n');
