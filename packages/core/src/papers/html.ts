/**
 * HTML as values: a template tag that escapes every text put into it, so that nothing a plan says
 * can become markup. Source: WHATWG HTML, 13.3 (escaping a string).
 */
import { FONT_FACE, FONT_RULES } from './font/font.ts';

/** A piece of HTML that is safe to print as it is. */
export interface Html {
  readonly html: string;
}

type Piece = string | number | Html | readonly Piece[];

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Controls that would print nothing or turn the reading order of what follows (Unicode Standard Annex 9, table 1). */
const HIDDEN = /(?![\t\n\r])[\p{Cc}\u202A-\u202E\u2066-\u2069]/gu;

/** A text for HTML, in elements and in quoted attributes; controls become the replacement character, so that they show. */
export const escapeText = (text: string): string =>
  text.replaceAll(HIDDEN, '\uFFFD').replaceAll(/[&<>"']/gu, (sign) => ENTITIES[sign]!);

function printed(piece: Piece): string {
  if (typeof piece === 'string') return escapeText(piece);
  if (typeof piece === 'number') return String(piece);
  return 'html' in piece ? piece.html : piece.map(printed).join('');
}

/** A template whose texts are escaped, whose HTML stays, and whose lists are joined. */
export const html = (parts: TemplateStringsArray, ...pieces: readonly Piece[]): Html => ({
  html: parts.map((part, k) => (k === 0 ? part : printed(pieces[k - 1]!) + part)).join(''),
});

/** A whole document that carries its font, needs nothing from anywhere and runs nothing. `style` is written by this program, never a text of a plan. */
export const documentHtml = ({
  lang,
  title,
  style,
  body,
}: {
  readonly lang: string;
  readonly title: string;
  readonly style: string;
  readonly body: Html;
}): string =>
  html`<!doctype html>
<html lang="${lang}" dir="ltr">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${{ html: FONT_FACE + style + FONT_RULES }}</style>
</head>
<body>
${body}
</body>
</html>
`.html;

/** Nothing. */
export const NONE: Html = { html: '' };

/** A name or sentence of the plan, which may run from right to left without turning what stands around it. */
export const said = (text: string): Html => html`<bdi>${text}</bdi>`;

/** A table with headings that repeat on each page; a column whose heading begins with a space is set to the right. */
export const table = (
  head: readonly string[],
  rows: readonly (readonly Piece[])[],
  kind: string = '',
): Html => html`<table class="${kind}">
<thead><tr>${head.map((one) => html`<th scope="col"${sideOf(one)}>${one.trim()}</th>`)}</tr></thead>
<tbody>${rows.map((row) => html`<tr>${row.map((cell, k) => html`<td${sideOf(head[k]!)}>${cell}</td>`)}</tr>\n`)}</tbody>
</table>`;

const sideOf = (heading: string): Html => (heading.startsWith(' ') ? html` class="number"` : NONE);
