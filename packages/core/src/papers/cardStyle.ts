/** Style of the role cards: two to a page, each of half its height, to be cut apart along the dashes. */
export const cardStyle = (halfMm: number): string => `
.card { min-height: ${halfMm}mm; break-inside: avoid; padding: 0 0 2mm; font-size: 10pt; line-height: 1.12; display: flex; flex-direction: column; }
.card:nth-of-type(odd) { break-before: page; border-bottom: 0.8pt dashed #000; }
.card:first-of-type { break-before: auto; }
.card:nth-of-type(even) { padding-top: 3.5mm; }
.card h2 { font-size: 11pt; margin: 1mm 0 0.2mm; padding: 0; border-bottom: 1pt solid #000; }
.card p { margin: 0.4mm 0; }
.card ul { margin: 0.3mm 0 0; padding-left: 4mm; }
.card .top { display: flex; gap: 4mm; align-items: center; }
.card .number { flex: none; min-width: 18mm; padding: 0 2mm; background: #000; color: #fff; font-size: 32pt; line-height: 14mm; font-weight: bold; text-align: center; }
.card .who { flex: 1; min-width: 0; }
.card h1 { font-size: 18pt; margin: 0; line-height: 1.05; }
.card h1 .long { font-size: 12pt; }
.card h1 .longest { font-size: 9pt; }
.card .top p { font-size: 9pt; line-height: 1.1; margin: 0.3mm 0 0; }
.card .qr { flex: none; }
.card .blank { min-width: 22mm; }
.card .facts { font-size: 10pt; margin-top: 0.6mm; }
.card .pictures { display: flex; justify-content: space-between; gap: 3mm; margin: 1mm 0 0; }
.card figure { margin: 0; }
.card .pictures figure { flex: 1 1 34mm; min-width: 0; }
.card .pictures .calling { flex: 2 1 37mm; }
.card .pictures .wide { flex: 0 0 52mm; }
.card .pictures svg { margin: 0 auto; }
.card .pictures figcaption { font-size: 9pt; line-height: 1.08; text-align: center; margin-top: 0.6mm; }
.card .two { font-size: 9pt; line-height: 1.1; display: grid; grid-template-columns: 1fr 1.1fr; column-gap: 4mm; }
.card[data-role=gel] .two { grid-template-columns: 1fr 1fr; }
.card[data-role=cups] .two { grid-template-columns: 1fr 1.4fr; }
.card .two > div { min-width: 0; }
.card .pour p { margin: 0.2mm 0; }
.card .life { border: 1.4pt solid #000; padding: 0.6mm 1.5mm; margin-top: 0.8mm; }
.card .caution { font-size: 9pt; border: 0; padding: 0.8mm 0 0; margin: auto 0 0; line-height: 1.08; }
`;
