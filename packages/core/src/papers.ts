/**
 * The face `@halfcup/core/papers`: the papers of a race as HTML to be printed, from an analysis. `@halfcup/core/sheets`, as it was
 * called before, is the same.
 * @module @halfcup/core/papers
 */

// All papers, and the page that names them
export { type PapersOptions, type PrintedPaper, indexPaper, papersOf } from './papers/papers.ts';

// One paper
export { type CaptainOptions, captainSheet } from './papers/captain.ts';
export { cardSheet } from './papers/card.ts';
export { type StationDrawing, type StationDrawingOptions, stationDrawing } from './papers/stationDrawing.ts';
export type { DrawingLook, DrawingSize } from './papers/layoutDrawing.ts';
export { type ReportInput, reportHtml } from './papers/report.ts';

// Lists and forms as CSV, headed in the language of the papers
export { crewCsv, orderCsv } from './export/yearCsv.ts';
export { leftoversCsv } from './export/leftoversCsv.ts';

// What they are printed with
export type { SheetOptions } from './papers/frame.ts';
export type { Paper } from './papers/frameStyle.ts';
export { type Language, LANGUAGES, languageNote } from './text/languages.ts';
export { contextOf, drawingJson } from './papers/context.ts';
