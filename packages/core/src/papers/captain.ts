/**
 * The captain's sheet: all that one station needs on race day on one page. Medical and safety words are the
 * usual caution; they defer to the local emergency number, race control and licensed practice.
 */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import type { LaidDirection, StationLayout } from '../layout/layout.ts';
import type { LonLat } from '../finding.ts';
import { leadOf } from '../plan/lookups.ts';
import type { PlanPoint } from '../plan/plan.ts';
import { formatMeasure } from '../format.ts';
import { gridReference } from '../export/gridReference.ts';
import { textOf } from '../text/languages.ts';
import { placeInWords } from '../text/streetWords.ts';
import type { SheetText } from '../text/sheetText.ts';
import { clockBlock, countsBlock, crewBlock, prePourBlock, suppliesBlock, talkBlock } from './captainFacts.ts';
import { orderBlock } from './captainOrder.ts';
import { CAPTAIN_STYLE } from './captainStyle.ts';
import { pointFigure } from './figures.ts';
import {
  type SheetOptions,
  dateText,
  pageHtml,
  planName,
  printLine,
  numberOrBlank,
  saidOrBlank,
  shortened,
  sizeOf,
  toFill,
  versionText,
} from './frame.ts';
import { pageBox } from './frameStyle.ts';
import { type Html, NONE, html, said } from './html.ts';
import { layoutDrawing } from './layoutDrawing.ts';
import { pointMark } from './marks.ts';
import { windOf } from './sheet.ts';
import { byNumber, numberOf } from '../layout/layout.ts';
import { placeCode } from './qr.ts';
import { drawingInput } from './stationDrawing.ts';
import { kerbPoints, pointWord } from './stationGround.ts';
import { stationMap } from './stationMap.ts';
import { svgFrame } from './svg.ts';
import { weatherLine } from './weatherSheet.ts';
import { type Shape, recordOf, want } from '../wants.ts';
import { isContext, isSheetOptions } from './frame.ts';
import { isAnalysis } from '../review/shapes.ts';
import { isStationLayout } from '../layout/shapes.ts';

/** What a captain's sheet may hold beside the plan. */
export interface CaptainOptions extends SheetOptions {
  /** Roads and paths for the map, degrees: the plan's own context. */
  readonly context?: FeatureCollection;
}

const isCaptainOptions: Shape = (value) => isSheetOptions(value) ?? recordOf('options', { context: isContext })(value);

/** Millimetres. */
const MAP = { width: 66, height: { a4: 31, letter: 29 } } as const;
const QR = 15;

interface Sheet {
  readonly analysis: Analysis;
  readonly station: StationLayout;
  readonly options: CaptainOptions;
  readonly text: SheetText;
}

/**
 * One station's sheet for its captain as a whole document, one page where names and notes are of usual length. `station`:
 * one of the analysis. All stations in one document: `captains.html` of `papersOf`.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { captainSheet } from '@halfcup/core/papers';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const [station] = result.value.stations;
 * const page = station && captainSheet(result.value, station, { paper: 'a4', printedAt: '2027-09-01 18:30' });
 * page?.startsWith('<!doctype html>'); // → true
 * ```
 */
export function captainSheet(analysis: Analysis, station: StationLayout, options: CaptainOptions): string {
  want('captainSheet', 'analysis', isAnalysis, analysis);
  want('captainSheet', 'station', isStationLayout, station);
  want('captainSheet', 'options', isCaptainOptions, options);
  return captainDocument(analysis, [station], options);
}

/** The sheets of all stations in the plan's order, each on a page of its own. */
export const captainSheets = (analysis: Analysis, options: CaptainOptions): string =>
  captainDocument(analysis, byNumber(analysis.stations), options);

function captainDocument(analysis: Analysis, stations: readonly StationLayout[], options: CaptainOptions): string {
  const { text } = textOf(options.language ?? analysis.plan.language);
  const { plan } = analysis;
  const body = html`${stations.map((station) => captainBody({ analysis, station, options, text }))}`;
  return pageHtml({
    title: `${text.captain.title}: ${stations.map(({ name }) => name).join(', ')}`,
    paper: options.paper,
    plan,
    printedAt: options.printedAt,
    text,
    body,
    style: CAPTAIN_STYLE,
  });
}

function captainBody(sheet: Sheet): Html {
  const { analysis, station, options, text } = sheet;
  const { width } = pageBox(options.paper);
  return html`<article class="captain ${options.paper}" data-station="${station.id}">
${head(sheet)}
${emergency(sheet)}
${station.directions.length === 0 ? html`<p class="come">${text.captain.drawing.none}</p>` : station.directions.filter((direction) => direction.lead || direction.items.length > 0).map((direction) => directionBlock(sheet, direction, width))}
<div class="facts"><div><h2>${text.captain.map.title}</h2>
${stationMap({ layout: analysis, station, units: analysis.plan.units, text, width: MAP.width, height: MAP.height[options.paper], ...(options.context === undefined ? {} : { context: options.context }) })}
</div>
<div>${clockBlock(analysis, station, text)}</div>
<div>${talkBlock(analysis, station, text)}</div></div>
<p class="stay">${text.captain.clock.stayOpen}</p>
${pointList(sheet)}
${prePourBlock(analysis, station, text)}
${suppliesBlock(analysis, station, text)}
${crewBlock(analysis, station, text)}
${orderBlock(text)}
${countsBlock(analysis, station, text)}
<p class="caution">${text.frame.caution}</p>
</article>
`;
}

