/**
 * The face `@halfcup/core/sheets`: the papers of a race as HTML to be printed, from an analysis.
 */
export { type GridDigits, type GridReference, gridReference } from './export/gridReference.ts';
export { type CaptainOptions, captainSheet, captainSheets } from './export/sheets/captain.ts';
export { contextOf } from './export/sheets/context.ts';
export { cardSheet, cardSheets } from './export/sheets/card.ts';
export { type SheetFrame, type SheetOptions, pageHtml } from './export/sheets/frame.ts';
export { type Paper, pageBox } from './export/sheets/frameStyle.ts';
export { type PapersOptions, type PrintedPaper, indexPaper, papersOf } from './export/sheets/papers.ts';
export { type ReportInput, reportHtml } from './export/sheets/report.ts';
export { type ChosenText, LANGUAGES, textOf } from './export/text/languages.ts';
export type { SheetText } from './export/text/text.ts';
