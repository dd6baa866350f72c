/**
 * The frame of a paper: one HTML document without scripts or anything fetched, on A4 or Letter, with the
 * plan's name, version, print time, what printed it and page number on each page. The print time is the caller's to give.
 */
import type { Plan } from '../plan/plan.ts';
import { MADE_BY } from '../version.ts';
import type { SheetText } from '../text/sheetText.ts';
import { type Paper, frameStyle } from './frameStyle.ts';
import { type Html, NONE, html, said, documentHtml } from './html.ts';
import { type Shape, aText, anything, listOf, maybe, oneOf, recordOf, tableOf } from '../wants.ts';

/** What the caller decides of a paper. */
export interface SheetOptions {
  readonly paper: Paper;
  /** Day and time, as it is to be read: "2027-09-01 18:30". Pure functions know no clock. */
  readonly printedAt: string;
  /** BCP 47 tag; else the plan's own language. */
  readonly language?: string;
}

export const isSheetOptions: Shape = recordOf<SheetOptions>("options { paper: 'a4', printedAt: '2027-09-01 18:30' }", {
  paper: oneOf('a4', 'letter'),
  printedAt: aText,
  language: maybe(aText),
});

/** A background drawing that `contextOf` gives. */
export const isContext: Shape = maybe(
  recordOf('the drawing that contextOf gives', {
    type: oneOf('FeatureCollection'),
    features: listOf(
      recordOf('a feature', {
        properties: tableOf(anything),
        geometry: recordOf('a geometry', { type: aText, coordinates: listOf(anything) }),
      }),
    ),
  }),
);

/** What a paper's page is made of. */
export interface SheetFrame {
  readonly title: string;
  readonly paper: Paper;
  readonly plan: Pick<Plan, 'name' | 'revision'>;
  readonly printedAt: string;
  readonly text: SheetText;
  readonly body: Html;
  /** More style, written by this program: never a text of a plan. */
  readonly style?: string;
}

/** Signs of a name in a page's margin; the whole name stands on the paper itself. */
const LONGEST_NAME = 56;

/** A text cut to so many signs, with an ellipsis that says so. */
export function shortened(text: string, most: number): string {
  const signs = Array.from(text);
  return signs.length > most
    ? `${signs
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`
    : text;
}

/** Isolated from what stands around it, so that it may run from right to left (Unicode Standard Annex 9). */
const isolated = (text: string): string =>
  `\u2068${text.replaceAll(/[\p{Cc}\u202A-\u202E\u2066-\u2069]/gu, '\uFFFD')}\u2069`;

export const planName = ({ name }: Pick<Plan, 'name'>, { frame }: SheetText): string =>
  name.trim() === '' ? frame.noName : name;

export const versionText = ({ revision }: Pick<Plan, 'revision'>, { frame }: SheetText): string =>
  revision === undefined ? frame.noVersion : frame.version(revision);

/** The whole document. */
export function pageHtml({ title, paper, plan, printedAt, text, body, style = '' }: SheetFrame): string {
  const { frame } = text;
  const running = {
    topLeft: isolated(shortened(planName(plan, text), LONGEST_NAME)),
    topRight: isolated(shortened(versionText(plan, text), 24)),
    bottomLeft: `${isolated(shortened(frame.printed(printedAt), 48))} · ${frame.destroy}`,
    page: `${MADE_BY} · ${frame.page}`,
    of: frame.of,
  };
  return documentHtml({ lang: text.language, title, style: frameStyle(paper, running) + style, body });
}

/** "Sunday 12 September 2027" of an ISO 8601 date, which a plan's is. */
export function dateText(date: string, { frame }: SheetText): string {
  const day = new Date(`${date}T00:00:00Z`);
  return frame.date(day.getUTCDay(), day.getUTCDate(), day.getUTCMonth(), day.getUTCFullYear());
}

/** The head of a paper: its title, then the line of `stampHtml`. */
export const headHtml = (
  title: string,
  plan: Pick<Plan, 'name' | 'revision' | 'date'>,
  printedAt: string,
  text: SheetText,
): Html => html`<header class="head"><h1>${title}</h1>
${stampHtml(plan, printedAt, text)}</header>`;

/** Plan, race day, version and the line of `printLine` in one. */
export const stampHtml = (plan: Pick<Plan, 'name' | 'revision' | 'date'>, printedAt: string, text: SheetText): Html =>
  html`<p class="stamp">${said(planName(plan, text))}${plan.date === undefined ? '' : html` · <b>${dateText(plan.date, text)}</b>`} · ${said(versionText(plan, text))} · ${printLine(printedAt, text)}</p>`;

/** "Printed 2027-09-01 18:30 · Halfcup 0.1.0 · Destroy older copies": tells two printed papers apart. */
export const printLine = (printedAt: string, { frame }: SheetText): Html =>
  html`${frame.printed(printedAt)} · <span class="whole">${MADE_BY}</span> · <b>${frame.destroy}</b>`;

/** "to be filled in: ____", where a plan does not hold a fact. */
export const toFill = ({ frame }: SheetText): Html =>
  html`<span class="to-fill">${frame.toFill} <span class="blank">&nbsp;</span></span>`;

/** A text of the plan, else a line to write on. */
export const saidOrBlank = (value: string | undefined, text: SheetText): Html =>
  value === undefined || value.trim() === '' ? toFill(text) : said(value);

/** Whom to call; with a line for the number where the plan has words alone. */
export const numberOrBlank = (contact: string | undefined, text: SheetText): Html =>
  contact === undefined || /\d/u.test(contact)
    ? saidOrBlank(contact, text)
    : html`${said(contact)} <span class="blank"></span>`;

/** A class that makes the letters of a long name smaller, so that a head keeps its height. */
export const sizeOf = (name: string): Html =>
  Array.from(name).length > 110 ? html` class="longest"` : Array.from(name).length > 32 ? html` class="long"` : NONE;
