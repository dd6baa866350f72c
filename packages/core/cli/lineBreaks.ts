/** Texts broken into lines that fit. A number keeps its unit beside it. */
import stringWidth from 'string-width';

/** Stands for a space that must not break while lines are broken; no text needs it. */
const GLUE = '\uE000';

/** Columns of a terminal that a text takes. */
export const widthOf = (text: string): number => stringWidth(text);

/** Names from files may hold line breaks, control characters and turns of the reading order, which would break a table or a terminal. */
export const oneLine = (text: string): string => text.replaceAll(/[\s\p{Cc}\u202A-\u202E\u2066-\u2069]+/gu, ' ').trim();

const UNIT = /(?<=\d) (?=(?:km|mi|m|yd|ft|l|gal|kg|lb|%)(?![\p{L}\p{N}]))|(?<=\d) (?=±)|(?<=±) (?=\d)/gu;

/** A text in which numbers hold on to their units. */
export const glued = (text: string): string => text.replaceAll(UNIT, GLUE);

/** A text that does not break but after a comma or a semicolon. */
export const solid = (text: string): string => text.replaceAll(/(?<![,;]) /gu, GLUE);

/** Takes the glue out again. */
export const unglued = (text: string): string => text.replaceAll(GLUE, ' ');

/** The widest piece that may not be broken. */
export const widestWord = (text: string): number => Math.max(0, ...text.split(' ').map(widthOf));

/** Lines of at most `width`, broken at spaces; a longer word stands alone, whole. */
export function brokenLines(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || widthOf(longer) <= width) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

/** A paragraph whose lines fit; `hang` stands before every line but the first. */
export function paragraph(text: string, width: number, hang: string = ''): string {
  const lines = brokenLines(glued(text), width - hang.length);
  return unglued(lines.join(`\n${hang}`));
}
