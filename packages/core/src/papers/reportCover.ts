/** The report's first page: what, where and when, the verdict, what is to be decided, a map, who signs. */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import { courseLength, startMeasure } from '../course/course.ts';
import type { ReviewCounts, ReviewDocument } from '../export/reviewDocument.ts';
import { zoneAhead } from '../export/zoneTime.ts';
import type { Finding } from '../finding.ts';
import { formatLength, formatMinute } from '../format.ts';
import { courseById } from '../plan/lookups.ts';
import type { Plan, PlanRace } from '../plan/plan.ts';
import { type ClockKey, timelineOf } from '../raceday/clockAlong.ts';
import { findingSentence } from '../text/inWords.ts';
import type { SheetText } from '../text/sheetText.ts';
import { findingSubject } from '../text/subject.ts';
import { MADE_BY } from '../version.ts';
import { dateText } from './frame.ts';
import { type Html, html, said, table } from './html.ts';
import { dashOf, overviewMap } from './overviewMap.ts';
import { isLacking } from './reportFacts.ts';
import type { Spoken } from './spoken.ts';

/** The page but for its map. */
export interface CoverInput {
  readonly analysis: Analysis;
  readonly review: ReviewDocument;
  /** The day on which the report is made. */
  readonly made: string;
}

/** Title, facts beside the map, verdict, what is to be decided. */
export function coverSection(
  { analysis, review, made }: CoverInput,
  findings: readonly Finding[],
  spoken: Spoken,
  map: Html,
): Html {
  const { text } = spoken;
  const words = text.report;
  const { plan } = analysis;
  const counts = { ...review.counts, notRun: review.checks.filter(isLacking).length };
  return html`<p class="over">${words.title}</p>
<h1>${said(plan.name === '' ? words.noName : plan.name)}</h1>
<div class="cover">${factTable(analysis, made, spoken)}${map}</div>
<div class="result"><p>${words.verdict(counts)}</p><p class="counts">${words.result(counts)}</p></div>
${decideList(plan, counts, findings, spoken)}
<p class="caution">${text.frame.caution} ${words.walkIt} ${words.scope}</p>`;
}

function factTable({ plan, courses, stations }: Analysis, made: string, { text, voice }: Spoken): Html {
  const { report: words } = text;
  const race = (one: PlanRace): Html => {
    const { course } = courseById(courses, one.course);
    const entrants = one.waves.reduce((sum, wave) => sum + wave.entrants, 0);
    const facts = words.race({
      length: formatLength(courseLength(course) - startMeasure(course), voice.units, 'long', 2),
      starts: one.waves.map(({ time }) => formatMinute(time)),
      entrants: entrants === 0 ? null : text.frame.count(entrants),
      cutoff: one.cutoff === undefined ? null : formatMinute(one.cutoff),
    });
    return html`${said(one.name)}: ${facts}`;
  };
  const medical = stations.filter(({ station }) => station.points.some(({ kind }) => kind === 'medical'));
  const names = medical.map(({ name }) => name);
  const facts: (readonly [string, readonly (Html | string)[]])[] = [
    [words.facts.raceDay, [dayText(plan, text)]],
    [words.facts.races, plan.races.map(race)],
    [words.facts.road, [roadText(plan, text)]],
    [words.facts.stations, [words.stationCount(stations.length, names)]],
    [words.facts.contacts, contactLines(plan, text)],
    [words.facts.made, [words.madeBy(made, MADE_BY, plan.revision ?? null)]],
  ];
  return html`<table class="facts"><tbody>${facts.map(([label, lines]) => html`<tr><th scope="row">${label}</th><td>${lines.map((line, k) => html`${k === 0 ? '' : html`<br>`}${typeof line === 'string' ? said(line) : line}`)}</td></tr>\n`)}</tbody></table>`;
}

const HOUR = 3_600_000;

function dayText({ date, timeZone }: Plan, text: SheetText): string {
  if (date === undefined) return text.report.notStated;
  const day = dateText(date, text);
  if (timeZone === undefined) return day;
  return `${day}, ${text.report.local(zoneAhead(timeZone, Date.parse(`${date}T12:00:00Z`)) / HOUR)}`;
}

