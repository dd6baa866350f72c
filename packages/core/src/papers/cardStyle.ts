/** Style of the volunteer cards: two to a page, each of half its height, to be cut apart along the dashes. */
export const cardStyle = (halfMm: number): string => `
.card { min-height: ${halfMm}mm; break-inside: avoid; padding: 0 0 3mm; font-size: 12pt; line-height: 1.18; display: flex; flex-direction: column; }
.card:nth-of-type(odd) { break-before: page; border-bottom: 0.8pt dashed #000; }
.card:first-of-type { break-before: auto; }
.card:nth-of-type(even) { padding-top: 4mm; }
.card h2 { font-size: 12.5pt; margin: 1.2mm 0 0.3mm; padding: 0; border-bottom: 1pt solid #000; }
.card p { margin: 0.4mm 0; }
.card ul { margin: 0.6mm 0 0; }
.card ul { padding-left: 5mm; }
.card .top { display: flex; gap: 4mm; align-items: center; }
.card .number { flex: none; min-width: 20mm; padding: 0 2mm; background: #000; color: #fff; font-size: 36pt; line-height: 15mm; font-weight: bold; text-align: center; }
.card h1 { font-size: 18pt; margin: 0; line-height: 1.05; }
.card h1.long { font-size: 12pt; }
.card h1.longest { font-size: 9pt; }
.card .top p { font-size: 9.5pt; line-height: 1.12; margin: 0.3mm 0 0; }
.card .facts { font-size: 13pt; margin-top: 1mm; }

.card .two { display: grid; grid-template-columns: 1fr 1fr; column-gap: 5mm; }
.card .cups { display: flex; gap: 2mm; }
.card .cups p { font-size: 9.5pt; text-align: center; }
.card .caution { font-size: 9pt; border: 0; padding: 0; margin: auto 0 0; }
`;
