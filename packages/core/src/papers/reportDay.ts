/** The report's section on race day: every default that its sums rest on, with the kind of its source. */
import type { Analysis } from '../analyse.ts';
import { DEFAULTS_TABLE } from '../raceday/defaultsTable.ts';
import type { SheetText } from '../text/sheetText.ts';
import { valueText } from './defaultsInUse.ts';
import { type Html, html, table } from './html.ts';

/** Nothing where the plan has no race day. */
export function daySection({ day, plan }: Analysis, text: SheetText): Html {
  const { report, lists } = text;
  if (day === null) return html``;
  const words = report.day;
  const say = (english: string): string => lists.supplies.phrase(english) ?? english;
  const rows = DEFAULTS_TABLE.map((row) => [
    row.key,
    say(row.what),
    valueText(row, row.value, plan.units, text),
    say(row.source),
  ]);
  return html`<h2>${words.title}</h2>
<p>${words.about}</p>
${table([words.key, words.what, words.usual, words.source], rows, 'defaults')}`;
}
