/** The report's stations: all in one table, then in detail each of which there is something to say. */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import type { Finding, LonLat } from '../finding.ts';
import { formatLength, formatMinute } from '../format.ts';
import { type StationLayout, byNumber, numberOf } from '../layout/layout.ts';
import type { Plan, Practice } from '../plan/plan.ts';
import { timeAt, timelineOf } from '../raceday/clockAlong.ts';
import { leadPass } from '../station/directions.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import { layoutDrawing } from './layoutDrawing.ts';
import { findingList } from './reportFindings.ts';
import { PRACTICE_RULES, practiceText } from './reportFacts.ts';
import { sideWord } from './sheet.ts';
import type { Spoken } from './spoken.ts';
import { drawingInput } from './stationDrawing.ts';
import { pointWord } from './stationGround.ts';
import { stationMap } from './stationMap.ts';

/** A station with what the review has to say of it. */
interface Reported {
  readonly station: StationLayout;
  readonly findings: readonly Finding[];
}

/** Findings of each station, by number. */
const reportedOf = ({ stations }: Analysis, findings: readonly Finding[]): Reported[] =>
  byNumber(stations).map((station) => ({
    station,
    findings: findings.filter(({ where }) => where.station === station.id),
  }));

/** Findings about no station that the plan has. */
export const besideStations = ({ stations }: Analysis, findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(({ where }) => !stations.some(({ id }) => id === where.station));

/** Every station in a row: where, when, and how many findings. */
export function stationTable(analysis: Analysis, findings: readonly Finding[], spoken: Spoken): Html {
  const { stations: words } = spoken.text.report;
  const rows = reportedOf(analysis, findings).map(({ station, findings: own }) => [
    String(numberOf(station)),
    html`<b>${said(station.name)}</b>${streetOf(station) === null ? NONE : html`<br>${said(streetOf(station)!)}`}<br><span class="figure">${degreesText(station.at)}</span>`,
    html`${measuresOf(analysis, station, spoken).map((line, k) => html`${k === 0 ? '' : html`<br>`}${line}`)}`,
    sideWord(station.directions[0]?.side ?? 'unclear', spoken.text),
    runnersCell(analysis, station, spoken.text),
    roadOf(analysis.plan, station)?.join('–') ?? spoken.text.report.notStated,
    html`${own.length === 0 ? words.noFindings : countText(own, spoken.text)}${own.length > 0 || departures(station, analysis.plan.practice, spoken).length > 0 ? html`<br>${words.below}` : NONE}`,
  ]);
  return html`<h2 class="new-page">${words.title}</h2>
<p>${words.about}</p>
${table(['', words.station, words.at, words.side, words.runnersHead, words.roadHead, words.found], rows, 'stations')}`;
}

/** Times of the first and the last, and how many come past; a dash without a race day. */
function runnersCell(analysis: Analysis, station: StationLayout, text: SheetText): Html {
  const times = runnersOf(analysis, station);
  if (times === null) return html`–`;
  const { arrivals } = analysis.day!.stations[station.index]!;
  return html`${times.join('–')}<br>${text.report.stations.passings(text.frame.count(arrivals))}`;
}

function countText(findings: readonly Finding[], { report: { findings: words } }: SheetText): Html {
  const lines = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity && finding.waived === undefined).length;
    return count === 0 ? [] : [`${words.severity[severity]}${count === 1 ? '' : ` × ${count}`}`];
  });
  const waived = findings.filter(({ waived: by }) => by !== undefined);
  return html`${[...lines, ...(waived.length === 0 ? [] : [`${words.waivedBy} ${[...new Set(waived.map((one) => one.waived!.by))].join(', ')}`])].map((line, k) => html`${k === 0 ? '' : html`<br>`}${said(line)}`)}`;
}

/** The street of its access point, else of any of its points; `null` where the plan names none. */
function streetOf({ station: { points } }: StationLayout): string | null {
  const access = points.find(({ kind, street }) => kind === 'access' && street !== undefined);
  return (access ?? points.find(({ street }) => street !== undefined))?.street ?? null;
}

/** Course distances by race. */
const measuresOf = ({ plan }: Analysis, station: StationLayout, { text, voice }: Spoken): Html[] =>
  plan.races.flatMap((race) => {
    const measures = station.passes
      .filter((pass) => pass.served && pass.race === race.id)
      .map(({ measure }) => formatLength(measure, voice.units, 'long', 2));
    return measures.length === 0 ? [] : [html`${said(race.name)} ${measures.join(` ${text.report.stations.again} `)}`];
  });

/** First and last of its runners; `null` without a race day. */
function runnersOf({ day }: Analysis, { index }: StationLayout): readonly [string, string] | null {
  const quantiles = day?.stations[index]?.quantiles ?? null;
  return quantiles === null ? null : [formatMinute(quantiles.first), formatMinute(quantiles.last)];
}

/** When the road closes at the first place that a course passes it, and opens again at the last; `null` where the plan does not say. */
function roadOf({ clock }: Plan, { passes }: StationLayout): readonly [string, string] | null {
  const at = (key: 'closes' | 'reopens'): number[] =>
    passes.flatMap(({ course, measure }) => timeAt(timelineOf(clock, course, key), measure) ?? []);
  const [closes, reopens] = [at('closes'), at('reopens')];
  if (closes.length === 0 || reopens.length === 0) return null;
  return [formatMinute(Math.min(...closes)), formatMinute(Math.max(...reopens))];
}

