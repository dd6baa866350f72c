/**
 * The whole plan to look at, as one file that opens anywhere: overview, then each station with its drawing, times, cups and
 * crew, then what the review found. No script, no link, nothing fetched, and no name or number of a person.
 */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import { formatMeasure, formatMinute } from '../format.ts';
import { type LaidDirection, type StationLayout, byNumber } from '../layout/layout.ts';
import { voiceOf } from '../plan/voice.ts';
import { findingInWords } from '../text/inWords.ts';
import { pourWordsOf } from '../text/pourWords.ts';
import { dayOf } from './captainFacts.ts';
import { pageBox } from './frameStyle.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import { layoutDrawing } from './layoutDrawing.ts';
import { OVERVIEW_STYLE, overviewBody } from './overview.ts';
import { type Sheet, sideWord, stationTitle, windOf } from './sheet.ts';
import { kerbMouths, kerbPoints } from './stationGround.ts';

/** The body: its pages on paper, one long page on a screen. */
export function sharedBody(analysis: Analysis, sheet: Sheet, context?: FeatureCollection): Html {
  return html`${overviewBody(analysis, sheet, context)}
${byNumber(analysis.stations).map((station) => stationBlock(analysis, station, sheet))}
${findingsBlock(analysis, sheet)}`;
}

/** When the station serves, whom, and what stands ready; a dash where the plan has no race day. */
function factsOf(analysis: Analysis, station: StationLayout, { text }: Sheet): Html {
  const { shared: words } = text.lists;
  const { frame, captain } = text;
  const day = dayOf(analysis, station);
  if (day === null) return NONE;
  const rows: (readonly [string, string])[] = [
    [words.arrivals, frame.count(day.arrivals)],
    [captain.clock.beHere, formatMinute(day.crewAt!)],
    [captain.clock.ready, formatMinute(day.openFrom!)],
    [words.open, `${formatMinute(day.quantiles!.first)}–${formatMinute(day.openUntil!)}`],
    [captain.clock.packed, day.packedAt === undefined || day.packedAt === null ? '–' : formatMinute(day.packedAt)],
    ...(['sportsDrink', 'water'] as const).flatMap((drink): (readonly [string, string])[] => {
      const stock = day.prePour[drink];
      if (stock === undefined) return [];
      const { cups, tables, cupsPerLayer = cups } = stock;
      return [[frame.items[drink], captain.prePour.told(pourWordsOf({ cups, tables, cupsPerLayer }, frame.count))]];
    }),
    [captain.crew.title, frame.count(day.crew.total)],
  ];
  return html`<table class="facts"><tbody>${rows.map(([label, value]) => html`<tr><th scope="row">${label}</th><td>${value}</td></tr>\n`)}</tbody></table>`;
}

function stationBlock(analysis: Analysis, station: StationLayout, sheet: Sheet): Html {
  const { text } = sheet;
  const { plan } = analysis;
  const passes = plan.races.flatMap(({ id, name }) => {
    const measures = station.passes
      .filter((pass) => pass.served && pass.race === id)
      .map(({ measure }) => formatMeasure(measure, plan.units));
    return measures.length === 0 ? [] : [html`${said(name)} ${measures.join(' + ')}`];
  });
  const serves = station.station.serves.map((kind) => text.frame.served[kind]).join(', ');
  const drawings = station.directions.filter((direction) => direction.items.length > 0);
  return html`<section class="block station" data-station="${station.id}"><h2>${stationTitle(station, text)}</h2>
<p>${passes.map((pass, k) => html`${k === 0 ? '' : ' · '}${pass}`)}${serves === '' ? '' : ` · ${serves}`}</p>
${drawings.map((direction) => directionBlock(analysis, station, direction, sheet))}
${factsOf(analysis, station, sheet)}</section>
`;
}

const directionBlock = (
  analysis: Analysis,
  station: StationLayout,
  direction: LaidDirection,
  { text, paper }: Sheet,
): Html => html`<p><b>${text.captain.comeFrom(windOf(direction.azimuthDeg, text))}</b> ${text.frame.side}: ${sideWord(direction.side, text)}</p>
${
  layoutDrawing({
    direction,
    tableLength: station.practice.tableLength,
    points: kerbPoints(analysis, station, direction, text),
    mouths: kerbMouths(analysis, direction, text),
    units: analysis.plan.units,
    text,
    width: pageBox(paper).width,
  }).svg
}`;

/** What is open, the gravest first; those waived say so. */
function findingsBlock(analysis: Analysis, { text }: Sheet): Html {
  const { shared: words } = text.lists;
  const voice = { ...voiceOf(analysis.plan), language: text.language };
  const rank = { error: 0, warning: 1, note: 2 } as const;
  const rows = analysis.findings
    .toSorted((a, b) => rank[a.severity] - rank[b.severity])
    .map((finding) => [
      words.severity[finding.severity],
      said(findingInWords(finding, voice).message),
      finding.waived === undefined ? '' : words.waived,
    ]);
  return html`<section><h2>${words.found}</h2>
${rows.length === 0 ? html`<p>${words.none}</p>` : table([words.what, words.finding, ''], rows, 'found')}</section>`;
}

export const SHARED_STYLE: string = `${OVERVIEW_STYLE}
@media screen { body { max-width: 200mm; margin: 0 auto; padding: 6mm; } svg { max-width: 100%; height: auto; } }
.station { margin-top: 6mm; border-top: 1pt solid #000; }
.facts th { width: 46mm; font-weight: normal; text-align: left; }
.found th:first-child { width: 22mm; }
`;
