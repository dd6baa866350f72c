/** Every paper of a plan: what the command line writes and the viewer shows, in one list. */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../analyse.ts';
import { type ReviewDocument, isReviewDocument } from '../export/reviewDocument.ts';
import { textOf } from '../text/languages.ts';
import { captainSheets } from './captain.ts';
import { cardSheets } from './card.ts';
import { collectionRunBody } from './collectionRun.ts';
import { driverRunBody, driving } from './driverRun.ts';
import { type SheetOptions, isContext, isSheetOptions, pageHtml } from './frame.ts';
import { type Html, html, said } from './html.ts';
import { LEFTOVERS_STYLE, leftoversBody } from './leftoversPaper.ts';
import { ORDER_STYLE, orderBody } from './orderPaper.ts';
import { OVERVIEW_STYLE, overviewBody } from './overview.ts';
import { PLACEMENT_STYLE, placementListBody } from './placementList.ts';
import { reportHtml } from './report.ts';
import { LIST_STYLE, type Sheet, listHead } from './sheet.ts';
import { SIGN_IN_STYLE, signInBody } from './signIn.ts';
import { SHARED_STYLE, sharedBody } from './shared.ts';
import { STOP_STYLE } from './stops.ts';
import { SUPPLY_STYLE, supplyListBody } from './supplyList.ts';
import { WEATHER_STYLE, weatherSheetBody } from './weatherSheet.ts';
import { type Shape, aText, maybe, recordOf, listOf, want } from '../wants.ts';
import { isAnalysis } from '../review/shapes.ts';

/** What the papers are made with, besides the analysis. */
export interface PapersOptions extends SheetOptions {
  /** With it the reviewer's report is one of the papers. */
  readonly review?: ReviewDocument;
  /** The plan's background drawing: see `contextOf`. */
  readonly context?: FeatureCollection;
}

const isPapersOptions: Shape = (value) =>
  isSheetOptions(value) ?? recordOf('options', { review: maybe(isReviewDocument), context: isContext })(value);
const isNamedPaper: Shape = recordOf('a paper { name, title }', { name: aText, title: aText });

/** One paper as a whole document. */
export interface PrintedPaper {
  /** A file's name that is safe on any system: "run-v1.html". */
  readonly name: string;
  readonly title: string;
  /** The whole document, without scripts or anything fetched. */
  readonly html: string;
}

/**
 * Every paper but the list of them, in the order in which they are used: overview, the whole plan in one file, captains' sheets, cards, sign-in sheets, placement, supplies, the order where the plan has prices, the weather
 * where the plan has some, one run sheet a vehicle, collection, what is left after the race, and the report where a review is given. In the language asked for, else English:
 * see `languageNote`. What the plan does not say is left as a line to fill in.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { papersOf } from '@halfcup/core/papers';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const papers = papersOf(result.value, { paper: 'a4', printedAt: '2027-09-01 18:30' });
 * papers.map(({ name }) => name); // → ['overview.html', 'shared.html', 'captains.html', 'cards.html', 'placement.html', 'supplies.html', 'collection.html']
 * ```
 */
