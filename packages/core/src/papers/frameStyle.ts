/**
 * The look shared by all papers but the report: black on white, text of 11 pt and nothing under 9 pt,
 * blocks that no page break divides, and plan, version, print time and page number in every page's
 * margin. Source: CSS Paged Media 3 (page margin boxes, `counter(pages)`).
 */
import { FONT } from './font/font.ts';

/** A size of paper: ISO 216 A4, or US Letter. */
export type Paper = 'a4' | 'letter';

/** What fits between the margins, millimetres. */
export interface PageBox {
  readonly width: number;
  readonly height: number;
}

/** Millimetres; top and bottom hold the running lines. */
const MARGIN = { top: 11, side: 12, bottom: 11 } as const;

/** ISO 216 A4, and ANSI/ASME Y14.1 A (8.5 in × 11 in). */
const SIZES: { readonly [paper in Paper]: PageBox } = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

/** A paper's width and height, millimetres. */
export const pageSize = (paper: Paper): PageBox => SIZES[paper];

/** The box inside the margins of a paper, millimetres. */
export const pageBox = (paper: Paper): PageBox => ({
  width: SIZES[paper].width - 2 * MARGIN.side,
  height: SIZES[paper].height - MARGIN.top - MARGIN.bottom,
});

/** A text as a CSS string: every sign but plain letters and digits by its number, so that it can end neither the string nor the style. Source: CSS Syntax 3, 4.3.7. */
export const cssString = (text: string): string =>
  `"${Array.from(text)
    .map((sign) => (/[A-Za-z0-9]/u.test(sign) ? sign : `\\${sign.codePointAt(0)!.toString(16)} `))
    .join('')}"`;

export interface Running {
  readonly topLeft: string;
  readonly topRight: string;
  readonly bottomLeft: string;
  /** Words round the numbers: "Page 1 of 2". */
  readonly page: string;
  readonly of: string;
}

const box = (place: string, content: string): string =>
  `@${place} { content: ${content}; font: 9pt ${FONT}; white-space: nowrap; }`;

const pageRule = (
  paper: Paper,
  { topLeft, topRight, bottomLeft, page, of }: Running,
): string => `@page { size: ${SIZES[paper].width}mm ${SIZES[paper].height}mm; margin: ${MARGIN.top}mm ${MARGIN.side}mm ${MARGIN.bottom}mm;
${box('top-left', cssString(topLeft))}
${box('top-right', cssString(topRight))}
${box('bottom-left', cssString(bottomLeft))}
${box('bottom-right', `${cssString(`${page} `)} counter(page) ${cssString(` ${of} `)} counter(pages)`)} }`;

/** The whole style of a paper; `running` may hold any text. */
export const frameStyle = (paper: Paper, running: Running): string => `
${pageRule(paper, running)}
* { box-sizing: border-box; }
html { color: #000; background: #fff; font: 11pt/1.3 ${FONT}; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
body { width: ${pageBox(paper).width}mm; margin: 0 auto; padding: 6mm 0; overflow-wrap: anywhere; }
h1 { font-size: 20pt; line-height: 1.15; margin: 0 0 1mm; }
h2 { font-size: 13pt; line-height: 1.2; margin: 4mm 0 1mm; padding-bottom: 0.5mm; border-bottom: 1.2pt solid #000; break-after: avoid; }
h3 { font-size: 11.5pt; margin: 2.5mm 0 0.5mm; break-after: avoid; }
p { margin: 0.8mm 0 1.2mm; orphans: 3; widows: 3; }
ul, ol { margin: 0.8mm 0 1.2mm; padding-left: 5mm; }
svg { display: block; }
.head { break-after: avoid; margin-bottom: 3mm; }
.stamp { margin: 0; font-size: 9.5pt; }
.whole { white-space: nowrap; }
.block { break-inside: avoid; }
.new-page { break-before: page; }
.caution { font-size: 9.5pt; margin: 2mm 0 0; padding: 1mm 2mm; border: 0.8pt solid #000; break-inside: avoid; }
.blank { display: inline-block; min-width: 38mm; border-bottom: 0.8pt solid #000; }
.tick { display: inline-block; width: 4.5mm; height: 4.5mm; border: 1pt solid #000; vertical-align: -0.6mm; }
table { width: 100%; border-collapse: collapse; margin: 1mm 0 3mm; font-size: 10.5pt; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; border-bottom: 1pt solid #000; vertical-align: bottom; }
th, td { padding: 0.8mm 2.4mm 0.8mm 0; }
td { vertical-align: top; border-bottom: 0.4pt solid #000; }
th:last-child, td:last-child { padding-right: 0; }
th.number, td.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
@media print { body { width: auto; padding: 0; } }
`;
