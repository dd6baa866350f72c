/** The report's section on race day: every default that its sums rest on, with the kind of its source. */
import type { Analysis } from '../analyse.ts';
import { DEFAULTS_TABLE, type DefaultRow } from '../raceday/defaultsTable.ts';
import { type Html, html, table } from './html.ts';

const valueText = ({ value, unit }: DefaultRow): string =>
  value === null ? 'none' : `${typeof value === 'number' ? Number(value.toPrecision(4)) : value} ${unit}`.trim();

/** Nothing where the plan has no race day. */
export function daySection({ day }: Analysis): Html {
  if (day === null) return html``;
  const rows = DEFAULTS_TABLE.map((row) => [row.key, row.what, valueText(row), row.source]);
  return html`<h2>What race day rests on</h2>
<p>Cups, crew and loads are reckoned with these where the plan says nothing else; each with the kind of its source. Count what is used, and plan the next day with that.</p>
${table(['In the plan', 'What', 'Usual', 'Source'], rows, 'defaults')}`;
}
