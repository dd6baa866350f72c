/**
 * From files that a person dropped or chose to a plan with all that it names, one that waits for more
 * files, or the reasons why not. Reads; computes nothing, and changes nothing.
 */
import { filesNamedBy, readPlan, type Finding, type PlanDocument, type Result } from '@halfcup/core';
import { type GpxDocument } from '@halfcup/core/stages';
import { readGpx } from '@halfcup/core/gpx';
import { type Ground, readGround } from '@halfcup/core/ground';
import { textFrom } from '@halfcup/core/plan';
import { readDrawing, type Drawing } from './drawing.ts';
import { lastName, sort, type NamedFile, type Sorted } from './fileKinds.ts';
import { matched, type Found, type Unclear } from './matching.ts';
import type { PlanFiles } from '../store/planFiles.ts';
import type { Starting, UnclearFile, WaitingPlan } from '../store/store.ts';

/** `started`: the plan was begun here, from a course without one, and is in no file yet. */
export type Gathered =
  | { readonly kind: 'ready'; readonly document: PlanDocument; readonly files: PlanFiles; readonly started: boolean }
  | { readonly kind: 'waiting'; readonly plan: WaitingPlan }
  /** Courses without a plan. */
  | { readonly kind: 'starting'; readonly starting: Starting }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] };

/** Reads one GPX file; a worker has one that tells how far it is. */
export type GpxReading = (bytes: Uint8Array, name: string) => Result<GpxDocument>;

const refused = (findings: readonly Finding[]): Gathered => ({ kind: 'refused', findings });
const trouble = (code: string, file: string, message: string): Finding => ({
  code,
  severity: 'error',
  message,
  where: { file },
});

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

const contents = <T>(found: ReadonlyMap<string, Found<T>>): [string, T][] =>
  [...found].map(([name, { content }]) => [name, content]);
const blobs = (found: ReadonlyMap<string, Found<unknown>>): [string, Blob][] =>
  [...found].map(([name, { file }]) => [name, new Blob([file.bytes])]);

/** Files that came along and that nothing in the plan uses: reported, so that a misspelt name is seen. */
const unused = (
  document: PlanDocument,
  used: readonly Found<GpxDocument>[],
  found: readonly Found<GpxDocument>[],
): Finding[] =>
  found
    .filter((one) => !used.includes(one))
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

function groundOf({ bytes, name }: NamedFile): Result<Ground> {
  const text = textFrom(bytes, name);
  return text.ok ? readGround(text.value, name) : text;
}

/** A drawing that is no text is left out like one that is no drawing. */
function drawingOf({ bytes, name }: NamedFile): Drawing {
  const text = textFrom(bytes, name);
  if (text.ok) return readDrawing(text.value, name);
  return { context: null, findings: text.findings.map((one) => ({ ...one, severity: 'warning' as const })) };
}

interface Gathering {
  readonly failed: boolean;
  readonly files: PlanFiles;
  readonly unclear: readonly UnclearFile[];
}

const asked = (unclear: readonly Unclear<unknown>[]): UnclearFile[] =>
  unclear.map(({ one: { file }, names }) => ({ name: file.name, blob: new Blob([file.bytes]), names }));

/** Those that the plan names and has not, or where nothing is missing all. */
const wantedOf = (names: readonly string[], have: ReadonlyMap<string, unknown>): readonly string[] => {
  const missing = names.filter((name) => !have.has(name));
  return missing.length > 0 ? missing : names;
};

/** Files for a plan added to those it has; `failed` where one of them cannot be read. */
function gather(document: PlanDocument, have: PlanFiles, sorted: Sorted, read: GpxReading): Gathering {
  const gpx = readAll(sorted.gpx, read);
  const texts = sorted.results.map((file) => ({ file, text: textFrom(file.bytes, file.name) }));
  const named = filesNamedBy(document.plan);
  const courses = matched(wantedOf(named.gpx, have.gpx), gpx.found);
  const results = matched(
    wantedOf(named.results, have.results),
    texts.flatMap(({ file, text }) => (text.ok ? [{ file, content: text.value }] : [])),
  );
  const maps = matched(
    named.ground,
    sorted.drawings.map((file) => ({ file, content: null })),
  );
  const grounds = [...maps.sure].map(([name, { file }]) => ({ name, read: groundOf(file) }));
  const drawings = drawingFor(
    document,
    sorted.drawings.filter((drawing) => ![...maps.sure.values()].some(({ file }) => file === drawing)),
  );
  const [drawing] = drawings.values();
  const drawn = drawing === undefined ? { context: have.context, findings: [] } : drawingOf(drawing.file);
  const failed = gpx.failed || texts.some(({ text }) => !text.ok);
  const used = [...courses.sure.values(), ...courses.unclear.map(({ one }) => one)];
  const findings = [
    ...have.findings,
    ...gpx.findings,
    ...texts.flatMap(({ text }) => text.findings),
    ...grounds.flatMap(({ read }) => read.findings),
    ...drawn.findings,
    ...(failed ? [] : unused(document, used, gpx.found)),
  ];
  const files: PlanFiles = {
    gpx: new Map([...have.gpx, ...contents(courses.sure)]),
    results: new Map([...have.results, ...contents(results.sure)]),
    ground: new Map([
      ...have.ground,
      ...grounds.flatMap(({ name, read: one }) => (one.ok ? [[name, one.value] as const] : [])),
    ]),
    context: drawn.context,
    findings,
    originals: new Map([
      ...have.originals,
      ...blobs(courses.sure),
      ...blobs(results.sure),
      ...blobs(maps.sure),
      ...blobs(drawings),
    ]),
  };
  return { failed, files, unclear: asked([...courses.unclear, ...results.unclear]) };
}

/** Ready where nothing that it names is missing. */
function complete(document: PlanDocument, { files, unclear }: Gathering): Gathered {
  const named = filesNamedBy(document.plan);
  const missing = [
    ...named.gpx.filter((name) => !files.gpx.has(name)),
    ...named.results.filter((name) => !files.results.has(name)),
  ];
  return missing.length > 0
    ? { kind: 'waiting', plan: { document, files, missing, unclear } }
    : { kind: 'ready', document, files, started: false };
}

function fromPlan(plan: NamedFile, sorted: Sorted, reading: GpxReading): Gathered {
  const text = textFrom(plan.bytes, plan.name);
  const read = text.ok ? readPlan(text.value, plan.name) : text;
  if (!read.ok) return refused([...read.findings, ...readAll(sorted.gpx, reading).findings]);
  const gathered = gather(read.value, NO_FILES, sorted, reading);
  const findings = [...read.findings, ...gathered.files.findings];
  if (gathered.failed) return refused(findings);
  return complete(read.value, { ...gathered, files: { ...gathered.files, findings } });
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
  const gathered = gather(waiting.document, waiting.files, sorted, reading);
  return gathered.failed ? refused(gathered.files.findings) : complete(waiting.document, gathered);
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

/** With what was found before the files were read: of the archive that they came in. */
export function withFindings(gathered: Gathered, before: readonly Finding[]): Gathered {
  const added = <T extends { readonly findings: readonly Finding[] }>(one: T): T => ({
    ...one,
    findings: [...before, ...one.findings],
  });
  if (before.length === 0) return gathered;
  if (gathered.kind === 'refused') return added(gathered);
  if (gathered.kind === 'starting') return { ...gathered, starting: added(gathered.starting) };
  if (gathered.kind === 'waiting')
    return { ...gathered, plan: { ...gathered.plan, files: added(gathered.plan.files) } };
  return { ...gathered, files: added(gathered.files) };
}
