/**
 * From files that a person dropped or chose to a plan with all that it names, one that waits for more
 * files, or the reasons why not. Reads; computes nothing, and changes nothing.
 */
import { filesNamedBy, readPlan, type Finding, type PlanDocument, type Result } from '@halfcup/core';
import { type GpxDocument } from '@halfcup/core/stages';
import { readGpx } from '@halfcup/core/gpx';
import { readGround } from '@halfcup/core/ground';
import { readDrawing } from './drawing.ts';
import type { PlanFiles } from '../store/planFiles.ts';
import type { Starting, WaitingPlan } from '../store/store.ts';

export interface NamedFile {
  /** With its folder where the browser gives one. */
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** `started`: the plan was begun here, from a course without one, and is in no file yet. */
export type Gathered =
  | { readonly kind: 'ready'; readonly document: PlanDocument; readonly files: PlanFiles; readonly started: boolean }
  | { readonly kind: 'waiting'; readonly plan: WaitingPlan }
  /** Courses without a plan. */
  | { readonly kind: 'starting'; readonly starting: Starting }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] };

/** Reads one GPX file; a worker has one that tells how far it is. */
export type GpxReading = (bytes: Uint8Array, name: string) => Result<GpxDocument>;

interface Sorted {
  readonly plans: readonly NamedFile[];
  readonly gpx: readonly NamedFile[];
  readonly drawings: readonly NamedFile[];
  readonly results: readonly NamedFile[];
  readonly others: readonly NamedFile[];
}

export const lastName = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
const textOf = (file: NamedFile): string => new TextDecoder().decode(file.bytes);
/** With its byte order mark, so that saving gives the very bytes. */
const planTextOf = (file: NamedFile): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(file.bytes);
const refused = (findings: readonly Finding[]): Gathered => ({ kind: 'refused', findings });
const trouble = (code: string, file: string, message: string): Finding => ({
  code,
  severity: 'error',
  message,
  where: { file },
});

/** What a file is meant to be, by its name, and where the name says nothing by its first character. */
function kindOf(file: NamedFile): keyof Sorted {
  const name = file.name.toLowerCase();
  if (name.endsWith('.gpx')) return 'gpx';
  if (name.endsWith('.geojson')) return 'drawings';
  if (name.endsWith('.csv')) return 'results';
  if (name.endsWith('.json'))
    return /"type"\s*:\s*"FeatureCollection"/u.test(textOf({ name, bytes: file.bytes.subarray(0, 2000) }))
      ? 'drawings'
      : 'plans';
  const first = textOf({ name, bytes: file.bytes.subarray(0, 200) })
    .replace(/^\uFEFF/u, '')
    .trimStart()[0];
  return first === '<' ? 'gpx' : first === '{' ? 'plans' : 'others';
}

const sort = (files: readonly NamedFile[]): Sorted => {
  const of = (kind: keyof Sorted): NamedFile[] => files.filter((file) => kindOf(file) === kind);
  return { plans: of('plans'), gpx: of('gpx'), drawings: of('drawings'), results: of('results'), others: of('others') };
};

/** What a file holds, beside the file. */
interface Found<T> {
  readonly file: NamedFile;
  readonly content: T;
}

interface ReadGpx {
  readonly found: readonly Found<GpxDocument>[];
  readonly failed: boolean;
  readonly findings: readonly Finding[];
}

function readAll(files: readonly NamedFile[], read: GpxReading): ReadGpx {
  const results = files.map((file) => ({ file, result: read(file.bytes, file.name) }));
  return {
    found: results.flatMap(({ file, result }) => (result.ok ? [{ file, content: result.value }] : [])),
    failed: results.some(({ result }) => !result.ok),
    findings: results.flatMap(({ result }) => result.findings),
  };
}

