/**
 * The placement list: every item of every station in course order, as pegs to be wheeled, ticked and written
 * beside. One block a station and direction, which no page break divides.
 */
import type { Analysis } from '../analyse.ts';
import type { IndexedCourse } from '../course/segmentIndex.ts';
import { isTable, type LaidDirection, type StationLayout } from '../layout/layout.ts';
import { formOf } from '../kinds.ts';
import type { ItemKind, Units } from '../plan/plan.ts';
import { formatMeasure } from '../format.ts';
import type { SheetText } from '../text/sheetText.ts';
import { wheeledText } from '../export/wheeled.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import { type Peg, pegsOf } from '../layout/pegs.ts';
import { type Sheet, listHead, positionText, stationTitle, windOf } from './sheet.ts';

interface Placed {
  readonly station: StationLayout;
  readonly direction: LaidDirection;
}

/** The body of the list, in the plan's units. */
export function placementListBody({ plan, stations, courses }: Analysis, sheet: Sheet): Html {
  const words = sheet.text.lists.placement;
  const all = stations.flatMap((station) => station.directions.map((direction): Placed => ({ station, direction })));
  const parts = courses.map((indexed) => {
    const here = all
      .filter(({ direction }) => direction.course === indexed.course.id)
      .sort((a, b) => a.direction.measure - b.direction.measure);
    if (here.length === 0) return NONE;
    const [first, ...rest] = here.map((placed) => blockOf(placed, indexed, plan.units, sheet.text));
    // A heading alone at the foot of a page helps nobody: it goes with the first block.
    return html`<div class="block"><h2>${said(words.course(indexed.course.name))}</h2>\n${first!}</div>${rest}`;
  });
  const off = stations.filter(({ directions }) => directions.length === 0);
  return html`${listHead(words.title, plan, sheet)}
<p>${words.how} ${words.margin}</p>
${off.length === 0 ? NONE : html`<p><b>${said(words.offCourse(off.map(({ name }) => name).join(', ')))}</b></p>`}
${parts}`;
}

function blockOf({ station, direction }: Placed, indexed: IndexedCourse, units: Units, text: SheetText): Html {
  const words = text.lists.placement;
  const { frame, captain } = text;
  const head = [
    words.peg,
    ` ${words.distance}`,
    frame.side,
    ` ${words.before}`,
    ` ${words.fromChalk}`,
    words.position,
    words.wheeled,
    words.done,
  ];
  const rows = pegsOf(station, direction, indexed).map((peg) => [
    pegCell(peg, station, text),
    formatMeasure(peg.measure, units),
    peg.item === null ? '' : peg.item.side === 'unclear' ? '?' : frame[peg.item.side],
    peg.before === null ? '' : wheeledText(peg.before, units),
    fromMarkCell(peg, units, text),
    peg.at === null ? words.noPlace : positionText(peg.at),
    '',
    html`<span class="tick"></span>`,
  ]);
  const second = direction.lead ? NONE : html` (${words.otherDirection})`;
  const { why } = station.station;
  const tables =
    direction.side === 'unclear'
      ? html` <b>${frame.sideUnclear}.</b>`
      : html` ${captain.tablesOn(frame[direction.side])}`;
  return html`<section class="block" data-station="${station.id}"><h3>${stationTitle(station, text)}${second}</h3>
<p>${captain.comeFrom(windOf(direction.azimuthDeg, text))}${tables}${direction.lead || !direction.items.some(isTable) ? '' : ` ${words.sameTables}`}${why === undefined ? NONE : html` ${words.why}: ${said(why)}.`}</p>
${table(head, rows, 'pegs')}${folds(direction) ? html`<p>${captain.drawing.folds}</p>` : NONE}</section>`;
}

const folds = ({ items }: LaidDirection): boolean => items.some(({ wheel }) => wheel === null);

/** What stands at a peg: the sign with its wording, a table's beginning or end with how many, boxes. */
function pegCell({ item, end }: Peg, station: StationLayout, text: SheetText): Html {
  const { lists, captain, frame } = text;
  if (item === null) return html`<b>${lists.placement.chalk}</b>`;
  const what =
    item.wording !== undefined
      ? captain.drawing.sign(item.wording)
      : item.boxes !== undefined
        ? captain.drawing.boxes(frame.items.trash, item.boxes.length)
        : tablesText(item.kind, station, text, item.to - item.from);
  const told =
    end === 'whole'
      ? what
      : end === 'first'
        ? lists.placement.begins(what)
        : lists.placement.ends(frame.items[item.kind]);
  return item.byHand === true ? html`${told} (${lists.placement.byHand})` : html`${told}`;
}

/** "Water: 5 tables"; the hand-out line is no table. */
function tablesText(
  kind: ItemKind,
  { practice }: StationLayout,
  { captain, frame }: SheetText,
  length: number,
): string {
  const word = frame.items[kind];
  return formOf(kind) !== 'table' || !(practice.tableLength > 0)
    ? word
    : captain.drawing.tables(word, Math.round(length / practice.tableLength));
}

function fromMarkCell(peg: Peg, units: Units, { captain: { drawing } }: SheetText): Html {
  const { length, margin } = peg.fromMark;
  const by = length ?? peg.along;
  const shown = wheeledText({ length: Math.abs(by), margin: length === null ? null : margin }, units);
  if (peg.item === null) return html`0`;
  const where = Math.abs(by) < 0.05 ? drawing.at : by < 0 ? drawing.before(shown) : drawing.past(shown);
  return length === null ? html`${where} <i>${drawing.along}</i>` : html`${where}`;
}

/** Columns that hold on A4 and Letter alike; nothing under 9 pt. */
export const PLACEMENT_STYLE = `
.pegs { table-layout: fixed; font-size: 9.5pt; margin-bottom: 2mm; }
.pegs th { font-size: 9pt; }
.pegs th, .pegs td { padding: 0.5mm 1.8mm 0.5mm 0; }
.pegs th.number, .pegs td.number { white-space: normal; }
.pegs td:nth-child(6) { font-variant-numeric: tabular-nums; }
.pegs th:nth-child(3), .pegs td:nth-child(3), .pegs th:nth-child(6), .pegs td:nth-child(6) { padding-left: 1.8mm; }
.pegs th:nth-child(2) { width: 20mm; }
.pegs th:nth-child(3) { width: 19mm; }
.pegs th:nth-child(4) { width: 23mm; }
.pegs th:nth-child(5) { width: 38mm; }
.pegs th:nth-child(6) { width: 25mm; }
.pegs th:nth-child(7) { width: 18mm; }
.pegs th:nth-child(8) { width: 12mm; text-align: center; }
.pegs td:nth-child(7) { border: 0.8pt solid #000; }
.pegs td:nth-child(8) { text-align: center; }
.pegs .tick { width: 4mm; height: 4mm; }
`;