function head({ analysis, station, options, text }: Sheet): Html {
  const { plan, stations } = analysis;
  const name = planName(plan, text);
  const places = plan.races.flatMap((race) => {
    const measures = station.passes
      .filter((pass) => pass.served && pass.race === race.id)
      .map(({ measure }) => formatMeasure(measure, plan.units));
    return measures.length === 0 ? [] : [html`${said(race.name)} ${measures.join(' + ')}`];
  });
  return html`<header class="top"><div class="number">${numberOf(station)}</div><div class="who"><h1${sizeOf(station.name)}>${said(station.name)}</h1>
<p>${text.captain.stationOf(numberOf(station), stations.length)}${places.map((place) => html` · ${place}`)}</p>
<p${sizeOf(name)}>${said(name)}${plan.date === undefined ? '' : html` · <b>${dateText(plan.date, text)}</b>`} · ${said(versionText(plan, text))}</p><p>${printLine(options.printedAt, text)}</p></div>${placeBlock(station.at, text)}</header>`;
}

/** The station's place, for the map of a telephone. */
const placeBlock = (at: LonLat, { captain }: SheetText): Html =>
  html`<figure class="scan">${placeCode(at, QR, captain.scan)}<figcaption>${captain.scan}</figcaption></figure>`;

/** Decimal degrees to about a metre, with letters, as dispatchers take them. */
const degrees = (value: number, [positive, negative]: readonly [string, string]): string =>
  `${Math.abs(value).toFixed(5)}° ${value < 0 ? negative : positive}`;

/** The station by its street, in words; `null` where nobody tells. */
const placeOf = ({ street }: StationLayout, { frame }: SheetText): string | null =>
  street === undefined ? null : placeInWords(street, frame.street);

/** What a street rests on, where that is the map. */
const mapNote = ({ ground }: Analysis, { street }: StationLayout, { frame }: SheetText): string =>
  street?.by === 'map' ? `; ${frame.street.fromMap(ground?.ground.source.date ?? null)}` : '';

/** Signs of a name that are spoken; the whole name stands in the head. */
const SPOKEN = 40;

function emergency({ analysis, station, text }: Sheet): Html {
  const { emergency: words } = text.captain;
  const { contacts } = analysis.plan;
  const { points } = station.station;
  const street = (
    points.find(({ kind, street: name }) => kind === 'access' && name !== undefined) ??
    points.find(({ street: name }) => name !== undefined)
  )?.street;
  const grid = gridReference(station.at).text;
  const place = placeOf(station, text);
  const position = `${degrees(station.at[1], ['N', 'S'])}, ${degrees(station.at[0], ['E', 'W'])}`;
  return html`<section class="emergency"><p class="call"><span class="title">${words.title}</span>${words.callFirst} ${numberOrBlank(contacts.emergency, text)}</p>
<p class="words"><span class="signs">(${words.signs})</span> ${words.say} “${words.words} ${place === null ? NONE : html`${words.where} <b class="street">${said(place)}</b>. `}${words.comeInBy} <b>${saidOrBlank(street, text)}</b>. ${grid === null ? '' : html`${words.grid} <b class="grid" data-grid="${grid}">${grid}</b>. `}<b>${text.frame.station} ${numberOf(station)}, ${said(shortened(station.name, SPOKEN))}</b>.” <span class="small">(${position}${mapNote(analysis, station, text)})</span> ${words.stayOnLine}${weatherLine(analysis, station, text)}</p>
<div><p><b>${words.thenControl}</b> ${numberOrBlank(contacts.raceControl, text)}: ${words.tellControl}</p><p><b>${words.stay}</b> <b>${words.radio}</b></p></div></section>`;
}

/** Where runners come from, the side, the drawing and what must be said about it. */
function directionBlock({ analysis, station, text }: Sheet, direction: LaidDirection, width: number): Html {
  const { captain: words, frame } = text;
  const { units } = analysis.plan;
  const from = windOf(direction.azimuthDeg, text);
  const side =
    direction.side === 'unclear'
      ? frame.sideUnclear
      : words.tablesOn(direction.side === 'left' ? frame.left : frame.right);
  const drawing = layoutDrawing(drawingInput(analysis, station, direction, { text, units, width }));
  const scale = drawing.broken ? words.drawing.notToScale : words.drawing.straight;
  return html`<section class="block"><p class="come">${words.comeFrom(from)} ${side}</p>
<h2>${words.drawing.title} <span class="about">${words.drawing.about} ${scale}</span></h2>
${drawing.svg}${drawing.folds ? html`<p class="small">${words.drawing.folds}</p>` : NONE}</section>`;
}

/** Each point with its shape as drawn, where it stands along the kerb, and what the plan says of it. */
function pointList({ analysis, station, text }: Sheet): Html {
  const { points, note } = station.station;
  const lead = leadOf(station);
  const none = points.length === 0 ? html`<li>${text.frame.points.drop}: ${toFill(text)}</li>` : NONE;
  return html`<ul class="points">${none}${points.map((point) => {
    const { kind, name, street } = point;
    const [near] = lead === undefined ? [] : kerbPoints(analysis, station, lead, text, [point]);
    const facts = [name, street, point.note]
      .filter((fact) => fact !== undefined && fact !== '' && fact !== pointWord(point, text))
      .map((fact) => said(fact!));
    const all = near === undefined ? facts : [html`${pointFigure(near.along, analysis.plan.units, text)}`, ...facts];
    return html`<li>${pointKey(kind, text)}<b>${said(pointWord(point, text))}</b>${all.map((fact, k) => html`${k === 0 ? ': ' : ', '}${fact}`)}</li>\n`;
  })}${note === undefined || note === '' ? NONE : html`<li class="note">${said(note)}</li>`}</ul>`;
}

/** A point's shape by itself. */
const pointKey = (kind: PlanPoint['kind'], text: SheetText): Html =>
  svgFrame(3.6, 3.6, text.frame.points[kind], [pointMark(kind, 1.8, 1.8)], 'key');
