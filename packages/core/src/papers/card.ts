/**
 * Role cards: what one person at a station needs to do one job who has never done it, half a page each, two to a page.
 * Medical words are the usual caution and defer to the local emergency number, the captain and licensed instruction.
 */
import type { Analysis } from '../analyse.ts';
import type { StationLayout } from '../layout/layout.ts';
import { textOf } from '../text/languages.ts';
import { cardBody } from './cardBody.ts';
import { cardsOf } from './cardRoles.ts';
import { cardStyle } from './cardStyle.ts';
import { type SheetOptions, isSheetOptions, pageHtml } from './frame.ts';
import { pageBox } from './frameStyle.ts';
import { html } from './html.ts';
import { isAnalysis } from '../review/shapes.ts';
import { isStationLayout } from '../layout/shapes.ts';
import { want } from '../wants.ts';

/**
 * One station's role cards, two to a page to be cut, as a whole document: set up, hand out cups, pour, clean up; where
 * gel is served three pages instead of two. `station`: one of the analysis. All stations in one document: `cards.html`
 * of `papersOf`.
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
 * page?.split('<article class="card"').length; // → 5
 * ```
 */
export function cardSheet(analysis: Analysis, station: StationLayout, options: SheetOptions): string {
  want('cardSheet', 'analysis', isAnalysis, analysis);
  want('cardSheet', 'station', isStationLayout, station);
  want('cardSheet', 'options', isSheetOptions, options);
  return cardDocument(analysis, [station], options);
}

/** The cards of all stations, in the plan's order. */
export const cardSheets = (analysis: Analysis, options: SheetOptions): string =>
  cardDocument(analysis, analysis.stations, options);

function cardDocument(analysis: Analysis, stations: readonly StationLayout[], options: SheetOptions): string {
  const { plan } = analysis;
  const { text } = textOf(options.language ?? plan.language);
  const body = html`${stations.flatMap((station) => cardsOf(plan, station).map((role) => cardBody({ analysis, station, role, options, text })))}`;
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
