/** A stop of a vehicle as its driver needs it: when, where, which side, how far to carry, in what light, and what. */
import type { Analysis } from '../analyse.ts';
import { lengthBetween } from '../geodesy/segment.ts';
import type { StationLayout } from '../layout/layout.ts';
import { findById } from '../plan/lookups.ts';
import type { PlanPoint, Units } from '../plan/plan.ts';
import type { Run, Stop } from '../raceday/day.ts';
import { formatMeasure, formatMinute } from '../format.ts';
import { gridReference } from '../export/gridReference.ts';
import { wheelText } from '../export/wheeled.ts';
import type { SheetText } from '../text/sheetText.ts';
import { daylightOf } from './daylight.ts';
import { saidOrBlank } from './frame.ts';
import { type Html, NONE, html, said } from './html.ts';
import { placeCode } from './qr.ts';
import { placeInWords } from '../text/streetWords.ts';
import { suppliesText } from '../text/supplyWords.ts';
import { massText, positionText, sideWord, stationTitle } from './sheet.ts';

/** Nearer than this one carries nothing worth saying, metres. */
const BESIDE = 10;
/** Farther than this the side is the tables' and says nothing of where one unloads, metres. */
const FAR = 60;
const DAY = 86_400;
/** Width of the code of the place, millimetres. */
const QR = 15;

/** Where a vehicle unloads: the drop point, else the way in for trucks, else the tables themselves. */
export const unloadingPoint = ({ station }: Pick<StationLayout, 'station'>): PlanPoint | undefined =>
  station.points.find(({ kind }) => kind === 'drop') ?? station.points.find(({ kind }) => kind === 'access');

/** A block that no page break divides; nothing for a stop of a station that is not there. */
export function stopBlock(
  { plan, stations, day }: Analysis,
  stop: Stop,
  kind: Run['kind'],
  number: number,
  text: SheetText,
): Html {
  const station = findById(stations, stop.station);
  if (station === undefined) return NONE;
  const words = text.lists.runs;
  const own = findById(day?.stations ?? [], stop.station);
  const fact = (label: string, value: Html | string): Html =>
    html`<tr><th scope="row">${label}</th><td>${value}</td></tr>\n`;
  const crewAt = kind === 'drop' ? (own?.crewAt ?? null) : null;
  const release = kind === 'collect' ? (own?.packedAt ?? own?.openUntil ?? null) : null;
  const note = [unloadingPoint(station)?.note, station.station.note]
    .filter((one) => one !== undefined && one.trim() !== '')
    .join(' ');
  const facts = [
    ...placeFacts(station, kind, plan.units, text).map(([label, value]) => fact(label, value)),
    fact(words.note, saidOrBlank(note, text)),
    fact(
      words.captain,
      saidOrBlank(
        [station.station.people.captain, station.station.people.phone].filter((one) => one !== undefined).join(', '),
        text,
      ),
    ),
    crewAt === null ? NONE : fact(words.crewAt, formatMinute(crewAt)),
  ];
  return html`<section class="block stop" data-stop="${stop.station}"><div class="qr-place">${placeCode(unloadingPoint(station)?.at ?? station.at, QR, words.map)}</div><h3>${number}. ${stationTitle(station, text)} · ${formatMeasure(stop.measure, plan.units)}</h3>
<p class="when">${words.arrive} <b>${formatMinute(stop.arrive)}</b> · ${words.leave} <b>${formatMinute(stop.leave)}</b> · <b>${carryOf(station) > FAR && stop.side !== 'unclear' ? words.tablesOn(sideText(stop.side, text)) : sideText(stop.side, text)}</b></p>
${lightLine(plan, station, stop, text)}${release === null ? NONE : html`<p><b>${words.afterRelease(formatMinute(Math.ceil(release / 60) * 60))}</b></p>`}
<table class="stop-facts"><tbody>${facts}</tbody></table>
${loadList(stop, plan.units, text)}</section>`;
}

const sideText = (side: Stop['side'], text: SheetText): string =>
  side === 'left' ? text.lists.runs.leftHand : side === 'right' ? text.lists.runs.rightHand : sideWord(side, text);

/** Metres from where one unloads to the pin, straight. */
function carryOf(station: StationLayout): number {
  const at = unloadingPoint(station)?.at ?? station.at;
  return lengthBetween(at[0], at[1], station.at[0], station.at[1]);
}