/** A station in detail: picture, place, times, findings; for each with a finding or a rule of its own. */
export function stationSheets(
  analysis: Analysis,
  findings: readonly Finding[],
  spoken: Spoken,
  width: number,
  context?: FeatureCollection,
): Html {
  const told = reportedOf(analysis, findings)
    .map((reported) => ({ ...reported, departs: departures(reported.station, analysis.plan.practice, spoken) }))
    .filter(({ findings: own, departs }) => own.length > 0 || departs.length > 0);
  if (told.length === 0) return NONE;
  return html`<h2>${spoken.text.report.stations.sheets}</h2>
${told.map(
  ({
    station,
    findings: own,
    departs,
  }) => html`<section class="station"><h3>${numberOf(station)} · ${said(station.name)}</h3>
${placeLines(analysis, station, spoken)}
${drawings(analysis, station, spoken, width)}
<div class="two"><div>${stationMap({ layout: analysis, station, units: spoken.voice.units, text: spoken.text, width: MAP.width, height: MAP.height, ...(context === undefined ? {} : { context }) })}</div>
<div>${own.length === 0 ? NONE : findingList(own, spoken)}${departureList(station, departs, spoken)}</div></div></section>
`,
)}`;
}

/** Millimetres. */
const MAP = { width: 62, height: 40 } as const;

/** Where, when, which side, who: a line each. */
function placeLines(analysis: Analysis, station: StationLayout, spoken: Spoken): Html {
  const { text } = spoken;
  const { stations: words } = text.report;
  const { walked, people, points } = station.station;
  const where = [
    ...(streetOf(station) === null ? [] : [said(streetOf(station)!)]),
    html`${degreesText(station.at)}`,
    ...measuresOf(analysis, station, spoken),
  ];
  const who = [
    ...(people.captain === undefined ? [] : [words.captain(people.captain)]),
    walked === undefined ? words.notWalked : words.walked(walked.by, walked.date ?? ''),
  ];
  const named = points.map((point) =>
    [pointWord(point, text), ...(point.street === undefined ? [] : [point.street])].join(', '),
  );
  return html`<p class="place"><b>${words.where}</b>: ${dotted(where)}<br>
<b>${words.when}</b>: ${dotted(whenOf(analysis, station, text).map((fact) => html`${fact}`))}<br>
${said(sideText(station, text))}. ${dotted(who.map((fact) => said(fact)))}${named.length === 0 ? NONE : html`<br><b>${words.points}</b>: ${said(named.join('; '))}`}</p>`;
}

const dotted = (facts: readonly Html[]): Html => html`${facts.map((fact, k) => html`${k === 0 ? '' : ' · '}${fact}`)}`;

function whenOf(analysis: Analysis, station: StationLayout, text: SheetText): string[] {
  const { stations: words } = text.report;
  const day = analysis.day?.stations[station.index] ?? null;
  const runners = runnersOf(analysis, station);
  const road = roadOf(analysis.plan, station);
  if (day === null || runners === null) return road === null ? [text.report.notStated] : [words.road(...road)];
  const { count } = text.frame;
  return [
    words.crew(formatMinute(day.crewAt!)),
    words.open(formatMinute(day.openFrom!), formatMinute(day.openUntil!)),
    words.runners(...runners, count(day.arrivals)),
    ...(day.peak === null ? [] : [words.busiest(count(day.peak.count), formatMinute(day.peak.at))]),
    ...(road === null ? [] : [words.road(...road)]),
  ];
}

function sideText(station: StationLayout, text: SheetText): string {
  const pass = station.passes[leadPass(station.station, station.passes)];
  const declared = station.declared === null ? null : text.frame[station.declared];
  const clear = pass !== undefined && pass.side !== 'unclear' && pass.confidence >= station.practice.sideConfidence;
  return text.report.stations.sideWords(declared, clear ? sideWord(pass.side, text) : null);
}

/** Five decimals of a degree, about a metre, with letters: nothing to lose on the radio. */
const degreesText = ([lon, lat]: LonLat): string =>
  `${Math.abs(lat).toFixed(5)}° ${lat < 0 ? 'S' : 'N'}, ${Math.abs(lon).toFixed(5)}° ${lon < 0 ? 'W' : 'E'}`;

function drawings(analysis: Analysis, station: StationLayout, { text, voice }: Spoken, width: number): Html {
  return html`${station.directions
    .filter((direction) => direction.lead || direction.items.length > 0)
    .map(
      (direction) =>
        layoutDrawing({
          ...drawingInput(analysis, station, direction, { text, units: voice.units, width }),
          dimensions: true,
          note: true,
        }).svg,
    )}`;
}

function departureList({ station }: StationLayout, departs: readonly string[], { text }: Spoken): Html {
  if (departs.length === 0) return NONE;
  const { stations: words, practice } = text.report;
  const reason = station.why === undefined ? html`<b>${practice.noReason}</b>` : said(station.why);
  return html`<p class="departs"><b>${words.departs}</b>: ${said(departs.join('; '))}. ${words.reason}: ${reason}.</p>`;
}

/** How a station differs from the plan's practice, a phrase each. */
export function departures({ station, practice }: StationLayout, plans: Practice, { text, voice }: Spoken): string[] {
  const { practice: words } = text.report;
  const shown = (key: (typeof PRACTICE_RULES)[number], value: number): string => practiceText(key, value, voice.units);
  const keys = PRACTICE_RULES.filter((key) => Object.hasOwn(station.practice, key) && practice[key] !== plans[key]);
  const placed = Object.keys(station.items) as (keyof typeof station.items)[];
  return [
    ...keys.map((key) => words.differs(words.rules[key], shown(key, practice[key]), shown(key, plans[key]))),
    ...placed.map((kind) => words.byHand(text.frame.items[kind])),
    ...(station.fixed ? [words.fixed] : []),
  ];
}