/** Times of this kind at all places of the plan. */
const timesOf = ({ clock, courses }: Plan, key: ClockKey): readonly number[] =>
  courses.flatMap(({ id }) => timelineOf(clock, id, key).times);

function roadText(plan: Plan, { report: words }: SheetText): string {
  const [closes, reopens] = [timesOf(plan, 'closes'), timesOf(plan, 'reopens')];
  if (closes.length === 0 || reopens.length === 0) return words.notStated;
  return words.road(formatMinute(Math.min(...closes)), formatMinute(Math.max(...reopens)));
}

/** A contact in its own words where they begin with what it is. */
function contactLines({ contacts }: Plan, { report: words }: SheetText): string[] {
  const told = (['emergency', 'raceControl', 'radioChannel'] as const).flatMap((key) => {
    const said = contacts[key];
    if (said === undefined) return [];
    const label = words.contacts[key];
    return [said.toLowerCase().startsWith(label.toLowerCase()) ? said : `${label}: ${said}`];
  });
  return told.length === 0 ? [words.notStated] : told;
}

/** Findings that the first page names. */
const NAMED = 6;

/** Questions that can be answered, each finding that stands by its first sentence. */
function decideList(plan: Plan, counts: ReviewCounts, findings: readonly Finding[], { text, voice }: Spoken): Html {
  const { decide: words, findings: found } = text.report;
  const open = findings.filter(({ severity, waived }) => waived === undefined && severity !== 'note');
  const named = ['error', 'warning'].flatMap((severity) => open.filter((finding) => finding.severity === severity));
  const item = (finding: Finding): Html => {
    const subject = findingSubject(finding, voice.names);
    return html`<li><b>${found.severity[finding.severity]}</b> ${subject === '' ? '' : html`${said(subject)}: `}${said(findingSentence(finding, voice)[0] ?? finding.message)}</li>`;
  };
  const more = named.length > NAMED ? html`<li>${words.more(named.length - NAMED)}</li>` : html``;
  const points = [
    html`${timesOf(plan, 'closes').length === 0 ? words.noClosures : words.closures}`,
    ...(named.length === 0
      ? []
      : [html`${words.findings(named.length)}<ul class="open">${named.slice(0, NAMED).map(item)}${more}</ul>`]),
    ...(counts.waived === 0 ? [] : [html`${words.waived(counts.waived)}`]),
    ...(counts.notRun === undefined || counts.notRun === 0 ? [] : [html`${words.notRun(counts.notRun)}`]),
  ];
  return html`<h2>${words.title}</h2>
<ol class="decide">${points.map((point) => html`<li>${point}</li>`)}</ol>`;
}

/** All courses with the stations by number; millimetres. */
export function mapSection(
  analysis: Analysis,
  { text, voice }: Spoken,
  width: number,
  height: number,
  context?: FeatureCollection,
): Html {
  const { plan, courses } = analysis;
  const run = courses.filter(({ course }) => plan.races.some((race) => race.course === course.id));
  const shown = run.length > 0 ? run : courses;
  if (shown.length === 0) return html``;
  const map = overviewMap({
    layout: { ...analysis, courses: shown },
    units: voice.units,
    text,
    width,
    height,
    ...(context === undefined ? {} : { context }),
  });
  return html`<div class="map">${map}<p class="key">${shown.map(({ course }, k) => html`<span><svg width="14mm" height="2mm" viewBox="0 0 14 2"><path d="M0 1H14" stroke="#000" stroke-width="0.8"${{ html: dashOf(k) }}/></svg> ${said(course.name)}</span> `)}</p></div>`;
}

/** Who signs. */
export const signatures = ({ report: { signatures: words } }: SheetText): Html => {
  const tick = html`<span class="tick"></span>`;
  return html`<div class="together"><h2>${words.title}</h2>
<p>${words.about}</p>
${table(
  [words.office, words.name, words.signature, words.date, words.agreed, words.conditions],
  words.offices.map((office) => [office, '', '', '', tick, tick]),
  'signatures',
)}</div>`;
};
