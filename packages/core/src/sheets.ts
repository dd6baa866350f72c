/**
 * The face `@halfcup/core/sheets`: the papers of a race as HTML to be printed, from an analysis.
 * @module @halfcup/core/sheets
 */

// All papers, and the page that names them
export { type PapersOptions, type PrintedPaper, indexPaper, papersOf } from './export/sheets/papers.ts';

// One paper
export { type CaptainOptions, captainSheet } from './export/sheets/captain.ts';
export { cardSheet } from './export/sheets/card.ts';
export { type ReportInput, reportHtml } from './export/sheets/report.ts';

// What they are printed with
export type { SheetOptions } from './export/sheets/frame.ts';
export type { Paper } from './export/sheets/frameStyle.ts';
export { type Language, LANGUAGES, languageNote } from './export/text/languages.ts';
export { contextOf } from './export/sheets/context.ts';
