/**
 * Broken files taken through the whole job: bytes of a GPX file to a first plan, its analysis and every document;
 * a plan's text to its analysis and documents. Each answers with a result or with findings in words; none throws,
 * hangs, or prints what is no number. Seeds are fixed. Readers alone are fuzzed beside their sources.
 */
import { describe, expect, it } from 'vitest';
import { type Finding, analyse, findingLine } from '@halfcup/core';
import { type GpxDocument } from '@halfcup/core/stages';
import { readGpx } from '@halfcup/core/gpx';
import { buildCourse } from '../packages/core/src/course/build.ts';
import { nearestOn, passesOf } from '../packages/core/src/course/passes.ts';
import { indexCourse } from '../packages/core/src/course/segmentIndex.ts';
import { courseDocument, layoutDocument, snapDocument } from '../packages/core/src/export/documents.ts';
import { toGeoJson } from '../packages/core/src/export/geojson.ts';
import { chooseLine } from '../packages/core/src/gpx/chooseLine.ts';
import { placeFindings } from '../packages/core/src/plan/placeFindings.ts';
import type { PlanDocument } from '../packages/core/src/plan/plan.ts';
import { readPlan } from '../packages/core/src/plan/read.ts';
import { startPlan } from '../packages/core/src/plan/start.ts';
import { sourceOf } from './support/fixtures.ts';
import { PLAN, type Random, brokenGpx, brokenPlan, pick, randomOf } from './support/mutations.ts';

const SEED = 20_261_125;
/** A guard against hanging: no answer takes longer, in milliseconds of processor time, whatever else the machine does. */
const HANG = 3000;

/** No number where one should be, in what is printed. */
const NO_NUMBER = /\b(NaN|Infinity|undefined)\b|\[object/u;

const said = { findings: 0, results: 0 };

function expectFindings(findings: readonly Finding[]): void {
  for (const finding of findings) {
    // What is quoted is the file's own.
    expect(findingLine(finding).replaceAll(/"(?:[^"\\]|\\.)*"|“[^”]*”/gu, '')).not.toMatch(NO_NUMBER);
    expect(finding.message.length).toBeGreaterThan(10);
    for (const value of [
      finding.measured,
      finding.where.measure,
      ...[finding.limit ?? 0].flat(),
      ...(finding.where.at ?? []),
    ]) {
      if (value !== undefined) expect(Number.isFinite(value)).toBe(true);
    }
  }
}

function expectRefused(findings: readonly Finding[]): void {
  expectFindings(findings);
  expect(findings.some(({ severity }) => severity === 'error')).toBe(true);
  said.findings++;
}

/** JSON turns what is no number into null, so the values themselves are looked at. */
function expectNumbers(value: unknown): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`a document holds ${value}`);
  } else if (Array.isArray(value)) value.forEach(expectNumbers);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, one] of Object.entries(value)) {
      if (one === undefined) throw new Error(`a document holds undefined at "${key}"`);
      expectNumbers(one);
    }
  }
}

function laidOut(document: PlanDocument, gpx: ReadonlyMap<string, GpxDocument>): void {
  const analysis = analyse(document.plan, { gpx });
  const findings = placeFindings(analysis.ok ? analysis.value.findings : analysis.findings, document);
  if (!analysis.ok) return expectRefused(findings);
  expectFindings(findings);
  expectNumbers(layoutDocument(analysis.value, findings));
  expectNumbers(toGeoJson(analysis.value));
  said.results++;
}

function courseFacts(document: GpxDocument, random: Random): void {
  const line = chooseLine(document, undefined, { file: 'course.gpx' });
  if (!line.ok) return expectRefused(line.findings);
  const built = buildCourse({
    id: 'c',
    name: 'c',
    segments: line.value.segments,
    gaps: pick(random, ['refuse', 'join', 'skip'] as const),
    reverse: random(2) === 0,
  });
  if (!built.ok) return expectRefused(built.findings);
  const indexed = indexCourse(built.value);
  expectNumbers(courseDocument(built.value, built.findings));
  const points = document.waypoints.map(({ lon, lat, name }) => ({
    at: [lon, lat] as const,
    name,
    passes: passesOf(indexed, [lon, lat]),
    nearest: nearestOn(indexed, [lon, lat]),
  }));
  expectNumbers(snapDocument(points));
}

/** Bytes to facts, to a first plan, to its analysis. */
function wholeJob(bytes: Uint8Array, random: Random): void {
  const read = readGpx(bytes, 'course.gpx');
  if (!read.ok) return expectRefused(read.findings);
  expectFindings(read.findings);
  courseFacts(read.value, random);
  const places = random(2) === 0 ? { every: 100 + random(900) } : {};
  const start = startPlan(read.value, {
    name: 'fuzz',
    gpx: 'course.gpx',
    gaps: pick(random, ['refuse', 'join', 'skip'] as const),
    side: pick(random, ['left', 'alternate'] as const),
    ...places,
  });
  if (!start.ok) return expectRefused(start.findings);
  expectFindings(start.findings);
  const plan = readPlan(start.value, 'plan.json');
  // A first plan is always a good one.
  expect(plan.findings).toEqual([]);
  if (plan.ok) laidOut(plan.value, new Map([['course.gpx', read.value]]));
}

/** One case, with its number where it fails; over the limit it has hung. */
function timed(number: number, job: () => void): void {
  const before = process.cpuUsage();
  try {
    job();
  } catch (error) {
    throw new Error(`case ${number}: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
  }
  const took = process.cpuUsage(before).user / 1000;
  if (took > HANG) throw new Error(`case ${number} took ${took.toFixed(0)} ms, expected at most ${HANG}`);
}

const source = sourceOf('half-joins');
const files = new Map(
  Object.entries(source.gpx).flatMap(([file, text]) => {
    const read = readGpx(text, file);
    return read.ok ? [[file, read.value] as const] : [];
  }),
);
/** As many as a person waits for while writing; more where continuous integration has the time. */
const [FILES, PLANS] = process.env['CI'] === undefined ? [500, 300] : [2000, 1000];

describe('the whole job', () => {
  it('answers each of many broken GPX files with a result or with findings', () => {
    const random = randomOf(SEED);
    Object.assign(said, { findings: 0, results: 0 });
    for (let number = 0; number < FILES; number++) {
      const bytes = brokenGpx(random);
      timed(number, () => wholeJob(bytes, random));
    }
    // Were all refused, or none, only half of the job would have been tried.
    expect(said.results).toBeGreaterThan(FILES / 10);
    expect(said.findings).toBeGreaterThan(FILES / 10);
  });

  it('lays the unbroken plan out', () => {
    const read = readPlan(PLAN, 'plan.json');
    expect(read.findings).toEqual([]);
    expect(files.size).toBe(2);
    Object.assign(said, { findings: 0, results: 0 });
    if (read.ok) laidOut(read.value, files);
    expect(said).toEqual({ findings: 0, results: 1 });
  });

  it('answers each of many broken plans with a result or with findings', () => {
    const random = randomOf(SEED);
    Object.assign(said, { findings: 0, results: 0 });
    for (let number = 0; number < PLANS; number++) {
      const text = brokenPlan(random);
      timed(number, () => {
        const read = readPlan(text, 'plan.json');
        if (read.ok) laidOut(read.value, files);
        else expectRefused(read.findings);
      });
    }
    expect(said.results).toBeGreaterThan(PLANS / 10);
    expect(said.findings).toBeGreaterThan(PLANS / 10);
  });
});
