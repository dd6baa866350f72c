/** Style of the captain's sheet: a head and an emergency box of fixed height, so that both stand in the same place on every sheet. */
export const CAPTAIN_STYLE: string = `
.captain { break-before: page; font-size: 11pt; line-height: 1.18; }
.captain:first-of-type { break-before: auto; }
.captain h2 { font-size: 11.5pt; margin: 1.4mm 0 0.4mm; padding-bottom: 0.1mm; border-bottom: 1pt solid #000; }
.captain p, .captain ul { margin: 0.4mm 0; }
.top { display: flex; gap: 4mm; height: 22.5mm; overflow: hidden; }
.number { flex: none; min-width: 25mm; height: 21mm; padding: 0 3mm; background: #000; color: #fff; font-size: 54pt; line-height: 21mm; font-weight: bold; text-align: center; }
.who { flex: 1; min-width: 0; }
.who h1 { font-size: 20pt; line-height: 1.05; margin: 0; }
.who h1.long { font-size: 12pt; }
.who h1.longest { font-size: 9pt; }
.who p { margin: 0.3mm 0 0; font-size: 10pt; line-height: 1.12; }
.who p.longest { font-size: 9pt; }
.emergency { border: 2pt solid #000; padding: 0.8mm 2.5mm 1mm; margin: 0 0 1.5mm; min-height: 33mm; display: grid; grid-template-columns: 1.25fr 1fr; column-gap: 5mm; break-inside: avoid; }
.emergency h2 { margin: 0; border: 0; font-size: 13pt; text-transform: uppercase; }
.emergency .call { font-size: 13pt; font-weight: bold; }
.emergency .words { padding: 0.4mm 1.5mm; border-left: 2.5pt solid #000; }
.come { font-size: 13.5pt; line-height: 1.1; font-weight: bold; margin: 0.8mm 0; }
.note { font-style: italic; font-size: 10pt; line-height: 1.12; }
.small { font-size: 9.5pt; line-height: 1.15; }
.facts { display: grid; grid-template-columns: 66mm 1fr 1fr; column-gap: 5mm; }
.facts > div { min-width: 0; }
.captain table { margin: 0; font-size: 11pt; }
.captain td, .captain th { padding: 0.2mm 1.5mm 0.2mm 0; }
.captain th { font-weight: normal; border-bottom: 0.4pt solid #000; }
.clock td { font-size: 13.5pt; font-weight: bold; font-variant-numeric: tabular-nums; text-align: right; padding-right: 0; }
.clock .to-fill { font-size: 11pt; font-weight: normal; }
.captain .blank { min-width: 20mm; }
.clock .blank { min-width: 14mm; }
.told { font-size: 13pt; font-weight: bold; }
.packs { columns: 3; column-gap: 5mm; padding: 0; list-style: none; }
.packs li { display: flex; justify-content: space-between; border-bottom: 0.4pt solid #000; break-inside: avoid; }
.more { display: flex; flex-wrap: wrap; column-gap: 6mm; }
.points { list-style: none; padding: 0; font-size: 10pt; line-height: 1.12; }
.points svg { display: inline-block; vertical-align: -0.6mm; margin-right: 1mm; }
.run-in { margin: 1.2mm 0; }
.order { display: grid; grid-template-columns: 1fr 1fr 1.45fr; column-gap: 5mm; font-size: 10pt; line-height: 1.14; }
.order h3 { font-size: 10.5pt; margin: 0.4mm 0 0.1mm; }
.order ul { padding-left: 3.6mm; margin: 0; }
.captain .caution { font-size: 9pt; padding: 0.4mm 2mm; margin-top: 1mm; }
`;
