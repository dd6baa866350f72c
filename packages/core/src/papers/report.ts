/**
 * The safety review as one HTML page without scripts, to be printed and signed: a pure function of an
 * analysis and its review document. Every text of the plan goes through one escaping function.
 */
import type { Analysis } from '../analyse.ts';
import { MADE_BY } from '../version.ts';
import { type ReviewCounts, type ReviewDocument, isReviewDocument } from '../export/reviewDocument.ts';
import { voiceOf } from '../plan/voice.ts';
import { en } from '../text/en.ts';
import { findingInWords } from '../text/inWords.ts';
import { textOf } from '../text/languages.ts';
import type { SheetText } from '../text/sheetText.ts';
import { dateText } from './frame.ts';
import { type Html, html, said, table, documentHtml } from './html.ts';
import { daySection } from './reportDay.ts';
import { courseSection, fileSection, practiceSection, sideSection } from './reportFacts.ts';
import { checkSection, findingSection, placedSection, waivedSection } from './reportFindings.ts';
import { reportStyle } from './reportStyle.ts';
import type { Spoken } from './spoken.ts';
import { type Shape, aText, maybe, recordOf, want } from '../wants.ts';
import { isAnalysis } from '../review/shapes.ts';

/** What the reviewer's report is made of. */
export interface ReportInput {
  /** Its findings have their places in the plan. */
  readonly analysis: Analysis;
  readonly review: ReviewDocument;
  /** The day on which it is made, ISO 8601; the caller knows the clock. */
  readonly made: string;
  /** BCP 47; the plan's own where absent. */
  readonly language?: string;
}

const isInput: Shape = recordOf<ReportInput>('{ analysis, review, made }', {
  analysis: isAnalysis,
  review: isReviewDocument,
  made: aText,
  language: maybe(aText),
});

/**
 * The safety review as one HTML page to be printed and signed, in the plan's units and in the language asked for, else
 * the plan's own. Checks that could not run and findings that stay unclear stand beside the counts.
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
 * reportHtml({ analysis, review, made: '2027-09-01' }).includes('Seen and agreed'); // → true
 * ```
 */
export function reportHtml(input: ReportInput): string {
  want('reportHtml', 'input', isInput, input);
  const { analysis, review, made, language } = input;
  const { plan, checks } = analysis;
  const text = textOf(language ?? plan.language).text;
  const words = text.report;
  const voice = voiceOf(plan, { language: text.language });
  const findings = analysis.findings.map((finding) => findingInWords(finding, voice));
  const spoken: Spoken = { text, voice };
  const name = plan.name === '' ? words.noName : plan.name;
  const style = reportStyle(review.plan.sha256.replaceAll(/[^0-9a-f]/gu, '').slice(0, 12), MADE_BY, words);
  const body = html`<p class="over">${words.title}</p>
<h1>${said(name)}</h1>
${factTable(analysis, made, text)}
<p class="result">${words.result(review.counts)}</p>
<p class="caution">${text.frame.caution} ${words.walkIt}</p>
${fileSection(review, words)}
${findingSection(findings, spoken)}
${waivedSection(findings, spoken)}
${placedSection(review.placed, spoken)}
${sideSection(analysis, spoken)}
${courseSection(analysis, spoken)}
${practiceSection(analysis, spoken)}
${checkSection(checks, spoken)}
${daySection(analysis, text)}
${signatures(text)}`;
  return documentHtml({ lang: text.language, title: words.documentTitle(name), style, body });
}

function factTable({ plan, stations }: Analysis, made: string, text: SheetText): Html {
  const { report: words } = text;
  const facts = [
    [words.facts.revision, plan.revision ?? words.notStated],
    [
      words.facts.raceDay,
      plan.date === undefined
        ? words.notStated
        : `${dateText(plan.date, text)}${plan.timeZone === undefined ? '' : ` (${plan.timeZone})`}`,
    ],
    [words.facts.races, plan.races.map(({ name }) => name).join(', ')],
    [words.facts.stations, String(stations.length)],
    [words.facts.made, words.madeBy(made, MADE_BY)],
  ] as const;
  return html`<table class="facts"><tbody>${facts.map(([label, fact]) => html`<tr><th scope="row">${label}</th><td>${said(fact)}</td></tr>\n`)}</tbody></table>`;
}

/** What the review comes to, in one line: counts, and what was not decided beside them. */
export const resultText = (counts: ReviewCounts): string => en.report.result(counts);

const signatures = ({
  report: { signatures: words },
  frame,
}: SheetText): Html => html`<div class="together"><h2>${words.title}</h2>
<p>${words.about}</p>
${table(
  [words.office, words.name, words.signature, words.date],
  words.offices.map((office) => [office, '', '', '']),
  'signatures',
)}
<p class="caution">${frame.caution}</p></div>`;