/** Each file under the name by which the plan calls it. */
function matched<T>(wanted: readonly string[], found: readonly Found<T>[]): ReadonlyMap<string, Found<T>> {
  const all = new Map<string, Found<T>>();
  for (const name of wanted) {
    const one =
      found.find(({ file }) => file.name === name || file.name.endsWith(`/${name}`)) ??
      found.find(({ file }) => lastName(file.name) === lastName(name));
    if (one !== undefined) all.set(name, one);
  }
  return all;
}

const contents = <T>(found: ReadonlyMap<string, Found<T>>): [string, T][] =>
  [...found].map(([name, { content }]) => [name, content]);
const blobs = (found: ReadonlyMap<string, Found<unknown>>): [string, Blob][] =>
  [...found].map(([name, { file }]) => [name, new Blob([file.bytes])]);

/** Files that came along and that nothing in the plan uses: reported, so that a misspelt name is seen. */
const unused = (
  document: PlanDocument,
  used: ReadonlyMap<string, Found<GpxDocument>>,
  found: readonly Found<GpxDocument>[],
): Finding[] =>
  found
    .filter((one) => ![...used.values()].includes(one))
    .map(({ file }) => ({
      code: 'file-not-named',
      severity: 'note' as const,
      message: `The plan does not use ${lastName(file.name)}, so it was left out. It uses: ${filesNamedBy(document.plan).gpx.join(', ') || 'no file'}.`,
      where: { file: file.name },
    }));

const NO_FILES: PlanFiles = {
  gpx: new Map(),
  results: new Map(),
  ground: new Map(),
  context: null,
  findings: [],
  originals: new Map(),
};

/** The drawing that the plan names, or the only one that came. */
function drawingFor(document: PlanDocument, drawings: readonly NamedFile[]): ReadonlyMap<string, Found<null>> {
  const wanted = document.plan.context;
  const file =
    drawings.find(({ name }) => wanted !== undefined && lastName(name) === lastName(wanted)) ??
    (drawings.length === 1 ? drawings[0] : undefined);
  return new Map(file === undefined ? [] : [[wanted ?? lastName(file.name), { file, content: null }]]);
}

/** Files for a plan added to those it has; `failed` where one of them cannot be read. */
function gather(
  document: PlanDocument,
  have: PlanFiles,
  sorted: Sorted,
  read: GpxReading,
): { readonly failed: boolean; readonly files: PlanFiles } {
  const gpx = readAll(sorted.gpx, read);
  const named = filesNamedBy(document.plan);
  const courses = matched(named.gpx, gpx.found);
  const results = matched(
    named.results,
    sorted.results.map((file) => ({ file, content: textOf(file) })),
  );
  const maps = matched(
    named.ground,
    sorted.drawings.map((file) => ({ file, content: null })),
  );
  const grounds = [...maps].map(([name, { file }]) => [name, readGround(textOf(file), file.name)] as const);
  const drawings = drawingFor(
    document,
    sorted.drawings.filter((drawing) => ![...maps.values()].some(({ file }) => file === drawing)),
  );
  const [drawing] = drawings.values();
  const drawn =
    drawing === undefined
      ? { context: have.context, findings: [] }
      : readDrawing(textOf(drawing.file), drawing.file.name);
  const findings = [
    ...have.findings,
    ...gpx.findings,
    ...grounds.flatMap(([, ground]) => ground.findings),
    ...drawn.findings,
    ...(gpx.failed ? [] : unused(document, courses, gpx.found)),
  ];
  const files: PlanFiles = {
    gpx: new Map([...have.gpx, ...contents(courses)]),
    results: new Map([...have.results, ...contents(results)]),
    ground: new Map([
      ...have.ground,
      ...grounds.flatMap(([name, one]) => (one.ok ? [[name, one.value] as const] : [])),
    ]),
    context: drawn.context,
    findings,
    originals: new Map([...have.originals, ...blobs(courses), ...blobs(results), ...blobs(maps), ...blobs(drawings)]),
  };
  return { failed: gpx.failed, files };
}

