/**
 * From the text of a plan and of the files that it names to findings with their places, in one call: read, lay a variant
 * over, measure, review or lay out. The command line and the examples do it by these.
 */
import { type Analysis, analyse, courseStage, dayStage, groundStage, layoutStage, passStage } from './analyse.ts';
import { type Finding, type Result, bad, good } from './finding.ts';
import type { GpxDocument } from './gpx/document.ts';
import { readGpx } from './gpx/read.ts';
import type { Ground } from './ground/ground.ts';
import { readGround } from './ground/readGround.ts';
import type { Layout } from './layout/layout.ts';
import { filesNamedBy } from './plan/files.ts';
import type { PlanInput } from './plan/input.ts';
import { placeFindings } from './plan/placeFindings.ts';
import type { Plan, PlanDocument } from './plan/plan.ts';
import { readPlan } from './plan/read.ts';
import { withVariant } from './plan/variant.ts';
import { voiceOf } from './plan/voice.ts';
import type { RaceDay } from './raceday/day.ts';
import { inEnglish } from './text/inEnglish.ts';
import { aText, anything, either, mapOf, maybe, recordOf, tableOf, want } from './wants.ts';
import { isPlanDocument } from './plan/shapes.ts';

declare const TextDecoder: new () => { decode(bytes: Uint8Array): string };

/** The content of a file: its text, its bytes (UTF-8), or what `readGpx` has made of a GPX file, `readGround` of a map of the ground. */
export type PlanFile = string | Uint8Array | GpxDocument | Ground;

/** Files by the names that a plan has for them. */
export type PlanFiles = ReadonlyMap<string, PlanFile> | { readonly [name: string]: PlanFile };

/** A plan with all that it is worked out from. */
export interface PlanJob {
  /** The text of its file, its value, or a document that `readPlan` gave. */
  readonly plan: string | PlanInput | PlanDocument;
  /** Those that `filesNamedBy` tells; of one that is missing the findings say so. */
  readonly files?: PlanFiles;
  /** Name of the plan's own file, for findings; absent: `plan.json`. */
  readonly file?: string;
  /** Name of the variant that is laid over; absent: the main plan. */
  readonly variant?: string;
}

/** A plan as it was read, with its analysis, whose findings have their places. */
export interface ReviewedPlan {
  readonly document: PlanDocument;
  readonly analysis: Analysis;
}

/** A plan as it was read, with where everything stands; `day` is `null` where no race has waves. */
export interface LaidPlan {
  readonly document: PlanDocument;
  readonly layout: Layout;
  readonly day: RaceDay | null;
}

const isJob = recordOf<PlanJob>('{ plan, files }', {
  plan: (value) => (isDocument(value as PlanJob['plan']) ? isPlanDocument(value) : null),
  files: maybe(either(mapOf(anything), tableOf(anything))),
  file: maybe(aText),
  variant: maybe(aText),
});

interface ReadJob {
  readonly document: PlanDocument;
  readonly gpx: ReadonlyMap<string, GpxDocument>;
  readonly results: ReadonlyMap<string, string>;
  readonly ground: ReadonlyMap<string, Ground>;
}

/**
 * Reviews a plan: its text and the files that it names in, every finding with file, line and column out, the same in `findings` and in
 * the analysis. Not ok with the reasons where the plan or one of its files cannot be used. Pure; throws a TypeError for a file that is
 * neither text nor bytes nor a read GPX file.
 * @example
 * ```ts
 * import { findingLine, reviewPlan } from '@halfcup/core';
 *
 * const plan = `{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "gpx": "pier.gpx" }], "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "at": [-30.05, 12.3] }] }`;
 * const pier = `<gpx version="1.1" creator="me"><trk><trkseg>
 *   <trkpt lat="12.2" lon="-30.1"/><trkpt lat="12.2" lon="-30.09"/></trkseg></trk></gpx>`;
 * const { ok, findings } = reviewPlan({ plan, files: { 'pier.gpx': pier } });
 * ok; // → true
 * findings.map((finding) => [finding.code, findingLine(finding).slice(0, 14)])[0]; // → ['station-off-course', 'plan.json:3:16']
 * reviewPlan({ plan }).findings.map(({ code }) => code); // → ['gpx-missing']
 * ```
 */
export function reviewPlan(job: PlanJob): Result<ReviewedPlan> {
  want('reviewPlan', 'job', isJob, job);
  const read = readJob(job);
  if (!read.ok) return read;
  const { document, ...sources } = read.value;
  const analysed = analyse(document.plan, sources);
  if (!analysed.ok) return bad([...read.findings, ...placeFindings(analysed.findings, document)]);
  const findings = [...read.findings, ...placeFindings(analysed.value.findings, document)];
  return good({ document, analysis: { ...analysed.value, findings } }, findings);
}

