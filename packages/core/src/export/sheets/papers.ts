/** Every paper of a plan: what the command line writes and the viewer shows, in one list. */
import type { FeatureCollection } from 'geojson';
import type { Analysis } from '../../analyse.ts';
import type { ReviewDocument } from '../reviewDocument.ts';
import { textOf } from '../text/languages.ts';
import { captainSheets } from './captain.ts';
import { cardSheets } from './card.ts';
import { collectionRunBody } from './collectionRun.ts';
import { driverRunBody, driving } from './driverRun.ts';
import { type SheetOptions, pageHtml } from './frame.ts';
import { type Html, html, said } from './html.ts';
import { OVERVIEW_STYLE, overviewBody } from './overview.ts';
import { PLACEMENT_STYLE, placementListBody } from './placementList.ts';
import { reportHtml } from './report.ts';
import { LIST_STYLE, type Sheet, listHead } from './sheet.ts';
import { STOP_STYLE } from './stops.ts';
import { SUPPLY_STYLE, supplyListBody } from './supplyList.ts';

/** What the papers are made with, besides the analysis. */
export interface PapersOptions extends SheetOptions {
  /** With it the reviewer's report is one of the papers. */
  readonly review?: ReviewDocument;
  /** The plan's background drawing: see `contextOf`. */
  readonly context?: FeatureCollection;
}

/** One paper as a whole document. */
export interface PrintedPaper {
  /** A file's name that is safe on any system: "run-v1.html". */
  readonly name: string;
  readonly title: string;
  readonly html: string;
}

/** Every paper but the list of them, in the order in which they are used. */
export function papersOf(analysis: Analysis, options: PapersOptions): PrintedPaper[] {
  const { plan } = analysis;
  const { paper, printedAt, review, context } = options;
  const { text } = textOf(options.language ?? plan.language);
  const { lists, captain, card } = text;
  const sheet: Sheet = { text, paper, printedAt };
  const framed = (name: string, title: string, body: Html, style: string): PrintedPaper => ({ name: `${name}.html`, title, html: pageHtml({ title, paper, plan, printedAt, text, body, style: LIST_STYLE + style }) });
  const whole = { ...options, language: text.language };
  const runs = driving(analysis);
  const names = fileNames(runs.map(({ id }) => id));
  return [
    framed('overview', lists.overview.title, overviewBody(analysis, sheet, context), OVERVIEW_STYLE),
    { name: 'captains.html', title: captain.title, html: captainSheets(analysis, whole) },
    { name: 'cards.html', title: card.title, html: cardSheets(analysis, whole) },
    framed('placement', lists.placement.title, placementListBody(analysis, sheet), PLACEMENT_STYLE),
    framed('supplies', lists.supplies.title, supplyListBody(analysis, sheet), SUPPLY_STYLE),
    ...runs.map((vehicle, k) => framed(`run-${names[k]!}`, `${lists.runs.dropTitle}: ${vehicle.name}`, driverRunBody(analysis, vehicle, sheet), STOP_STYLE)),
    framed('collection', lists.runs.collectTitle, collectionRunBody(analysis, sheet), STOP_STYLE),
    ...(review === undefined ? [] : [{ name: 'report.html', title: lists.index.report, html: reportHtml({ analysis, review, made: printedAt }) }]),
  ];
}

/** The page that names all papers, with links to the files beside it. */
export function indexPaper(analysis: Analysis, papers: readonly Pick<PrintedPaper, 'name' | 'title'>[], { paper, printedAt, language }: SheetOptions): PrintedPaper {
  const { plan } = analysis;
  const { text } = textOf(language ?? plan.language);
  const { title, about } = text.lists.index;
  const body = html`${listHead(title, plan, { text, paper, printedAt })}
<p>${about}</p>
<ul>${papers.map((one) => html`<li><a href="${one.name}">${said(one.title)}</a></li>\n`)}</ul>`;
  return { name: 'index.html', title, html: pageHtml({ title, paper, plan, printedAt, text, body, style: LIST_STYLE }) };
}

/** Ids as parts of file names: letters, digits and hyphens, short, and no two alike even where capitals do not count. */
export function fileNames(ids: readonly string[]): string[] {
  const taken = new Set<string>();
  return ids.map((id) => {
    const plain = id.normalize('NFKD').replaceAll(/[^A-Za-z0-9]+/gu, '-').replaceAll(/^-+|-+$/gu, '').slice(0, 40) || 'vehicle';
    let name = plain;
    for (let k = 2; taken.has(name.toLowerCase()); k++) name = `${plain}-${k}`;
    taken.add(name.toLowerCase());
    return name;
  });
}
