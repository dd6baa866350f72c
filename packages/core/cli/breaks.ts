/** Texts broken into lines that fit, by any measure of how wide a text is. A number keeps its unit beside it. */

/** How much room a text takes. */
export type Measure = (text: string) => number;

/** Stands for a space that must not break while lines are broken; no text needs it. */
const GLUE = '\uE000';

/** Names from files may hold line breaks, control characters and turns of the reading order, which would break a table or a terminal. */
export const oneLine = (text: string): string => text.replaceAll(/[\s\p{Cc}\u202A-\u202E\u2066-\u2069]+/gu, ' ').trim();

const UNIT = /(?<=\d) (?=(?:km|mi|m|yd|ft|l|gal|kg|lb|%)(?![\p{L}\p{N}]))|(?<=\d) (?=±)|(?<=±) (?=\d)/gu;

/** A text in which numbers hold on to their units. */
export const glued = (text: string): string => text.replaceAll(UNIT, GLUE);

/** A text that does not break but after a comma or a semicolon. */
export const solid = (text: string): string => text.replaceAll(/(?<![,;]) /gu, GLUE);

/** Takes the glue out again. */
export const unglued = (text: string): string => text.replaceAll(GLUE, ' ');

/** Lines of at most `width`, broken at spaces; a longer word stands alone, whole. */
export function brokenBy(measure: Measure, text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || measure(longer) <= width) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

/** A paragraph whose lines fit; `hang` stands before every line but the first. */
export const paragraphBy = (measure: Measure, text: string, width: number, hang: string = ''): string =>
  unglued(brokenBy(measure, glued(text), width - hang.length).join(`\n${hang}`));
