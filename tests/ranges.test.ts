/**
 * Plans whose numbers lie anywhere in their ranges, most of them at the ends, through every stage, document, text and paper:
 * an answer or findings, finite numbers, no word of the program's inside, no number with an exponent, and a bounded length.
 * The numbers are those of the published schema, so that a new key is among them by itself.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { analyse } from '../packages/core/src/analyse.ts';
import { toCalendar } from '../packages/core/src/export/calendar.ts';
import { compareDocument } from '../packages/core/src/export/compareDocument.ts';
import { toCsv } from '../packages/core/src/export/csv.ts';
import { layoutDocument } from '../packages/core/src/export/documents.ts';
import { toGeoJson } from '../packages/core/src/export/geojson.ts';
import { leftoversCsv } from '../packages/core/src/export/leftoversCsv.ts';
import { raceDayDocument } from '../packages/core/src/export/raceDayDocument.ts';
import { reviewDocument } from '../packages/core/src/export/reviewDocument.ts';
import { toGpx } from '../packages/core/src/export/waypoints.ts';
import { crewCsv, orderCsv } from '../packages/core/src/export/yearCsv.ts';
import type { Finding } from '../packages/core/src/finding.ts';
import { readGpx } from '../packages/core/src/gpx/read.ts';
import { compareAnalyses } from '../packages/core/src/improve/compare.ts';
import { indexPaper, papersOf } from '../packages/core/src/papers/papers.ts';
import { reportHtml } from '../packages/core/src/papers/report.ts';
import { placeFindings } from '../packages/core/src/plan/placeFindings.ts';
import { readPlan } from '../packages/core/src/plan/read.ts';
import { withVariant } from '../packages/core/src/plan/variant.ts';
import { planLeaves, pick, put, type Random, randomBelow } from '../packages/core/src/testing/planNumbers.ts';
import { tries } from '../packages/core/src/testing/tries.ts';
import { planView } from '../packages/core/cli/findings.ts';
import { PAPER } from '../packages/core/cli/screen.ts';
import { layoutText } from '../packages/core/cli/text/layout.ts';
import { raceDayText } from '../packages/core/cli/text/raceday.ts';
import { reviewText } from '../packages/core/cli/text/review.ts';
import { halfcupIn } from './support/halfcup.ts';
import { GPX, RANGES_PLAN, RESULTS } from './support/rangesPlan.ts';

const SEED = 20_271_231;
const leaves = planLeaves();
const course = readGpx(GPX, 'point.gpx');
if (!course.ok) throw new Error('the GPX file of the plan cannot be read');
const sources = { gpx: new Map([['point.gpx', course.value]]), results: new Map([['results.csv', RESULTS]]) };

/** No number where one should be, the program's own words, or a number with an exponent. */
const INSIDE = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object|(?<![\w-])\d+(?:\.\d+)?e[+-]\d/u;
/** Characters of all that is made of one plan; the plan itself makes a tenth of it. */
const MOST = 12_000_000;

const said = { refused: 0, laid: 0, days: 0, most: 0 };

/** One to four numbers of the plan changed; most of them of rules, since odd places alone make a plan that cannot be laid. */
function changed(random: Random): { readonly text: string; readonly keys: readonly string[] } {
  const plan: unknown = structuredClone(RANGES_PLAN);
  const keys: string[] = [];
  for (let times = 1 + random(4); times > 0; times--) {
    const leaf = pick(random, leaves);
    if (/(?:at|polygon\[\]|line\[\])\[\d\]$/u.test(leaf.name) && random(4) > 0) continue;
    put(plan, leaf, random);
    keys.push(leaf.name);
  }
  if (random(3) === 0) (plan as { units: string }).units = 'imperial';
  if (random(4) === 0) (plan as { language?: string }).language = 'es';
  return { text: JSON.stringify(plan, null, 1), keys };
}

function expectWords(what: string, text: string): number {
  const found = INSIDE.exec(text);
  if (found !== null)
    throw new Error(`${what} has ${JSON.stringify(text.slice(Math.max(found.index - 80, 0), found.index + 40))}`);
  return text.length;
}

