/**
 * The safety review as one HTML page without scripts, to be printed and signed: a pure function of an
 * analysis and its review document. Every text of the plan goes through one escaping function.
 */
import type { Analysis } from '../analyse.ts';
import { MADE_BY } from '../version.ts';
import type { ReviewCounts, ReviewDocument } from '../export/reviewDocument.ts';
import { CAUTION } from '../text/caution.ts';
import { type Html, html, said, table, documentHtml } from './html.ts';
import { daySection } from './reportDay.ts';
import { courseSection, fileSection, practiceSection, sideSection } from './reportFacts.ts';
import { checkSection, findingSection, placedSection, waivedSection } from './reportFindings.ts';
import { reportStyle } from './reportStyle.ts';

/** What the reviewer's report is made of. */
export interface ReportInput {
  /** Its findings have their places in the plan. */
  readonly analysis: Analysis;
  readonly review: ReviewDocument;
  /** The day on which it is made, ISO 8601; the caller knows the clock. */
  readonly made: string;
}

/**
 * The safety review as one HTML page to be printed and signed, in the plan's units and in English. Checks that could not run
 * and findings that cannot be told are said beside the counts.
 * @example
 * ```ts
 * import { analyse, placeFindings, readPlan, reviewDocument } from '@halfcup/core';
 * import { reportHtml } from '@halfcup/core/sheets';
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
export function reportHtml({ analysis, review, made }: ReportInput): string {
  const { plan, findings, checks } = analysis;
  const { units } = plan;
  const name = plan.name === '' ? 'A plan without a name' : plan.name;
  const style = reportStyle(review.plan.sha256.replaceAll(/[^0-9a-f]/gu, '').slice(0, 12), MADE_BY);
  const body = html`<p class="over">Safety review of water and aid stations</p>
<h1>${said(name)}</h1>
${factTable(analysis, made)}
<p class="result">${resultText(review.counts)}</p>
<p class="caution">${CAUTION} A check that finds nothing does not make a place safe: walk it.</p>
${fileSection(review)}
${findingSection(findings, units)}
${waivedSection(findings, units)}
${placedSection(review.placed, units)}
${sideSection(analysis, units)}
${courseSection(analysis, units)}
${practiceSection(analysis, units)}
${checkSection(checks)}
${daySection(analysis)}
${signatures()}`;
  return documentHtml({ lang: 'en', title: `Review of ${name}`, style, body });
}

function factTable({ plan, stations }: Analysis, made: string): Html {
  const facts = [
    ['Revision', plan.revision ?? 'not stated'],
    [
      'Race day',
      plan.date === undefined
        ? 'not stated'
        : `${plan.date}${plan.timeZone === undefined ? '' : ` (${plan.timeZone})`}`,
    ],
    ['Races', plan.races.map(({ name }) => name).join(', ')],
    ['Stations', String(stations.length)],
    ['Report made', `${made}, by ${MADE_BY}`],
  ] as const;
  return html`<table class="facts"><tbody>${facts.map(([label, fact]) => html`<tr><th scope="row">${label}</th><td>${said(fact)}</td></tr>\n`)}</tbody></table>`;
}

const many = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

/** What the review comes to, in one line: counts, and what was not decided beside them. */
export function resultText({ error, warning, note, waived, cannotTell, notRun }: ReviewCounts): string {
  const found = `${many(error, 'error')}, ${many(warning, 'warning')}, ${many(note, 'note')}; ${waived} waived`;
  const open = [
    ...(cannotTell > 0 ? [`${cannotTell} of them cannot be told`] : []),
    ...(notRun > 0 ? [`${many(notRun, 'check')} could not run`] : []),
  ];
  return [found, ...open].join('; ');
}

const OFFICES = ['Police', 'Fire service', 'Medical', 'Road authority'];

const signatures = (): Html => html`<div class="together"><h2>Seen and agreed</h2>
<p>By signing, each office says that it has seen this report of the files named above, and what it leaves open.</p>
${table(
  ['Office', 'Name', 'Signature', 'Date'],
  OFFICES.map((office) => [office, '', '', '']),
  'signatures',
)}
<p class="caution">${CAUTION}</p></div>`;
