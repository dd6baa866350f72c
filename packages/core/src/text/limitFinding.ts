/** Makes the finding that a limit of a reader is passed. */
import type { PastTable } from '../delimited.ts';
import type { Finding, Where } from '../finding.ts';
import { type Counted, type LimitTable, type Limits, LIMITS, type Reader } from '../limits.ts';
import { limits } from './en/findings/limits.ts';
import type { LimitParams } from './params/limits.ts';
import { findingMaker, type Maker } from './sentence.ts';

const limitMaker: Maker<LimitParams> = findingMaker(limits);

/** What a reader has limits on. */
export type LimitOf<R extends Reader> = keyof LimitTable[R] & Counted;

/** Readers of tables. */
export type TableReader = 'results' | 'list' | 'roster' | 'leftovers';

/** An error: so much was found (absent: more than the limit), what the reader takes at most, and what to do. */
export const limitFinding = <R extends Reader>(reader: R, what: LimitOf<R>, where: Where, found?: number): Finding =>
  limitMaker(
    'past-limit',
    { reader, what, most: (LIMITS[reader] as Limits)[what]!, ...(found === undefined ? {} : { found }) },
    { severity: 'error', where },
  );

/** The same of a table. */
export const tableLimit = (reader: TableReader, { what, found, line, column }: PastTable, file: string): Finding =>
  limitFinding(reader, what, what === 'bytes' ? { file } : { file, line, column }, found);

/** That only so many problems are listed; only the file of the last of them is its place. */
export const moreProblems = (listed: number, { file }: Where): Finding =>
  limitMaker('more-problems', { listed }, { severity: 'error', where: file === undefined ? {} : { file } });