/**
 * Lays a plan out without reviewing it: as `reviewPlan`, less the checks. Findings are those of the courses, the passes and race day.
 * @example
 * ```ts
 * import { layoutPlan } from '@halfcup/core';
 *
 * const result = layoutPlan({
 *   plan: {
 *     format: 'halfcup-plan', version: 1,
 *     courses: [{ id: 'c', line: [[-17.4, -33.2], [-17.36, -33.2]] }],
 *     races: [{ id: 'r', course: 'c' }],
 *     stations: [{ id: 's1', on: { course: 'c', measure: '2 km', side: 'right' } }],
 *   },
 * });
 * const [station] = result.ok ? result.value.layout.stations : [];
 * station?.directions[0]?.items.map(({ kind, along }) => [kind, along[0]])[0]; // → ['sign', -91.44]
 * ```
 */
export function layoutPlan(job: PlanJob): Result<LaidPlan> {
  want('layoutPlan', 'job', isJob, job);
  const read = readJob(job);
  if (!read.ok) return read;
  const { document, ...sources } = read.value;
  const laid = laidOut(document.plan, sources);
  const spoken = placeFindings(inEnglish(laid.findings, voiceOf(document.plan)), document);
  const findings = [...read.findings, ...spoken];
  return laid.ok ? good({ document, ...laid.value }, findings) : bad(findings);
}

function laidOut(plan: Plan, sources: Omit<ReadJob, 'document'>): Result<Pick<LaidPlan, 'layout' | 'day'>> {
  const courses = courseStage(plan, sources);
  if (!courses.ok) return courses;
  const seen = passStage(plan, courses.value);
  if (!seen.ok) return bad([...courses.findings, ...seen.findings]);
  const day = dayStage(plan, courses.value, seen.value, sources.results);
  const layout = layoutStage(plan, courses.value, day, groundStage(plan, courses.value, sources));
  const findings = [...courses.findings, ...layout.findings, ...(day?.findings ?? [])];
  return layout.ok ? good({ layout: layout.value, day }, findings) : bad(findings);
}

/** The document, the variant laid over, and what its files hold; findings with their places. */
function readJob({ plan, files = {}, file, variant }: PlanJob): Result<ReadJob> {
  const read = isDocument(plan) ? good(plan) : readPlan(plan, file);
  const chosen = read.ok && variant !== undefined ? withVariant(read.value, variant) : read;
  if (!chosen.ok) return chosen;
  const document = chosen.value;
  const contentOf = (name: string): PlanFile | undefined =>
    isMap(files) ? files.get(name) : Object.hasOwn(files, name) ? files[name] : undefined;
  const named = filesNamedBy(document.plan);
  const lines = gpxFiles(named.gpx, contentOf);
  if (!lines.ok) return bad([...read.findings, ...lines.findings]);
  const results = new Map<string, string>();
  for (const name of named.results) {
    const text = textOf(contentOf(name));
    if (text !== undefined) results.set(name, text);
  }
  const maps = groundFiles(named.ground, contentOf);
  const findings = [...read.findings, ...lines.findings, ...maps.findings];
  return good({ document, gpx: lines.value, results, ground: maps.ground }, findings);
}

const isDocument = (plan: PlanJob['plan']): plan is PlanDocument =>
  typeof plan === 'object' && plan !== null && 'placeOf' in plan && typeof plan.placeOf === 'function';

/** A map of another window or thread is a map too, so no `instanceof`. */
const isMap = (files: PlanFiles): files is ReadonlyMap<string, PlanFile> => typeof files.get === 'function';

/** Every file is read, so that all are told of that cannot be. */
function gpxFiles(
  names: readonly string[],
  contentOf: (name: string) => PlanFile | undefined,
): Result<ReadonlyMap<string, GpxDocument>> {
  const read = names.flatMap((name): [string, Result<GpxDocument>][] => {
    const content = contentOf(name);
    if (content === undefined) return [];
    return [[name, isRead(content) ? good(content) : readGpx(content as string | Uint8Array, name)]];
  });
  const findings: readonly Finding[] = read.flatMap(([, result]) => result.findings);
  const documents = read.flatMap(([name, result]) => (result.ok ? [[name, result.value] as const] : []));
  return documents.length === read.length ? good(new Map(documents), findings) : bad(findings);
}

/** One that cannot be read is left out, with the reasons: the rest of the job goes on without. */
function groundFiles(
  names: readonly string[],
  contentOf: (name: string) => PlanFile | undefined,
): { readonly ground: ReadonlyMap<string, Ground>; readonly findings: readonly Finding[] } {
  const read = names.flatMap((name): [string, Result<Ground>][] => {
    const content = contentOf(name);
    if (content !== undefined && isMapOfGround(content)) return [[name, good(content)]];
    const text = textOf(content);
    return text === undefined ? [] : [[name, readGround(text, name)]];
  });
  return {
    ground: new Map(read.flatMap(([name, result]) => (result.ok ? [[name, result.value] as const] : []))),
    findings: read.flatMap(([, result]) => result.findings),
  };
}

const isMapOfGround = (content: PlanFile): content is Ground => typeof content === 'object' && 'ways' in content;

const isRead = (content: PlanFile): content is GpxDocument => typeof content === 'object' && 'tracks' in content;

function textOf(content: PlanFile | undefined): string | undefined {
  if (content === undefined || isRead(content) || isMapOfGround(content)) return undefined;
  return typeof content === 'string' ? content : new TextDecoder().decode(content);
}