/** Ready where nothing that it names is missing. */
function complete(document: PlanDocument, files: PlanFiles, started: boolean): Gathered {
  const named = filesNamedBy(document.plan);
  const missing = [
    ...named.gpx.filter((name) => !files.gpx.has(name)),
    ...named.results.filter((name) => !files.results.has(name)),
  ];
  return missing.length > 0
    ? { kind: 'waiting', plan: { document, files, missing } }
    : { kind: 'ready', document, files, started };
}

function fromPlan(plan: NamedFile, sorted: Sorted, reading: GpxReading): Gathered {
  const read = readPlan(planTextOf(plan), plan.name);
  if (!read.ok) return refused([...read.findings, ...readAll(sorted.gpx, reading).findings]);
  const { failed, files } = gather(read.value, NO_FILES, sorted, reading);
  const findings = [...read.findings, ...files.findings];
  return failed ? refused(findings) : complete(read.value, { ...files, findings }, false);
}

/** Names without folders; a second file of the same name gets a number. */
function distinctNames(names: readonly string[]): readonly string[] {
  const taken: string[] = [];
  for (const name of names.map(lastName)) {
    const [base, ending] = /\.gpx$/iu.test(name) ? [name.slice(0, -4), name.slice(-4)] : [name, '.gpx'];
    let own = `${base}${ending}`;
    for (let k = 2; taken.includes(own); k++) own = `${base}-${k}${ending}`;
    taken.push(own);
  }
  return taken;
}

function fromGpx(files: readonly NamedFile[], reading: GpxReading): Gathered {
  const { failed, found, findings } = readAll(files, reading);
  if (failed) return refused(findings);
  const names = distinctNames(found.map(({ file }) => file.name));
  return {
    kind: 'starting',
    starting: {
      files: found.map(({ file, content }, k) => ({
        name: names[k]!,
        document: content,
        original: new Blob([file.bytes]),
      })),
      findings,
    },
  };
}

function addTo(waiting: WaitingPlan, sorted: Sorted, reading: GpxReading): Gathered {
  const { failed, files } = gather(waiting.document, waiting.files, sorted, reading);
  return failed ? refused(files.findings) : complete(waiting.document, files, false);
}

const answers = (waiting: WaitingPlan, files: readonly NamedFile[]): boolean =>
  files.some((file) => waiting.missing.some((name) => lastName(name) === lastName(file.name)));

/**
 * What was given, read: a plan with its GPX files, GPX files that a waiting plan asked for, or GPX files by
 * themselves, about which the start sheet asks. Anything that cannot be read refuses the whole, with every reason.
 */
export function gatherFiles(
  files: readonly NamedFile[],
  waiting: WaitingPlan | null,
  reading: GpxReading = readGpx,
): Gathered {
  const sorted = sort(files);
  const strangers = sorted.others.map((file) =>
    trouble(
      'file-kind',
      file.name,
      `Halfcup can open a GPX course, a plan (.json, with its files) or a packed plan (.zip). ${lastName(file.name)} is none of these.`,
    ),
  );
  if (strangers.length > 0) return refused(strangers);
  const [plan, second] = sorted.plans;
  if (plan !== undefined && second !== undefined) {
    return refused([
      trouble(
        'several-plans',
        second.name,
        `These are two plans: ${plan.name} and ${second.name}. Open one at a time.`,
      ),
    ]);
  }
  if (plan !== undefined) return fromPlan(plan, sorted, reading);
  if (waiting !== null && answers(waiting, [...sorted.gpx, ...sorted.drawings, ...sorted.results]))
    return addTo(waiting, sorted, reading);
  if (sorted.gpx.length > 0) return fromGpx(sorted.gpx, reading);
  const [drawing] = sorted.drawings;
  return refused([
    trouble(
      'nothing-to-open',
      drawing?.name ?? sorted.results[0]?.name ?? 'nothing',
      'There is no course and no plan among these files. Add a GPX course or a plan.',
    ),
  ]);
}
