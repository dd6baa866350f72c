/** The named cases in `fixtures/`: read, analysed as the command line does, and rounded so that a picture of them is stable. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { FeatureCollection, Geometry } from 'geojson';
import { type Finding, analyse } from '@halfcup/core';
import { readGpx } from '@halfcup/core/gpx';
import { type LayoutDocument, layoutDocument } from '../../packages/core/src/export/documents.ts';
import { toGeoJson } from '../../packages/core/src/export/geojson.ts';
import type { Result } from '../../packages/core/src/finding.ts';
import { placeFindings } from '../../packages/core/src/plan/placeFindings.ts';
import { readPlan } from '../../packages/core/src/plan/read.ts';
import { ROOT } from './build.ts';
import type { Position } from './courses.ts';

export const FIXTURES: string = join(ROOT, 'fixtures');

/** The folders that are cases: those with a plan. */
export const CASES: readonly string[] = readdirSync(FIXTURES)
  .filter((name) => existsSync(join(FIXTURES, name, 'plan.json')))
  .sort();

/** A plan's text and the texts of its GPX files, by file name. */
export interface Source {
  readonly plan: string;
  readonly gpx: Readonly<Record<string, string>>;
}

export interface Analysed {
  readonly layout: LayoutDocument;
  readonly geojson: FeatureCollection<Geometry | null>;
}

export const inFixture = (name: string, file: string): string => readFileSync(join(FIXTURES, name, file), 'utf8');

export function sourceOf(name: string): Source {
  const files = readdirSync(join(FIXTURES, name)).filter((file) => file.endsWith('.gpx'));
  return {
    plan: inFixture(name, 'plan.json'),
    gpx: Object.fromEntries(files.map((file) => [file, inFixture(name, file)])),
  };
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.findings.map(({ message }) => message).join('\n'));
  return result.value;
}

/** The whole job; throws where a file or the plan cannot be used, which in a named case they all can. */
export function analysed({ plan, gpx }: Source): Analysed {
  const document = must(readPlan(plan, 'plan.json'));
  const sources = new Map(Object.entries(gpx).map(([file, text]) => [file, must(readGpx(text, file))]));
  const analysis = must(analyse(document.plan, { gpx: sources }));
  return { layout: layoutDocument(analysis, placeFindings(analysis.findings, document)), geojson: toGeoJson(analysis) };
}

/** Keys whose numbers are degrees of longitude and latitude. */
const DEGREES = new Set(['at', 'foot', 'coordinates', 'bbox']);

/** Lengths and angles to 3 decimals (1 mm), positions to 7 (1 cm). */
export function rounded(value: unknown, decimals: number = 3): unknown {
  if (typeof value === 'number') return Number(value.toFixed(decimals)) + 0;
  if (Array.isArray(value)) return value.map((one) => rounded(one, decimals));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, rounded(one, DEGREES.has(key) ? 7 : decimals)]),
  );
}

/** JSON that breaks lines only where a value is long, so that a change shows in a line of its own. */
export function jsonText(value: unknown, indent: string = ''): string {
  const flat = JSON.stringify(value);
  if (typeof value !== 'object' || value === null || indent.length + flat.length <= 140) return flat;
  const inner = `${indent}  `;
  const rows = Array.isArray(value)
    ? value.map((one) => inner + jsonText(one, inner))
    : Object.entries(value).map(([key, one]) => `${inner}${JSON.stringify(key)}: ${jsonText(one, inner)}`);
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${rows.join(',\n')}\n${indent}${close}`;
}

/** Whether what is expected is to be written anew; never by the machine that checks it. */
export function updating({ UPDATE, CI }: Readonly<Record<string, string | undefined>>): boolean {
  if (UPDATE !== '1') return false;
  if (CI !== undefined && CI !== '' && CI !== 'false')
    throw new Error(
      'UPDATE=1 writes what is expected anew, which CI must not: it would check nothing. Update on your own machine and look at the difference.',
    );
  return true;
}

/** Points of a fixture's track by a pattern, so that no reader under test is trusted. */
export const pointsOf = (name: string, file: string = 'course.gpx'): Position[] =>
  [...inFixture(name, file).matchAll(/<trkpt lat="([^"]+)" lon="([^"]+)"\/>/gu)].map(([, lat, lon]) => [
    Number(lon),
    Number(lat),
  ]);

export const codesOf = (findings: readonly Finding[]): string[] => findings.map(({ code }) => code);
