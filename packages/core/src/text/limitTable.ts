/** The table of limits in words, for the help of the command line and for the documents. */
import { type Counted, type Limits, LIMITS, type Reader } from '../limits.ts';
import { NOUNS, SUBJECTS, isSize } from './en/findings/limits.ts';
import { PLAIN_SAY } from './sentence.ts';

/** The limits of one reader. */
export interface LimitRow {
  readonly reader: Reader;
  /** What is read: "plan". */
  readonly title: string;
  /** What it may hold at most: "500,000 points". */
  readonly most: readonly string[];
}

/**
 * What each reader takes at most, in English, in the order of `LIMITS`.
 * @example
 * ```ts
 * import { limitTable } from '@halfcup/core/sentences';
 * limitTable().find(({ reader }) => reader === 'zip')?.most[0]; // → '128 MB'
 * ```
 */
export const limitTable = (): readonly LimitRow[] =>
  (Object.keys(LIMITS) as Reader[]).map((reader) => ({
    reader,
    title: SUBJECTS[reader].replace(/^The /u, ''),
    most: (Object.entries(LIMITS[reader] as Limits) as [Counted, number][]).map(
      ([what, most]) => `${PLAIN_SAY.count(isSize(what) ? most / 1_000_000 : most)} ${NOUNS[what]}`,
    ),
  }));
