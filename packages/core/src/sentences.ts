/**
 * The face `@halfcup/core/sentences`: findings, checks and figures in words, by language and units.
 * @module @halfcup/core/sentences
 */

// Whose words: language, units and names
export { voiceOf } from './plan/voice.ts';
export { NO_NAMES, type Names, type Voice } from './text/voice.ts';

// Findings
export { findingInWords, findingSentence, sayOf } from './text/inWords.ts';
export type { Found } from './text/found.ts';
export type { Compared, Say } from './text/say.ts';
export type { QuantityKind } from './text/params/plan.ts';
export { findingSubject } from './text/subject.ts';
export type { Sentence } from './text/sentence.ts';
export type { Finding, LonLat, Severity, Where } from './finding.ts';

// Places
export { placeText } from './text/placeText.ts';
export type { NamedCrossing, NamedPlace } from './text/streetWords.ts';

// Maps of the ground
export { type MapSource, crossingText, mapCreditText } from './text/mapText.ts';

// Figures
export { prePourText } from './text/prePourText.ts';
export type { PouredCups } from './text/pourWords.ts';

// Checks
export { sourceText, themeText } from './text/checkTexts.ts';
export { type LimitRow, limitTable } from './text/limitTable.ts';
