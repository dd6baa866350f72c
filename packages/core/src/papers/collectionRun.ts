/** The collection run: what each vehicle brings back, after the stations are released. */
import type { Analysis } from '../analyse.ts';
import { runSections } from './driverRun.ts';
import { type Html, html } from './html.ts';
import { type Sheet, listHead } from './sheet.ts';

/** The body of the paper, all vehicles in the plan's order. */
export function collectionRunBody(analysis: Analysis, sheet: Sheet): Html {
  const { plan, day } = analysis;
  const words = sheet.text.lists.runs;
  const collected = (day?.runs ?? []).filter(({ kind }) => kind === 'collect');
  const sections = plan.vehicles.flatMap(({ id, name }) =>
    runSections(
      analysis,
      collected.filter(({ vehicle }) => vehicle === id),
      sheet,
      name,
    ),
  );
  return html`${listHead(words.collectTitle, plan, sheet)}
<p><b>${words.way}</b> ${words.piles}</p>
${sections.length === 0 ? html`<p>${words.none}</p>` : sections}`;
}
