/**
 * From files that a person dropped or chose to a plan that is computed, one that waits for more
 * files, or the reasons why not. Reads and computes; changes nothing.
 */
import { analyse, findingLine, placeFindings, readPlan, startPlan, type Finding, type GpxDocument, type PlanDocument, type Result, type Units } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import type { FeatureCollection } from 'geojson';
import type { OpenPlan, WaitingPlan } from './store.ts';

export interface NamedFile {
  /** With its folder where the browser gives one. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export type Opening =
  | { readonly kind: 'opened'; readonly plan: OpenPlan }
  | { readonly kind: 'waiting'; readonly plan: WaitingPlan }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] };

interface Sorted {
  readonly plans: readonly NamedFile[];
  readonly gpx: readonly NamedFile[];
  readonly drawings: readonly NamedFile[];
  readonly others: readonly NamedFile[];
}

const lastName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
const textOf = (file: NamedFile): string => new TextDecoder().decode(file.bytes);
const refused = (findings: readonly Finding[]): Opening => ({ kind: 'refused', findings });
const trouble = (code: string, file: string, message: string): Finding => ({ code, severity: 'error', message, where: { file } });

/** What a file is meant to be, by its name, and where the name says nothing by its first character. */
function kindOf(file: NamedFile): keyof Sorted {
  const name = file.name.toLowerCase();
  if (name.endsWith('.gpx')) return 'gpx';
  if (name.endsWith('.geojson')) return 'drawings';
  if (name.endsWith('.json')) return /"type"\s*:\s*"FeatureCollection"/u.test(textOf(file).slice(0, 2000)) ? 'drawings' : 'plans';
  const first = textOf({ name, bytes: file.bytes.subarray(0, 200) }).replace(/^\uFEFF/u, '').trimStart()[0];
  return first === '<' ? 'gpx' : first === '{' ? 'plans' : 'others';
}

const sort = (files: readonly NamedFile[]): Sorted => {
  const of = (kind: keyof Sorted): NamedFile[] => files.filter((file) => kindOf(file) === kind);
  return { plans: of('plans'), gpx: of('gpx'), drawings: of('drawings'), others: of('others') };
};

/** GPX files that the plan's courses name, each once. */
export const namedFiles = (document: PlanDocument): string[] => [
  ...new Set(document.plan.courses.flatMap((course) => (course.gpx === undefined ? [] : [course.gpx]))),
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

/** Adds each document under the name by which the plan calls it. */
function matched(wanted: readonly string[], have: ReadonlyMap<string, GpxDocument>, found: readonly GpxDocument[]): ReadonlyMap<string, GpxDocument> {
  const all = new Map(have);
  for (const name of wanted) {
    const document = found.find((one) => one.file === name || one.file.endsWith(`/${name}`)) ?? found.find((one) => lastName(one.file) === lastName(name));
    if (document !== undefined) all.set(name, document);
  }
  return all;
}

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

function compute(waiting: Omit<WaitingPlan, 'missing'>, findings: readonly Finding[]): Opening {
  const { document, gpx, context } = waiting;
  const missing = namedFiles(document).filter((name) => !gpx.has(name));
  if (missing.length > 0) return { kind: 'waiting', plan: { document, gpx, context, missing } };
  const analysis = analyse(document.plan, { gpx });
  if (!analysis.ok) return refused(placeFindings([...findings, ...analysis.findings], document));
  const all = [...findings, ...new Set([...analysis.findings, ...analysis.value.findings])];
  return { kind: 'opened', plan: { document, gpx, context, analysis: analysis.value, findings: placeFindings(all, document) } };
}

function fromPlan(plan: NamedFile, sorted: Sorted): Opening {
  const read = readPlan(textOf(plan), plan.name);
  const files = readAll(sorted.gpx);
  if (!read.ok || files.failed) return refused([...read.findings, ...files.findings]);
  const document = read.value;
  const gpx = matched(namedFiles(document), new Map(), files.gpx);
  const wanted = document.plan.context === undefined ? undefined : lastName(document.plan.context);
  const drawing = sorted.drawings.find((file) => lastName(file.name) === wanted) ?? (sorted.drawings.length === 1 ? sorted.drawings[0] : undefined);
  const drawn = drawing === undefined ? { context: null, findings: [] } : readDrawing(textOf(drawing), drawing.name);
  return compute({ document, gpx, context: drawn.context }, [...read.findings, ...files.findings, ...drawn.findings, ...unused(document, gpx, files.gpx)]);
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
  const gpx = matched(namedFiles(plan.value), new Map(), [read.value]);
  return compute({ document: plan.value, gpx, context: null }, [...read.findings, ...started.findings, ...plan.findings]);
}

function addTo(waiting: WaitingPlan, sorted: Sorted): Opening {
  const files = readAll(sorted.gpx);
  if (files.failed) return refused(files.findings);
  const gpx = matched(waiting.missing, waiting.gpx, files.gpx);
  const drawing = sorted.drawings[0];
  const drawn = drawing === undefined ? { context: waiting.context, findings: [] } : readDrawing(textOf(drawing), drawing.name);
  return compute({ document: waiting.document, gpx, context: drawn.context }, [...files.findings, ...drawn.findings, ...unused(waiting.document, gpx, files.gpx)]);
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
    trouble('file-kind', file.name, 'Neither a GPX file nor a plan: expected GPX (.gpx), a plan (.json) with the GPX files it names, or a background drawing (.geojson). Choose one of these.'),
  );
  if (strangers.length > 0) return refused(strangers);
  const [plan, second] = sorted.plans;
  if (plan !== undefined && second !== undefined) {
    return refused([trouble('several-plans', second.name, `Two plans came at once, ${plan.name} and ${second.name}; expected one. Open them one after the other.`)]);
  }
  if (plan !== undefined) return fromPlan(plan, sorted);
  if (waiting !== null && answers(waiting, [...sorted.gpx, ...sorted.drawings])) return addTo(waiting, sorted);
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