export function papersOf(analysis: Analysis, options: PapersOptions): PrintedPaper[] {
  want('papersOf', 'analysis', isAnalysis, analysis);
  want('papersOf', 'options', isPapersOptions, options);
  const { plan } = analysis;
  const { paper, printedAt, review, context } = options;
  const { text } = textOf(options.language ?? plan.language);
  const { lists, captain, card } = text;
  const sheet: Sheet = { text, paper, printedAt };
  const framed = (name: string, title: string, body: Html, style: string): PrintedPaper => ({
    name: `${name}.html`,
    title,
    html: pageHtml({ title, paper, plan, printedAt, text, body, style: LIST_STYLE + style }),
  });
  const whole = { ...options, language: text.language };
  const runs = driving(analysis);
  const names = fileNames(runs.map(({ id }) => id));
  return [
    framed('overview', lists.overview.title, overviewBody(analysis, sheet, context), OVERVIEW_STYLE),
    framed('shared', lists.shared.title, sharedBody(analysis, sheet, context), SHARED_STYLE),
    { name: 'captains.html', title: captain.title, html: captainSheets(analysis, whole) },
    { name: 'cards.html', title: card.title, html: cardSheets(analysis, whole) },
    ...(analysis.day === null
      ? []
      : [framed('signin', text.year.roster.title, signInBody(analysis, analysis.day, sheet), SIGN_IN_STYLE)]),
    framed('placement', lists.placement.title, placementListBody(analysis, sheet), PLACEMENT_STYLE),
    framed('supplies', lists.supplies.title, supplyListBody(analysis, sheet), SUPPLY_STYLE),
    ...(analysis.day === null || plan.prices === undefined || plan.prices.items.length === 0
      ? []
      : [framed('order', text.year.order.title, orderBody(analysis, analysis.day, sheet), ORDER_STYLE)]),
    ...(plan.weather === undefined || plan.weather.length === 0
      ? []
      : [framed('weather', text.weather.title, weatherSheetBody(analysis, sheet), WEATHER_STYLE)]),
    ...runs.map((vehicle, k) =>
      framed(
        `run-${names[k]!}`,
        `${lists.runs.dropTitle}: ${vehicle.name}`,
        driverRunBody(analysis, vehicle, sheet),
        STOP_STYLE,
      ),
    ),
    framed('collection', lists.runs.collectTitle, collectionRunBody(analysis, sheet), STOP_STYLE),
    ...(analysis.day === null
      ? []
      : [framed('leftovers', text.year.learning.form, leftoversBody(analysis, analysis.day, sheet), LEFTOVERS_STYLE)]),
    ...(review === undefined
      ? []
      : [
          {
            name: 'report.html',
            title: lists.index.report,
            html: reportHtml({ ...whole, analysis, review, made: printedAt }),
          },
        ]),
  ];
}

/**
 * The page that names papers, with links to the files beside it: `index.html` of a folder of papers.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { indexPaper } from '@halfcup/core/papers';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const page = indexPaper(result.value, [{ name: 'cards.html', title: 'Cards' }], { paper: 'a4', printedAt: '2027-09-01 18:30' });
 * page.html.includes('<a href="cards.html">'); // → true
 * ```
 */
export function indexPaper(
  analysis: Analysis,
  papers: readonly Pick<PrintedPaper, 'name' | 'title'>[],
  options: SheetOptions,
): PrintedPaper {
  want('indexPaper', 'analysis', isAnalysis, analysis);
  want('indexPaper', 'papers', listOf(isNamedPaper), papers);
  want('indexPaper', 'options', isSheetOptions, options);
  const { paper, printedAt, language } = options;
  const { plan } = analysis;
  const { text } = textOf(language ?? plan.language);
  const { title, about } = text.lists.index;
  const body = html`${listHead(title, plan, { text, paper, printedAt })}
<p>${about}</p>
<ul>${papers.map((one) => html`<li><a href="${one.name}">${said(one.title)}</a></li>\n`)}</ul>`;
  return {
    name: 'index.html',
    title,
    html: pageHtml({ title, paper, plan, printedAt, text, body, style: LIST_STYLE }),
  };
}

/** Ids as parts of file names: letters, digits and hyphens, short, and no two alike even where capitals do not count. */
export function fileNames(ids: readonly string[]): string[] {
  const taken = new Set<string>();
  return ids.map((id) => {
    const plain =
      id
        .normalize('NFKD')
        .replaceAll(/[^A-Za-z0-9]+/gu, '-')
        .replaceAll(/^-+|-+$/gu, '')
        .slice(0, 40) || 'vehicle';
    let name = plain;
    for (let k = 2; taken.has(name.toLowerCase()); k++) name = `${plain}-${k}`;
    taken.add(name.toLowerCase());
    return name;
  });
}
