/** The report's first page: what, where and when, the verdict, what is to be decided, a map, who signs. */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import { courseLength, startMeasure } from '../course/course.ts';
import type { ReviewCounts, ReviewDocument } from '../export/reviewDocument.ts';
import { formatLength, formatMinute } from '../format.ts';
import { courseById } from '../plan/lookups.ts';
import type { Plan, PlanRace } from '../plan/plan.ts';
import { type ClockKey, timelineOf } from '../raceday/clockAlong.ts';
import type { SheetText } from '../text/sheetText.ts';
import { MADE_BY } from '../version.ts';
import { dateText } from './frame.ts';
import { type Html, html, said, table } from './html.ts';
import { dashOf, overviewMap } from './overviewMap.ts';
import type { Spoken } from './spoken.ts';

/** The page but for its map. */
export interface CoverInput {
  readonly analysis: Analysis;
  readonly review: ReviewDocument;
  /** The day on which the report is made. */
  readonly made: string;
}

/** Title, facts, verdict, what is to be decided. */
export function coverSection({ analysis, review, made }: CoverInput, { text, voice }: Spoken): Html {
  const words = text.report;
  const { plan } = analysis;
  return html`<p class="over">${words.title}</p>
<h1>${said(plan.name === '' ? words.noName : plan.name)}</h1>
${factTable(analysis, made, { text, voice })}
<div class="result"><p>${words.verdict(review.counts)}</p><p class="counts">${words.result(review.counts)}</p></div>
${decideList(plan, review.counts, text)}
<p class="caution">${text.frame.caution} ${words.walkIt}</p>`;
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
  const facts: (readonly [string, readonly (Html | string)[]])[] = [
    [words.facts.raceDay, [dayText(plan, text)]],
    [words.facts.races, plan.races.map(race)],
    [words.facts.road, [roadText(plan, text)]],
    [words.facts.stations, [words.stationCount(stations.length, medical.length)]],
    [words.facts.contacts, [contactText(plan, text)]],
    [words.facts.made, [words.madeBy(made, MADE_BY, plan.revision ?? null)]],
  ];
  return html`<table class="facts"><tbody>${facts.map(([label, lines]) => html`<tr><th scope="row">${label}</th><td>${lines.map((line, k) => html`${k === 0 ? '' : html`<br>`}${typeof line === 'string' ? said(line) : line}`)}</td></tr>\n`)}</tbody></table>`;
}

const dayText = ({ date, timeZone }: Plan, text: SheetText): string =>
  date === undefined
    ? text.report.notStated
    : `${dateText(date, text)}${timeZone === undefined ? '' : ` (${timeZone})`}`;

/** Times of this kind at all places of the plan. */
const timesOf = ({ clock, courses }: Plan, key: ClockKey): readonly number[] =>
  courses.flatMap(({ id }) => timelineOf(clock, id, key).times);

function roadText(plan: Plan, { report: words }: SheetText): string {
  const [closes, reopens] = [timesOf(plan, 'closes'), timesOf(plan, 'reopens')];
  if (closes.length === 0 || reopens.length === 0) return words.notStated;
  return words.road(formatMinute(Math.min(...closes)), formatMinute(Math.max(...reopens)));
}

function contactText({ contacts }: Plan, { report: words }: SheetText): string {
  const told = (['emergency', 'raceControl', 'radioChannel'] as const).flatMap((key) =>
    contacts[key] === undefined ? [] : [`${words.contacts[key]}: ${contacts[key]}`],
  );
  return told.length === 0 ? words.notStated : told.join('; ');
}

function decideList(plan: Plan, counts: ReviewCounts, { report: { decide: words } }: SheetText): Html {
  const open = counts.error + counts.warning;
  const points = [
    timesOf(plan, 'closes').length === 0 ? words.noClosures : words.closures,
    ...(open === 0 ? [] : [words.findings(open)]),
    ...(counts.waived === 0 ? [] : [words.waived(counts.waived)]),
    ...(counts.notRun === 0 ? [] : [words.notRun(counts.notRun)]),
  ];
  return html`<h2>${words.title}</h2>
<ol class="decide">${points.map((point) => html`<li>${point}</li>`)}</ol>`;
}

/** All courses with the stations by number; millimetres. */
export function mapSection(
  { plan, courses, stations }: Analysis,
  { text, voice }: Spoken,
  width: number,
  height: number,
  context?: FeatureCollection,
): Html {
  const run = courses.filter(({ course }) => plan.races.some((race) => race.course === course.id));
  const shown = run.length > 0 ? run : courses;
  if (shown.length === 0) return html``;
  const map = overviewMap({
    layout: { courses: shown, stations },
    units: voice.units,
    text,
    width,
    height,
    ...(context === undefined ? {} : { context }),
  });
  return html`<section class="together map">${map}<p class="key">${shown.map(({ course }, k) => html`<span><svg width="14mm" height="2mm" viewBox="0 0 14 2"><path d="M0 1H14" stroke="#000" stroke-width="0.8"${{ html: dashOf(k) }}/></svg> ${said(course.name)}</span> `)}</p></section>`;
}

/** Who signs. */
export const signatures = ({
  report: { signatures: words },
}: SheetText): Html => html`<div class="together"><h2>${words.title}</h2>
<p>${words.about}</p>
${table(
  [words.office, words.name, words.signature, words.date],
  words.offices.map((office) => [office, '', '', '']),
  'signatures',
)}</div>`;