/** JSON turns what is no number into null, so the values themselves are looked at. */
function expectNumbers(what: string, value: unknown): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${what} holds ${value}`);
  } else if (typeof value === 'string') expectWords(what, value);
  else if (typeof value === 'object' && value !== null)
    for (const [key, one] of Object.entries(value)) {
      if (one === undefined) throw new Error(`${what} holds undefined at ${key}`);
      expectNumbers(`${what}.${key}`, one);
    }
}

function expectDocument(what: string, value: unknown): number {
  expectNumbers(what, value);
  return JSON.stringify(value).length;
}

const expectFindings = (findings: readonly Finding[]): void =>
  findings.forEach((finding) =>
    expectNumbers(finding.code, [finding.message, finding.measured ?? 0, finding.limit ?? 0]),
  );

/** Everything that is made of a plan; gives its length. */
function made(text: string): number {
  const read = readPlan(text, 'plan.json');
  expectFindings(read.findings);
  const result = read.ok ? analyse(read.value.plan, sources) : read;
  if (!read.ok || !result.ok) {
    expectFindings(result.findings);
    expect(result.findings.some(({ severity }) => severity === 'error')).toBe(true);
    said.refused++;
    return 0;
  }
  said.laid++;
  const findings = placeFindings(result.findings, read.value);
  const analysis = { ...result.value, findings };
  expectFindings(findings);
  const { plan, day } = analysis;
  const view = planView(PAPER, plan.units, plan);
  const review = reviewDocument(analysis, { sha256: '0'.repeat(64), inputs: [] });
  const options = { paper: 'a4', printedAt: '2027-09-01 10:00', review } as const;
  const papers = papersOf(analysis, options);
  const texts: (readonly [string, string])[] = [
    ...[indexPaper(analysis, papers, options), ...papers].map(({ name, html }) => [name, html] as const),
    ['report', reportHtml({ analysis, review, made: '2027-09-01' })],
    ['csv', toCsv(analysis)],
    ['layout as text', layoutText(analysis, view)],
    ['review as text', reviewText(analysis, review, { screen: PAPER, units: plan.units, all: true })],
    ...[toGpx(analysis), toCalendar(analysis, 0)].flatMap((one) => {
      expectFindings(one.findings);
      return one.ok ? [['GPX or calendar', one.value] as const] : [];
    }),
  ];
  const documents: (readonly [string, unknown])[] = [
    ['layout', layoutDocument(analysis, findings)],
    ['GeoJSON', toGeoJson(analysis)],
    ['review', review],
  ];
  if (day !== null) {
    said.days++;
    texts.push(
      ['order', orderCsv(plan, day)],
      ['crew', crewCsv(plan, day)],
      ['leftovers', leftoversCsv(plan, day.stations)],
      ['race day as text', raceDayText(analysis, day, findings, view)],
    );
    documents.push(['race day', raceDayDocument(analysis, day, findings)]);
  }
  const other = withVariant(read.value, 'north');
  const varied = other.ok ? analyse(other.value.plan, sources) : other;
  expectFindings(varied.findings);
  if (varied.ok && 'courses' in varied.value && 'stations' in varied.value)
    documents.push(['comparison', compareDocument(compareAnalyses(['a', 'b'], analysis, varied.value))]);
  return (
    texts.reduce((sum, [what, one]) => sum + expectWords(what, one), 0) +
    documents.reduce((sum, [what, one]) => sum + expectDocument(what, one), 0)
  );
}

/** Seconds of processor time: a guard against hanging, whatever else the machine does. */
const HANG = 20;

/** What goes wrong with a plan, if anything does. */
function fault(text: string): string | null {
  const before = process.cpuUsage();
  try {
    const length = made(text);
    said.most = Math.max(said.most, length);
    if (length > MOST) return `made ${length} characters`;
  } catch (error) {
    return error instanceof Error
      ? `${error.message}${error.stack?.split('\n').slice(1, 4).join('') ?? ''}`
      : String(error);
  }
  const took = process.cpuUsage(before).user / 1e6;
  return took > HANG ? `took ${took} s` : null;
}

describe('plans whose numbers lie anywhere in their ranges', () => {
  it('give finite numbers, plain words and a bounded output, or findings', () => {
    const numRuns = tries(2000, 5);
    const random = randomBelow(SEED);
    expect(leaves.length).toBeGreaterThan(280);
    const failures: string[] = [];
    for (let number = 0; number < numRuns && failures.length < 20; number++) {
      const { text, keys } = changed(random);
      const wrong = fault(text);
      if (wrong !== null) failures.push(`case ${number} (${keys.join(', ')}): ${wrong}`);
    }
    if (process.env['TRIES'] !== undefined) console.log(JSON.stringify(said));
    expect(failures).toEqual([]);
    // Were all refused, or none, only half of the job would have been tried.
    expect(said.laid).toBeGreaterThan(numRuns / 3);
    expect(said.days).toBeGreaterThan(numRuns / 3);
    expect(said.refused).toBeGreaterThan(numRuns / 50);
  });

  it('end with 0, 1 or 2 at the command line', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'halfcup-ranges-'));
    const random = randomBelow(SEED + 1);
    writeFileSync(join(folder, 'point.gpx'), GPX);
    writeFileSync(join(folder, 'results.csv'), RESULTS);
    try {
      for (let number = 0; number < tries(2000, 5) / 20; number++) {
        const { text, keys } = changed(random);
        writeFileSync(join(folder, 'plan.json'), text);
        for (const call of [
          ['review', 'plan.json', '--json', '--report', 'report.html', '--force'],
          ['layout', 'plan.json', '--units', 'imperial'],
          ['raceday', 'plan.json', '--learn'],
          ['sheets', 'plan.json', '--out', 'papers', '--force'],
          ['compare', 'plan.json', 'north'],
          ['improve', 'plan.json', '--only', 's1', '--within', '50m'],
        ]) {
          const { exit, out, err } = await halfcupIn(folder, ...call);
          expect([0, 1, 2], `${keys.join(', ')}: ${call.join(' ')}: ${err}`).toContain(exit);
          expectWords(`${keys.join(', ')}: ${call.join(' ')}`, out + err);
        }
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
