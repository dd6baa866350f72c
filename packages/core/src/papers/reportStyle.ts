/**
 * The report's own style: black on white, nothing under 8 pt, no row and no station broken over two pages, on A4 or Letter.
 * Source: CSS Paged Media 3 (page margin boxes).
 */
import type { ReportText } from '../text/reportText.ts';
import { FONT } from './font/font.ts';
import { type Paper, pageSize } from './frameStyle.ts';

/** Millimetres. */
const MARGIN = { top: 14, side: 17, bottom: 16 } as const;

/** Of the report on a paper, millimetres: the width between the margins, and how wide and high its map is beside the facts. */
export const reportBox = (paper: Paper): { readonly width: number; readonly map: number } => ({
  width: pageSize(paper).width - 2 * MARGIN.side,
  map: paper === 'a4' ? 78 : 64,
});

/** Of the report's own parts: tables, findings, stations, annex. */
const PARTS = `.cover { display: grid; grid-template-columns: 1fr auto; gap: 4mm; align-items: start; }
.facts { font-size: 9.5pt; }
.facts th { width: 22mm; border-bottom: 0; vertical-align: top; }
.facts td { border-bottom: 0; }
.files { font-size: 8.5pt; }
.files td:first-child { width: 36mm; }
.figure, .files td:last-child { font-variant-numeric: tabular-nums; }
.figure, .stations td:nth-child(5), .stations td:nth-child(6) { white-space: nowrap; }
.stations th:nth-child(1) { width: 6mm; }
.stations th:nth-child(3) { width: 42mm; }
.stations td:first-child { font-weight: bold; }
.courses { table-layout: fixed; }
.courses th:nth-child(3), .courses th:nth-child(4), .courses th:nth-child(5) { width: 22mm; }
.courses th:nth-child(6) { width: 25mm; }
.findings { list-style: none; padding-left: 0; }
.findings li { margin: 0 0 1mm; padding-left: 2.5mm; border-left: 1.2pt solid #000; break-inside: avoid; }
.findings .error { border-left-width: 4pt; }
.findings .note { border-left: 0.8pt dotted #000; }
.findings .waived { border-left: 1.2pt dashed #000; }
.detail { font-size: 8pt; font-style: italic; }
.station { break-inside: avoid; padding: 1mm 0 2mm; border-bottom: 0.6pt solid #000; margin-bottom: 2mm; }
.place { font-size: 9pt; }
.two { display: grid; grid-template-columns: 62mm 1fr; gap: 4mm; margin-top: 1mm; }
.two .findings { margin-top: 0; font-size: 9.5pt; }
.departs { font-size: 9pt; }
.practice { columns: 2; column-gap: 8mm; font-size: 9pt; }
.practice li { break-inside: avoid; }
.rest { font-size: 8.5pt; line-height: 1.25; }
.passed { columns: 2; column-gap: 6mm; }
.key { font-size: 9pt; margin: 0.5mm 0 0; }
.key span { white-space: nowrap; margin-right: 4mm; }
.key svg { display: inline-block; vertical-align: 0.6mm; }
.signatures { table-layout: fixed; margin-bottom: 0; }
.signatures td { height: 8.4mm; border-bottom: 0.8pt solid #000; vertical-align: bottom; }
.signatures th:nth-child(1) { width: 36mm; }
.signatures th:nth-child(4) { width: 24mm; }
.signatures th:nth-child(5) { width: 15mm; }
.signatures th:nth-child(6) { width: 23mm; }
.together { break-inside: avoid; }
`;

/** `mark` and `madeBy` are printed at the foot of every page; `mark` must hold hexadecimal digits only. */
export const reportStyle = (paper: Paper, mark: string, madeBy: string, { foot, page, of }: ReportText): string => `
@page { size: ${pageSize(paper).width}mm ${pageSize(paper).height}mm; margin: ${MARGIN.top}mm ${MARGIN.side}mm ${MARGIN.bottom}mm; @bottom-left { content: "${foot(mark)}"; font: 8.5pt ${FONT}; } @bottom-right { content: "${madeBy} · ${page} " counter(page) " ${of} " counter(pages); font: 8.5pt ${FONT}; } }
* { box-sizing: border-box; }
html { color: #000; background: #fff; font: 10pt/1.32 ${FONT}; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
.cover .map { width: ${reportBox(paper).map}mm; }
body { width: ${reportBox(paper).width}mm; margin: 0 auto; padding: 8mm 0; overflow-wrap: anywhere; }
h1 { font-size: 19pt; line-height: 1.15; margin: 0 0 2mm; }
h2 { font-size: 12.5pt; margin: 5mm 0 1.5mm; padding-bottom: 0.6mm; border-bottom: 1.2pt solid #000; break-after: avoid; }
h3 { font-size: 12pt; margin: 0 0 0.5mm; break-after: avoid; }
p { margin: 0.8mm 0 1.4mm; orphans: 3; widows: 3; }
h2 + p:has(+ table), h2 + p:has(+ ul) { break-after: avoid; }
ul, ol { margin: 0.5mm 0 1.5mm; padding-left: 5mm; }
svg { display: block; }
.new-page { break-before: page; margin-top: 0; }
.over { margin: 0; font-size: 10.5pt; }
.result { margin: 3mm 0; padding: 2mm 3mm; border: 1.8pt solid #000; break-inside: avoid; }
.result p { margin: 0; font-size: 13pt; font-weight: bold; }
.result .counts { font-size: 10pt; font-weight: normal; }
.decide { font-size: 10.5pt; }
.open { font-size: 9.5pt; }
.tick { display: inline-block; width: 4mm; height: 4mm; border: 1pt solid #000; }
.caution { margin: 2mm 0; padding: 1.2mm 2.5mm; border: 0.8pt solid #000; font-size: 9pt; break-inside: avoid; }
table { width: 100%; border-collapse: collapse; font-size: 9pt; margin: 1mm 0 2.5mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; border-bottom: 0.8pt solid #000; vertical-align: bottom; }
th, td { padding: 0.8mm 2.4mm 0.8mm 0; }
td { vertical-align: top; border-bottom: 0.4pt solid #000; }
th:last-child, td:last-child { padding-right: 0; }
th.number, td.number { text-align: right; white-space: nowrap; padding-right: 4mm; }
th.number:last-child, td.number:last-child { padding-right: 0; }
${PARTS}@media print { body { width: auto; padding: 0; } }
`;
