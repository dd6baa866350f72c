/**
 * Text as it leaves for people: no control character but a line's end, no mark that turns the reading order. They come in
 * names, values and file names, and could repaint a terminal or hide what is said. Each is shown as its number: "\u{9b}".
 * Colours are Halfcup's own, the few sequences that `screen.ts` paints with. Source: ECMA-48, C0 and C1; Unicode UAX #9.
 */

/** What `paint` writes: bold, three colours, and their ends (ECMA-48, select graphic rendition). */
// oxlint-disable-next-line no-control-regex
const OWN = /\u001b\[(?:1|22|31|33|36|39)m/gu;

// oxlint-disable-next-line no-control-regex
const HARMFUL = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069\u2028\u2029]/gu;

const numbered = (sign: string): string => (sign === '\t' ? ' ' : `\\u{${sign.codePointAt(0)!.toString(16)}}`);

const withoutHarm = (text: string): string => text.replaceAll(HARMFUL, numbered);

/** For a screen; `coloured`: Halfcup's own colours stay. */
export function cleanText(text: string, coloured: boolean): string {
  if (!coloured) return withoutHarm(text);
  let at = 0;
  let clean = '';
  for (const { 0: own, index } of text.matchAll(OWN)) {
    clean += withoutHarm(text.slice(at, index)) + own;
    at = index + own.length;
  }
  return clean + withoutHarm(text.slice(at));
}

/** JSON in which such characters stand escaped; the value is the same. */
export const cleanJson = (text: string): string =>
  text.replaceAll(HARMFUL, (sign) =>
    sign === '\t' || sign === '\r' ? sign : `\\u${sign.codePointAt(0)!.toString(16).padStart(4, '0')}`,
  );

/** Data for other programs, as they are but for a carriage return alone, which would take a terminal back over its line: it ends one. */
export const cleanData = (text: string): string => text.replaceAll(/\r(?!\n)/gu, '\n');
