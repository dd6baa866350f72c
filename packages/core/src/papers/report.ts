/**
 * The safety review as a document for an authority, one HTML page without scripts, to be printed and signed: a pure function of
 * an analysis and its review document. Every text of the plan goes through one escaping function.
 */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import { type ReviewCounts, type ReviewDocument, isReviewDocument } from '../export/reviewDocument.ts';
import { voiceOf } from '../plan/voice.ts';
import { isAnalysis } from '../review/shapes.ts';
import { en } from '../text/en.ts';
import { findingInWords } from '../text/inWords.ts';
import { textOf } from '../text/languages.ts';
import { MADE_BY } from '../version.ts';
import { type Shape, aText, maybe, oneOf, recordOf, want } from '../wants.ts';
import { isContext } from './frame.ts';
import type { Paper } from './frameStyle.ts';
import { documentHtml, html } from './html.ts';
import { coverSection, mapSection, signatures } from './reportCover.ts';
import { courseSection, fileSection, notRunSection, passedSection, practiceSection } from './reportFacts.ts';
import { placedSection, planFindings } from './reportFindings.ts';
import { besideStations, stationSheets, stationTable } from './reportStations.ts';
import { reportBox, reportStyle } from './reportStyle.ts';
import type { Spoken } from './spoken.ts';

/** What the reviewer's report is made of. */
export interface ReportInput {
  /** Its findings have their places in the plan. */
  readonly analysis: Analysis;
  readonly review: ReviewDocument;
  /** The day on which it is made, ISO 8601; the caller knows the clock. */
  readonly made: string;
  /** BCP 47; the plan's own where absent. */
  readonly language?: string;
  /** What it is printed on; A4 where absent. */
  readonly paper?: Paper;
  /** Roads and paths for its maps, degrees: the plan's own context. */
  readonly context?: FeatureCollection;
}

const isInput: Shape = recordOf<ReportInput>('{ analysis, review, made }', {
  analysis: isAnalysis,
  review: isReviewDocument,
  made: aText,
  language: maybe(aText),
  paper: maybe(oneOf('a4', 'letter')),
  context: isContext,
});

/**
 * The safety review as one HTML page to be printed and signed, in the plan's units and in the language asked for, else
 * the plan's own. First what an authority asks: what, where, when, the verdict, who signs, a map; then all stations in a table and each
 * of which there is something to say with its picture; what could not be checked; an annex, with the hashes of all files last.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { placeFindings } from '@halfcup/core/plan';
 * import { reviewDocument } from '@halfcup/core/schemas';
 * import { reportHtml } from '@halfcup/core/papers';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const analysis = { ...result.value, findings: placeFindings(result.value.findings, read.value) };
 * const review = reviewDocument(analysis, { sha256: '0'.repeat(64), inputs: [] });
 * reportHtml({ analysis, review, made: '2027-09-01' }).includes('Signatures'); // → true
 * ```
 */
export function reportHtml(input: ReportInput): string {
  want('reportHtml', 'input', isInput, input);
  const { analysis, review, made, language, paper = 'a4', context } = input;
  const { plan, checks } = analysis;
  const { text } = textOf(language ?? plan.language);
  const words = text.report;
  const spoken: Spoken = { text, voice: voiceOf(plan, { language: text.language }) };
  const findings = analysis.findings.map((finding) => findingInWords(finding, spoken.voice));
  const box = reportBox(paper);
  const mark = review.plan.sha256.replaceAll(/[^0-9a-f]/gu, '').slice(0, 12);
  const map = mapSection(analysis, spoken, box.map, box.map, context);
  const body = html`${coverSection({ analysis, review, made }, findings, spoken, map)}
${signatures(text)}
${stationTable(analysis, findings, spoken)}
${planFindings(besideStations(analysis, findings), spoken)}
${stationSheets(analysis, findings, spoken, box.width, context)}
${placedSection(review, findings, spoken)}
${notRunSection(checks, spoken)}
${courseSection(analysis, spoken)}
${practiceSection(plan, spoken)}
${passedSection(checks, spoken)}
${fileSection(review, words)}`;
  const name = plan.name === '' ? words.noName : plan.name;
  const style = reportStyle(paper, mark, MADE_BY, words);
  return documentHtml({ lang: text.language, title: words.documentTitle(name), style, body });
}

/** What the review comes to, in one line: counts, and what was not decided beside them. */
export const resultText = (counts: ReviewCounts): string => en.report.result(counts);
