/** Sign-in and sign-out sheets, a station a page: who is on the roster with their hours, and lines for those still to be found. */
import type { Analysis } from '../analyse.ts';
import { type StationLayout, numberOf } from '../layout/layout.ts';
import { findById } from '../plan/lookups.ts';
import type { PlanPerson } from '../plan/plan.ts';
import type { RaceDay, StationDay } from '../raceday/day.ts';
import { peopleAt, presenceAt, sameName } from '../raceday/rostered.ts';
import { saysNothing } from '../plan/placeholder.ts';
import { formatMinute } from '../format.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Html, NONE, html, table } from './html.ts';
import { type Sheet, listHead, stationTitle } from './sheet.ts';

/** The body of the sheets; of a plan that has a race day. */
export function signInBody(analysis: Analysis, day: RaceDay, sheet: Sheet): Html {
  const pages = day.stations.filter(({ openFrom }) => openFrom !== null);
  return html`${pages.map((own, k) => stationPage(analysis, own, sheet, k > 0))}`;
}

/** Lines beyond the crew that is needed, for those who come unannounced. */
const SPARE = 2;

function stationPage(analysis: Analysis, own: StationDay, sheet: Sheet, breaks: boolean): Html {
  const { text } = sheet;
  const words = text.year.roster;
  const station = findById(analysis.stations, own.id);
  if (station === undefined) return NONE;
  const { captain } = station.station.people;
  const listed = peopleAt(analysis.plan, own.id);
  const isLed = saysNothing(captain) || listed.some(({ name }) => sameName(name, captain!));
  const people = isLed ? listed : [{ name: captain!, station: own.id, role: text.card.captain }, ...listed];
  const presence = presenceAt(analysis.plan, station.station, own)!;
  const missing = listed.length === 0 ? 0 : Math.max(0, presence.needed - presence.there);
  const until = formatMinute(own.packedAt ?? own.openUntil!);
  const rows = [
    ...people.map((one) => personRow(one, own)),
    ...Array.from({ length: Math.max(0, own.crew.total - people.length) + SPARE }, blankRow),
  ];
  return html`<section class="sign-in${breaks ? ' new-page' : ''}" data-station="${station.id}">
${listHead(words.title, analysis.plan, sheet)}
<h2>${stationTitle(station, text)}</h2>
<p>${words.needs(text.frame.count(own.crew.total), formatMinute(own.crewAt!), until, own.crew.shifts)}${
    missing === 0 ? '' : html` <b>${words.missing(text.frame.count(missing))}</b>`
  } ${words.about}</p>
<p><b>${words.ends(until)}</b></p>
${table(headOf(station, text), rows, 'people')}
<p>${words.sum} <span class="blank">&nbsp;</span></p></section>`;
}

/** The head stands again on a second page, so it names the station. */
function headOf(station: StationLayout, { frame, year }: SheetText): string[] {
  const [name, ...rest] = year.roster.columns;
  return [`${name} · ${frame.station} ${numberOf(station)}`, ...rest];
}

const personRow = ({ name, role, from, until }: PlanPerson, own: StationDay): (string | Html)[] => [
  name,
  role ?? '',
  `${formatMinute(from ?? own.crewAt!)}–${formatMinute(until ?? own.packedAt ?? own.openUntil!)}`,
  '',
  '',
  '',
];

const blankRow = (): string[] => ['', '', '', '', '', ''];

export const SIGN_IN_STYLE = `
.people { table-layout: fixed; }
.people td { height: 8mm; vertical-align: bottom; border-right: 0.4pt solid #000; padding-left: 1.5mm; }
.people td:last-child { border-right: 0; }
.people th { padding-left: 1.5mm; }
.people th:nth-child(1) { width: 52mm; }
.people th:nth-child(2) { width: 28mm; }
.people th:nth-child(3) { width: 27mm; }
.people th:nth-child(4), .people th:nth-child(5) { width: 17mm; }
`;
