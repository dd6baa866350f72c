/** The supply list: what to order in whole packs, what each station gets, and what those sums rest on. */
import type { Analysis } from '../analyse.ts';
import { findById } from '../plan/lookups.ts';
import type { Plan, Units } from '../plan/plan.ts';
import type { Pack, StationDay } from '../raceday/day.ts';
import { formatMinute } from '../format.ts';
import type { SheetText } from '../text/sheetText.ts';
import { defaultsSection } from './defaultsInUse.ts';
import { flavoursNote } from './flavours.ts';
import { type Html, NONE, html, table } from './html.ts';
import { suppliesText } from '../text/supplyWords.ts';
import type { SupplyKind } from '../kinds.ts';
import { type Sheet, listHead, stationTitle, volumeText } from './sheet.ts';

/** The body of the list; one sentence where the plan has no race day. */
export function supplyListBody(analysis: Analysis, sheet: Sheet): Html {
  const { plan, day } = analysis;
  const { text } = sheet;
  const words = text.lists.supplies;
  const head = listHead(words.title, plan, sheet);
  if (day === null) return html`${head}\n<p>${words.none}</p>`;
  return html`${head}
<section class="block"><h2>${words.totals}</h2>
${table(
  [words.item, ` ${words.packs}`, ` ${words.need}`, ` ${words.pack}`, ''],
  day.totals.packs.map((pack) => totalRow(pack, plan, text)),
  'totals',
)}</section>
${resupplySection(analysis, text)}<h2>${words.each}</h2>
<div class="two">${day.stations.map((station) => stationBlock(analysis, station, text))}</div>
${defaultsSection(analysis, text)}`;
}

/** Which stations a second delivery saves, if runners drink half as much again; nothing where none is planned for. */
function resupplySection({ day, stations }: Analysis, text: SheetText): Html {
  const { resupply: words } = text.lists.supplies;
  const rows = (day?.resupply ?? []).flatMap(({ station: id, drink, called, arrives, runsOut, inTime }) => {
    const station = findById(stations, id);
    const at = (seconds: number | null): string => (seconds === null ? words.never : formatMinute(seconds));
    return station === undefined
      ? []
      : [
          [
            stationTitle(station, text),
            text.frame.items[drink],
            at(called),
            at(arrives),
            at(runsOut),
            inTime ? words.yes : words.no,
          ],
        ];
  });
  if (rows.length === 0) return NONE;
  return html`<section class="block"><h2>${words.title}</h2>
<p>${words.about}</p>
${table([text.frame.station, words.drink, ` ${words.called}`, ` ${words.arrives}`, ` ${words.runsOut}`, words.inTime], rows, 'resupply')}</section>
`;
}

const TICK: Html = html`<span class="tick"></span>`;

const totalRow = (pack: Pack, plan: Plan, text: SheetText): (string | Html)[] => [
  html`${suppliesText(pack, text.frame.supplies)}${flavoursNote(plan, plan.stations, pack.kind)}`,
  text.frame.count(pack.count),
  amountText(pack, pack.need, plan.units, text),
  amountText(pack, pack.pack, plan.units, text),
  TICK,
];

const LITRES: ReadonlySet<SupplyKind> = new Set(['waterJug', 'sportsDrinkJug']);

/** Litres or gallons of what is drunk, pieces of the rest. */
const amountText = ({ kind }: Pack, amount: number, units: Units, text: SheetText): string =>
  LITRES.has(kind) ? volumeText(amount, units, text) : text.frame.count(Math.ceil(amount - 1e-9));

function stationBlock({ stations, plan }: Analysis, day: StationDay, text: SheetText): Html {
  const station = findById(stations, day.id);
  if (station === undefined) return NONE;
  const words = text.lists.supplies;
  const rows = day.packs.map((pack) => [
    html`${suppliesText(pack, text.frame.supplies)}${flavoursNote(plan, [station.station], pack.kind)}`,
    text.frame.count(pack.count),
    amountText(pack, pack.need, plan.units, text),
    TICK,
  ]);
  return html`<section class="block" data-station="${station.id}"><h3>${stationTitle(station, text)}</h3>
${table([words.item, ` ${words.packs}`, ` ${words.need}`, ''], rows)}</section>`;
}

/** Two columns of stations, none of them broken. */
export const SUPPLY_STYLE = `
.two { columns: 2; column-gap: 8mm; }
.two h3 { margin-top: 0; }
.two .block { padding-bottom: 2mm; }
.two table, .defaults { font-size: 9.5pt; }
.two th:last-child, .totals th:last-child { width: 6mm; }
.two td:last-child, .totals td:last-child { text-align: right; }
.totals th:nth-child(2), .totals th:nth-child(3), .totals th:nth-child(4) { width: 30mm; }
.totals th.number, .totals td.number { padding-right: 5mm; }
.two .tick { width: 3.6mm; height: 3.6mm; }
.two th:nth-child(2) { width: 15mm; }
.two th:nth-child(3) { width: 19mm; }
.defaults { table-layout: fixed; }
.defaults th:nth-child(2) { width: 38mm; }
.defaults th:nth-child(3) { width: 38mm; }
.defaults .number { padding-right: 5mm; }
.defaults .number { white-space: normal; }
`;
