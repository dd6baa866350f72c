/** Style of the captain's sheet: a head and an emergency box of fixed height, so that both stand in the same place on every sheet. */
export const CAPTAIN_STYLE: string = `
.captain { break-before: page; font-size: 11pt; line-height: 1.15; }
.captain:first-of-type { break-before: auto; }
.captain h2 { font-size: 11.5pt; margin: 1.1mm 0 0.3mm; padding-bottom: 0.1mm; border-bottom: 1pt solid #000; }
.captain p, .captain ul { margin: 0.3mm 0; }
.top { display: flex; gap: 4mm; min-height: 20.8mm; }
.number { flex: none; min-width: 25mm; height: 20mm; padding: 0 3mm; background: #000; color: #fff; font-size: 54pt; line-height: 20mm; font-weight: bold; text-align: center; }
.who { flex: 1; min-width: 0; }
.who h1 { font-size: 20pt; line-height: 1.05; margin: 0; }
.who h1.long { font-size: 12pt; }
.who h1.longest { font-size: 9pt; }
.who p { margin: 0.3mm 0 0; font-size: 10pt; line-height: 1.12; }
.who p.longest { font-size: 9pt; }
.emergency { border: 2pt solid #000; padding: 0.8mm 2.5mm 1mm; margin: 0 0 1.5mm; min-height: 28mm; line-height: 1.12; display: grid; grid-template-columns: 1.1fr 1fr; column-gap: 4mm; break-inside: avoid; }
.emergency .call { grid-column: 1 / 3; font-size: 13pt; font-weight: bold; }
.emergency .call > .title { text-transform: uppercase; margin-right: 3mm; }
.emergency .words { padding: 0.4mm 1.5mm; border-left: 2.5pt solid #000; }
.come { font-size: 12.2pt; line-height: 1.1; font-weight: bold; margin: 0.8mm 0; }
.captain .note { font-style: italic; }
.small { font-size: 9.5pt; line-height: 1.15; }
.captain .about { font-size: 9pt; line-height: 1.1; }
.stay { font-weight: bold; }
.facts { display: grid; grid-template-columns: 66mm 1fr 57mm; column-gap: 4mm; }
.facts > div { min-width: 0; }
.captain table { margin: 0; font-size: 11pt; }
.captain td, .captain th { padding: 0 1.5mm 0 0; }
.captain th { font-weight: normal; border-bottom: 0.4pt solid #000; }
.clock td { font-size: 13.5pt; font-weight: bold; font-variant-numeric: tabular-nums; text-align: right; padding-right: 0; white-space: nowrap; line-height: 1.05; }
.captain .talk th { padding-right: 0.5mm; }
.talk th { width: 23mm; vertical-align: top; font-size: 10pt; }
.captain .talk .blank { min-width: 11mm; }
.clock .to-fill { font-size: 10.5pt; font-weight: normal; }
.captain .blank { min-width: 20mm; }
.clock .blank { min-width: 11mm; }
.told { font-size: 13pt; font-weight: bold; }
.packs { columns: 4; column-gap: 4mm; padding: 0; list-style: none; font-size: 10pt; }
.pour { display: grid; grid-template-columns: 1fr 1fr; column-gap: 5mm; }
.packs li { display: flex; justify-content: space-between; border-bottom: 0.4pt solid #000; break-inside: avoid; }
.captain .jugs { font-size: 10pt; margin-top: 0.6mm; width: auto; }
.jugs caption { text-align: left; font-weight: bold; }
.captain .jugs th, .captain .jugs td { padding: 0 3mm 0 0; text-align: right; font-variant-numeric: tabular-nums; }
.captain .jugs tbody th { text-align: left; }
.more { font-size: 11pt; margin-left: 4mm; }
.points { padding: 0; font-size: 9.5pt; line-height: 1.12; }
.points li { display: inline; margin-right: 4mm; }
.piles { margin-top: 1.5mm; }
.grid { white-space: nowrap; }
.points svg { display: inline-block; vertical-align: -0.6mm; margin-right: 1mm; }
.run-in { margin: 0.8mm 0; }
.order { display: grid; grid-template-columns: 1.12fr 1.06fr 1fr; column-gap: 4mm; font-size: 9.5pt; line-height: 1.12; margin-top: 0.6mm; }
.order h3 { font-size: 10.5pt; margin: 0 0 0.3mm; border-bottom: 1pt solid #000; }
.captain .order ul { padding-left: 4mm; margin: 0; }
.captain .caution { font-size: 9pt; line-height: 1.1; padding: 0.6mm 0 0; margin: 0; border: 0; }
.weather { display: block; margin-top: 0.4mm; font-size: 9pt; line-height: 1.1; }
`;
