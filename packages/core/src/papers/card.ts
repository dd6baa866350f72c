/**
 * The volunteer card: what one person at a station needs, half a page, two to a page. Medical words are the usual
 * caution and defer to the local emergency number, the captain and licensed instruction.
 */
import type { Analysis } from '../analyse.ts';
import type { StationLayout } from '../layout/layout.ts';
import { formatMinute } from '../format.ts';
import { textOf } from '../text/languages.ts';
import type { SheetText } from '../text/sheetText.ts';
import { dayOf } from './captainFacts.ts';
import { cardStyle } from './cardStyle.ts';
import { palmPicture, rimPicture } from './cupPictures.ts';
import {
  type SheetOptions,
  dateText,
  pageHtml,
  planName,
  printLine,
  saidOrBlank,
  sizeOf,
  toFill,
  versionText,
  isSheetOptions,
} from './frame.ts';
import { pageBox } from './frameStyle.ts';
import { type Html, html, said } from './html.ts';
import { numberOf } from '../layout/layout.ts';
import { isAnalysis } from '../review/shapes.ts';
import { isStationLayout } from '../layout/shapes.ts';
import { want } from '../wants.ts';

/**
 * One station's volunteer card, twice on one page to be cut, as a whole document. `station`: one of the analysis. All
 * stations in one document: `cards.html` of `papersOf`.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { cardSheet } from '@halfcup/core/papers';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const [station] = result.value.stations;
 * const page = station && cardSheet(result.value, station, { paper: 'a4', printedAt: '2027-09-01 18:30' });
 * page?.split('<article class="card"').length; // → 3
 * ```
 */
export function cardSheet(analysis: Analysis, station: StationLayout, options: SheetOptions): string {
  want('cardSheet', 'analysis', isAnalysis, analysis);
  want('cardSheet', 'station', isStationLayout, station);
  want('cardSheet', 'options', isSheetOptions, options);
  return cardDocument(analysis, [station], options);
}

/** A page of two cards for each station, in the plan's order. */
export const cardSheets = (analysis: Analysis, options: SheetOptions): string =>
  cardDocument(analysis, analysis.stations, options);

function cardDocument(analysis: Analysis, stations: readonly StationLayout[], options: SheetOptions): string {
  const { plan } = analysis;
  const { text } = textOf(options.language ?? plan.language);
  const body = html`${stations.flatMap((station) => [cardBody(analysis, station, options, text), cardBody(analysis, station, options, text)])}`;
  const half = Math.floor(pageBox(options.paper).height / 2) - 0.5;
  return pageHtml({
    title: `${text.card.title}: ${stations.map(({ name }) => name).join(', ')}`,
    paper: options.paper,
    plan,
    printedAt: options.printedAt,
    text,
    body,
    style: cardStyle(half),
  });
}

const list = (lines: readonly (Html | string)[]): Html => html`<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>`;

function cardBody(analysis: Analysis, station: StationLayout, { printedAt }: SheetOptions, text: SheetText): Html {
  const { card, frame } = text;
  const { plan } = analysis;
  const { points, people, serves } = station.station;
  const street = (
    points.find(({ kind, street: name }) => kind === 'access' && name !== undefined) ??
    points.find(({ street: name }) => name !== undefined)
  )?.street;
  const at = dayOf(analysis, station)?.crewAt;
  const drinks = serves.map((kind) => frame.served[kind]);
  const number = plan.contacts.emergency;
  return html`<article class="card" data-station="${station.id}">
<header class="top"><div class="number">${numberOf(station)}</div><div><h1${sizeOf(station.name)}>${said(station.name)}</h1>
<p>${card.title} · ${said(planName(plan, text))} · ${said(versionText(plan, text))} · ${printLine(printedAt, text)}</p></div></header>
<div class="facts"><p>${card.where}: <b>${saidOrBlank(street, text)}</b> · ${card.captain}: <b>${saidOrBlank(people.captain, text)}</b></p>
<p>${card.when}: <b>${plan.date === undefined ? toFill(text) : dateText(plan.date, text)}, ${at === undefined || at === null ? toFill(text) : formatMinute(at)}</b>, ${card.untilReleased}</p></div>
<div class="two"><div><h2>${card.bringTitle}</h2>${list(card.bring)}
<h2>${card.handTitle}</h2>${list([html`<b>${card.callOut(drinks)}</b>`, ...card.hand])}</div>
<div><h2>${card.cupTitle}</h2><div class="cups"><div>${rimPicture(card.rim)}<p>${card.rim}</p></div><p>${card.or}</p><div>${palmPicture(card.palm)}<p>${card.palm}</p></div></div>
<h2>${card.fallTitle}</h2>${list(card.fall.map((line, k) => (k === 0 && number !== undefined ? html`<b>${line}</b> (${said(number)})` : k === 0 ? html`<b>${line}</b> ${toFill(text)}` : line)))}
<p><b>${card.ride}</b></p></div></div>
<p class="caution">${frame.caution}</p>
</article>
`;
}
