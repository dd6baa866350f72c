/**
 * The report's own style: black on white, nothing under 9 pt, no row broken over two pages, on any paper
 * (A4 and Letter both leave 165 mm between these margins). Source: CSS Paged Media 3 (page margin boxes).
 */

import type { ReportText } from '../text/reportText.ts';

/** `mark` and `madeBy` are printed at the foot of every page; `mark` must hold hexadecimal digits only. */
export const reportStyle = (mark: string, madeBy: string, { foot, page, of }: ReportText): string => `
@page { margin: 18mm 20mm 20mm; @bottom-left { content: "${foot(mark)}"; font: 9pt sans-serif; } @bottom-right { content: "${madeBy} · ${page} " counter(page) " ${of} " counter(pages); font: 9pt sans-serif; } }
* { box-sizing: border-box; }
html { color: #000; background: #fff; font: 10pt/1.35 "Liberation Sans", Arial, Helvetica, sans-serif; }
body { max-width: 175mm; margin: 0 auto; padding: 8mm 4mm; overflow-wrap: anywhere; }
h1 { font-size: 18pt; line-height: 1.2; margin: 0 0 1mm; }
h2 { font-size: 12.5pt; margin: 8mm 0 2mm; padding-bottom: 0.8mm; border-bottom: 1.2pt solid #000; break-after: avoid; }
h3 { font-size: 10.5pt; margin: 4mm 0 1mm; break-after: avoid; }
p { margin: 1mm 0 2mm; orphans: 3; widows: 3; }
h2 + p, h3 + p { break-after: avoid; }
.over { margin: 0; font-size: 10pt; }
.result { font-size: 12pt; font-weight: bold; margin: 4mm 0 2mm; padding: 2.5mm 3mm; border: 1.6pt solid #000; }
.caution { margin: 4mm 0; padding: 2mm 3mm; border: 0.8pt solid #000; break-inside: avoid; }
table { width: 100%; border-collapse: collapse; font-size: 9pt; margin: 1mm 0 3mm; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; border-bottom: 0.8pt solid #000; vertical-align: bottom; }
th, td { padding: 0.9mm 2.4mm 0.9mm 0; }
td { vertical-align: top; border-bottom: 0.4pt solid #000; }
th:last-child, td:last-child { padding-right: 0; }
th.number, td.number { text-align: right; white-space: nowrap; padding-right: 4mm; }
th.number:last-child, td.number:last-child { padding-right: 0; }
.facts th { width: 32mm; border-bottom: 0; vertical-align: top; }
.facts td { border-bottom: 0; }
.files td:last-child, code { font: 9pt "Liberation Mono", "Courier New", monospace; }
.files td:first-child { width: 42mm; }
.findings, .checks, .sides, .courses, .departures { table-layout: fixed; }
.findings th:nth-child(1) { width: 30mm; }
.findings th:nth-child(2) { width: 12mm; }
.findings th:nth-child(4) { width: 19mm; }
.findings th:nth-child(5) { width: 27mm; }
.findings .number { white-space: normal; overflow-wrap: normal; }
.checks th:nth-child(1) { width: 38mm; }
.checks th:nth-child(3) { width: 44mm; }
.checks th:nth-child(4) { width: 27mm; }
.sides th:nth-child(2) { width: 20mm; }
.sides th:nth-child(3), .sides th:nth-child(4) { width: 19mm; }
.sides th:nth-child(5) { width: 17mm; }
.sides th:nth-child(6) { width: 24mm; }
.sides th:nth-child(7) { width: 32mm; }
.courses th:nth-child(3), .courses th:nth-child(4), .courses th:nth-child(5) { width: 22mm; }
.courses th:nth-child(6) { width: 25mm; }
.practice td:nth-child(2) { white-space: nowrap; }
.signatures { table-layout: fixed; }
.signatures td { height: 13mm; border-bottom: 0.8pt solid #000; vertical-align: bottom; }
.signatures th:nth-child(1) { width: 36mm; }
.signatures th:nth-child(4) { width: 28mm; }
.together { break-inside: avoid; }
.quiet { font-style: italic; }
@media print { body { max-width: none; padding: 0; } }
`;
