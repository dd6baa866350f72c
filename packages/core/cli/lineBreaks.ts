/** Texts broken into lines that fit a terminal. Names come from files, so that characters may be wide, or marks on others. */
import { max } from 'd3-array';
import stringWidth from 'string-width';
import { brokenBy, paragraphBy } from './breaks.ts';

/** Columns of a terminal that a text takes. */
export const widthOf = (text: string): number => stringWidth(text);

/** The widest piece that may not be broken. */
export const widestWord = (text: string): number => max(text.split(' '), widthOf) ?? 0;

/** Lines of at most `width`, broken at spaces; a longer word stands alone, whole. */
export const brokenLines = (text: string, width: number): readonly string[] => brokenBy(widthOf, text, width);

/** A paragraph whose lines fit; `hang` stands before every line but the first. */
export const paragraph = (text: string, width: number, hang: string = ''): string =>
  paragraphBy(widthOf, text, width, hang);
