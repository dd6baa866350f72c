/** Style of the captain's sheet: a head and an emergency box of fixed height, so that both stand in the same place on every sheet. */
export const CAPTAIN_STYLE: string = `
.captain { break-before: page; font-size: 11pt; line-height: 1.15; }
.captain:first-of-type { break-before: auto; }
.captain h2 { font-size: 10.5pt; margin: 0.6mm 0 0.2mm; padding-bottom: 0.1mm; border-bottom: 1pt solid #000; }
.captain p, .captain ul { margin: 0.3mm 0; }
.top { display: flex; gap: 4mm; min-height: 19.6mm; }
.number { flex: none; min-width: 25mm; height: 18.6mm; padding: 0 3mm; background: #000; color: #fff; font-size: 50pt; line-height: 18.6mm; font-weight: bold; text-align: center; }
.who { flex: 1; min-width: 0; }
.who h1 { font-size: 20pt; line-height: 1.05; margin: 0; }
.who h1.long { font-size: 12pt; }
.who h1.longest { font-size: 9pt; }
.who p { margin: 0.3mm 0 0; font-size: 10pt; line-height: 1.12; }
.who p.longest { font-size: 9pt; }
.emergency { border: 2pt solid #000; padding: 0.8mm 2.5mm 1mm; margin: 0 0 1.5mm; min-height: 24mm; font-size: 10pt; line-height: 1.08; display: grid; grid-template-columns: 1.12fr 1fr; column-gap: 4mm; break-inside: avoid; }
.emergency .call { grid-column: 1 / 3; font-size: 13pt; font-weight: bold; }
.emergency .signs { font-size: 9.5pt; }
.emergency .call .blank { min-width: 30mm; }
.captain .jugs td { font-weight: bold; }
.emergency .call > .title { text-transform: uppercase; margin-right: 3mm; }
.emergency .words { padding: 0.4mm 1.5mm; border-left: 2.5pt solid #000; }
.come { font-size: 11.5pt; line-height: 1.1; font-weight: bold; margin: 0.6mm 0; }
.captain .note { font-style: italic; }
.small { font-size: 9.5pt; line-height: 1.15; }
.captain .about { font-size: 9pt; font-weight: normal; }
.captain .stay { font-weight: bold; margin: 0.6mm 0; }
.captain .run-in { font-size: 10.5pt; }
.facts { display: grid; grid-template-columns: 66mm 1fr 57mm; column-gap: 4mm; }
.facts > div { min-width: 0; }
.captain table { margin: 0; font-size: 10.5pt; line-height: 1.1; }
.captain td, .captain th { padding: 0 1.5mm 0 0; }
.captain th { font-weight: normal; border-bottom: 0.4pt solid #000; }
.clock td { font-size: 11.5pt; font-weight: bold; font-variant-numeric: tabular-nums; text-align: right; padding-right: 0; white-space: nowrap; line-height: 1.05; }
.captain .talk th { padding-right: 0.5mm; }
.talk th { width: 23mm; vertical-align: top; font-size: 10pt; }
.captain .talk td .to-fill { display: flex; gap: 1mm; }
.captain .talk .blank { min-width: 11mm; flex: 1; }
.clock .to-fill { font-size: 10.5pt; font-weight: normal; }
.captain .blank { min-width: 20mm; }
.clock .blank { min-width: 11mm; }
.told { font-size: 10pt; font-weight: bold; }
.packs { columns: 4; column-gap: 4mm; padding: 0; list-style: none; font-size: 9.5pt; line-height: 1.12; }
.pour p { font-size: 10pt; line-height: 1.1; }
.packs li { display: flex; justify-content: space-between; border-bottom: 0.4pt solid #000; break-inside: avoid; }
.captain .jugs { font-size: 9.5pt; line-height: 1.1; margin-top: 0.8mm; }
.captain .jugs th, .captain .jugs td { padding: 0 0 0 2mm; text-align: right; font-variant-numeric: tabular-nums; }
.captain .jugs th:first-child { text-align: left; padding-left: 0; }
.captain .jugs thead th { font-weight: bold; }
.captain .counts { font-size: 9.5pt; margin-top: 0.8mm; }
.captain .counts .blank { min-width: 11mm; }
.scan { flex: none; width: 20mm; margin: 0; text-align: center; font-size: 9pt; line-height: 1; }
.scan svg { display: block; margin: 0 auto; }
.more { font-size: 11pt; margin-left: 4mm; }
.points { padding: 0; font-size: 9.5pt; line-height: 1.12; }
.points li { display: inline; margin-right: 4mm; }
.piles { margin-top: 0.8mm; }
.grid { white-space: nowrap; }
.points svg { display: inline-block; vertical-align: -0.6mm; margin-right: 1mm; }
.run-in { margin: 0.8mm 0; }
.order { display: grid; grid-template-columns: 0.85fr 1.5fr 1fr; column-gap: 4mm; font-size: 9pt; line-height: 1.1; margin-top: 0.6mm; }
.order h3 { font-size: 10.5pt; margin: 0 0 0.3mm; border-bottom: 1pt solid #000; }
.captain .order ul { padding-left: 4mm; margin: 0; }
.captain .caution { font-size: 9pt; line-height: 1.1; padding: 0.6mm 0 0; margin: 0; border: 0; }
.letter h2 { font-size: 10pt; margin: 0.4mm 0 0.1mm; }
.letter .emergency { margin-bottom: 0.6mm; }
.letter .emergency .call { font-size: 12pt; }
.letter .come { font-size: 10.5pt; }
.captain .points { font-size: 9pt; }
.letter .clock td { font-size: 11pt; line-height: 1; }
.letter table { line-height: 1.02; }
.captain .order, .captain .packs, .captain .jugs, .captain .weather { line-height: 1.03; }
.letter .top { min-height: 18.8mm; }
.letter .stay, .letter .run-in { margin: 0.2mm 0; font-size: 9.5pt; }
.captain .packs, .captain .jugs { font-size: 9pt; }
.weather { display: block; margin-top: 0.4mm; font-size: 9pt; line-height: 1.1; }
`;
