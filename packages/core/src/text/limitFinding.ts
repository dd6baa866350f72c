/** Makes the finding that a limit of a reader is passed. */
import type { PastTable } from '../delimited.ts';
import { type Finding, type Where, isWhere } from '../finding.ts';
import { type Counted, type LimitTable, type Limits, LIMITS, type Reader } from '../limits.ts';
import { limits } from './en/findings/limits.ts';
import type { LimitParams } from './params/limits.ts';
import { finite, maybe, oneOf, want } from '../wants.ts';
import { findingMaker, type Maker } from './sentence.ts';

const limitMaker: Maker<LimitParams> = findingMaker(limits);

/** What a reader has limits on. */
export type LimitOf<R extends Reader> = keyof LimitTable[R] & Counted;

/** Readers of tables. */
export type TableReader = 'results' | 'list' | 'roster' | 'leftovers';

/**
 * The finding that a limit is passed, an error: so much was found (absent: more than the limit), what the reader takes at most, and
 * what to do.
 * @example
 * ```ts
 * import { limitFinding } from '@halfcup/core/schemas';
 * limitFinding('zip', 'files', { file: 'plan.zip' }, 1200).message; // → 'The ZIP file has 1,200 files. It should have at most 1,000. Unpack it, and open only the plan and its files.'
 * ```
 */
export function limitFinding<R extends Reader>(reader: R, what: LimitOf<R>, where: Where, found?: number): Finding {
  want('limitFinding', 'reader', oneOf(...Object.keys(LIMITS)), reader);
  want('limitFinding', 'what', oneOf(...Object.keys(LIMITS[reader])), what);
  want('limitFinding', 'where', isWhere, where);
  want('limitFinding', 'found', maybe(finite), found);
  const most = (LIMITS[reader] as Limits)[what]!;
  const params = { reader, what, most, ...(found === undefined ? {} : { found }) };
  return limitMaker('past-limit', params, { severity: 'error', where });
}

/** The same of a table. */
export const tableLimit = (reader: TableReader, { what, found, line, column }: PastTable, file: string): Finding =>
  limitFinding(reader, what, what === 'bytes' ? { file } : { file, line, column }, found);

/** That only so many problems are listed; only the file of the last of them is its place. */
export const moreProblems = (listed: number, { file }: Where): Finding =>
  limitMaker('more-problems', { listed }, { severity: 'error', where: file === undefined ? {} : { file } });