function placeFacts(
  station: StationLayout,
  kind: Run['kind'],
  units: Units,
  text: SheetText,
): (readonly [label: string, value: Html | string])[] {
  const words = text.lists.runs;
  const point = unloadingPoint(station);
  const access = station.station.points.filter((one) => one.kind === 'access' && one !== point);
  const at = point?.at ?? station.at;
  const carried = carryOf(station);
  const place = station.street === undefined ? null : placeInWords(station.street, text.frame.street);
  const grid = gridReference(at, 5).text;
  return [
    [kind === 'drop' ? words.at : words.loadAt, point === undefined ? words.atPin : pointText(point, text)],
    [words.position, `${positionText(at)}${grid === null ? '' : ` · ${grid}`}`],
    ...(place === null ? [] : [[words.street, place] as const]),
    ...access.map((one): readonly [string, Html] => [words.access, pointText(one, text)]),
    [
      words.carry,
      point === undefined || carried < BESIDE
        ? words.noCarry
        : words.straightLine(wheelText(Math.ceil(carried), units, 0)),
    ],
  ];
}

/** "Supplies, Strand Road", or the kind of point where it has no name; notes stand elsewhere. */
function pointText({ kind, name, street }: PlanPoint, { frame }: SheetText): Html {
  const facts = [name, street].filter((fact) => fact !== undefined && fact.trim() !== '');
  return facts.length === 0
    ? html`${frame.points[kind]}`
    : html`${facts.map((fact, k) => html`${k === 0 ? '' : ', '}${said(fact!)}`)}`;
}

/** Whether the sun is up all the while that the vehicle stands there; nothing where it is. */
function lightLine(
  plan: Analysis['plan'],
  station: StationLayout,
  { arrive, leave }: Stop,
  { lists: { runs } }: SheetText,
): Html {
  const line = (told: string): Html => html`<p class="dark"><b>${told}</b></p>`;
  const light = daylightOf(plan, station.at);
  if (light === null) return line(plan.date === undefined || plan.timeZone === undefined ? runs.mayBeDark : runs.lamp);
  const [from, to] = [arrive % DAY, leave % DAY];
  if (from < light.sunrise) return line(runs.dark(formatMinute(light.sunrise)));
  return to > light.sunset || to < from ? line(runs.darkEvening(formatMinute(light.sunset))) : NONE;
}

function loadList({ load }: Stop, units: Units, text: SheetText): Html {
  const words = text.lists.runs;
  const total = load.reduce((sum, { kg }) => sum + kg, 0);
  const rows = load.map(
    ({ count, kg, ...supply }) =>
      html`<li><span class="tick"></span> <b>${text.frame.count(count)}</b> × ${suppliesText(supply, text.frame.supplies)}${kg > 0 ? ` (${massText(kg, units, text)})` : ''}</li>\n`,
  );
  return html`<p class="load-head"><b>${words.load}</b>: ${massText(total, units, text)}</p>
<ul class="load">${rows}</ul>`;
}

/** What goes on the vehicle first: the last stop's load, farthest in, and the first stop's last. */
export function loadingOrder({ stations, plan }: Analysis, { stops }: Run, text: SheetText): Html {
  const words = text.lists.runs;
  if (stops.length < 2) return NONE;
  const items = stops.toReversed().map((stop) => {
    const station = findById(stations, stop.station);
    const kg = stop.load.reduce((sum, one) => sum + one.kg, 0);
    return station === undefined
      ? NONE
      : html`<li>${stationTitle(station, text)}: ${massText(kg, plan.units, text)}</li>\n`;
  });
  return html`<p class="load-head"><b>${words.loading}</b></p>\n<ol class="loading">${items}</ol>`;
}

/** Shared by the driver's run and the collection run. */
export const STOP_STYLE = `
.stop { border: 1.2pt solid #000; padding: 1.5mm 3mm 2mm; margin: 0 0 3mm; }
.qr-place { float: right; margin: 0 0 1mm 3mm; }
.loading { font-size: 10.5pt; margin: 0.5mm 0 2mm; padding-left: 6mm; }
.stop h3 { margin: 0; font-size: 13pt; }
.when { font-size: 13pt; margin: 0.5mm 0; }
.stop-facts { margin: 0.5mm 0; font-size: 10.5pt; }
.stop-facts th { width: 38mm; font-weight: normal; border-bottom: 0.4pt solid #000; vertical-align: top; }
.stop-facts th, .stop-facts td { padding: 0.4mm 2mm 0.4mm 0; }
.load-head { margin: 1mm 0 0; }
.load { columns: 2; column-gap: 6mm; list-style: none; padding: 0; margin: 0.5mm 0 0; font-size: 10.5pt; }
.load li { break-inside: avoid; padding: 0.4mm 0; }
`;
