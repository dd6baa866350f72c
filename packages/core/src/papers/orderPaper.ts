/** The supply order: what to order, what it costs, and the last day to order it in words. */
import type { Analysis } from '../analyse.ts';
import type { RaceDay } from '../raceday/day.ts';
import { type OrderLine, supplyOrder } from '../raceday/supplyOrder.ts';
import { suppliesText } from '../text/supplyWords.ts';
import { flavoursNote } from './flavours.ts';
import { dateText } from './frame.ts';
import { type Html, NONE, html, said, table } from './html.ts';
import { type Sheet, listHead, volumeText } from './sheet.ts';

/** The body of the order; of a plan that has a race day and prices. */
export function orderBody({ plan }: Analysis, day: RaceDay, sheet: Sheet): Html {
  const { text } = sheet;
  const words = text.year.order;
  const { count } = text.frame;
  const order = supplyOrder(plan, day);
  const dateOr = (date: string | null): string => (date === null ? '–' : dateText(date, text));
  const sizeOf = ({ pack }: OrderLine): string =>
    pack.kind.endsWith('Jug') ? volumeText(pack.pack, plan.units, text) : count(pack.pack);
  const amount = (value: number | null): string => (value === null ? '–' : words.amount(value));
  return html`${listHead(words.title, plan, sheet)}
<p>${order.deliverBy === null ? words.noDate : words.deliver(dateText(order.deliverBy, text))}</p>
${table(
  [...words.columns],
  order.lines.map((line) => [
    dateOr(line.orderBy),
    html`${suppliesText(line.pack, text.frame.supplies)}${flavoursNote(plan, plan.stations, line.pack.kind)}`,
    `${count(line.ordered)} × ${sizeOf(line)}`,
    amount(line.price),
    amount(line.cost),
  ]),
  'order',
)}
<p class="sum"><b>${words.total} ${words.amount(order.total)} ${said(order.currency)}</b>${
    order.unpriced === 0 ? NONE : html` · ${words.unpriced(order.unpriced)}`
  }</p>`;
}

export const ORDER_STYLE = `
.order th:nth-child(1) { width: 56mm; }
.sum { text-align: right; font-size: 12pt; }
`;
