/**
 * Finish times from a CSV file of past results: one column, found by the name in the header. Every field that is neither
 * a time nor a word for no finish is reported with its place: a result that is misread shifts a whole day.
 */
import { type Finding, type Result, bad, good } from '../finding.ts';
import { foundOf, shortText } from '../text/found.ts';
import type { RacedayParams } from '../text/params/raceday.ts';
import type { Seconds } from '../units.ts';
import { type Broken, type Cell, readDelimited } from '../delimited.ts';
import { LIMITS } from '../limits.ts';
import { tableLimit } from '../text/limitFinding.ts';
import { racedayFinding } from './racedayFinding.ts';
import { type PastSplit, isPastSplit, splitsOf } from './splitColumns.ts';
import { readFinish } from './readFinish.ts';
import { type Shape, aText, finite, listOf, maybe, recordOf, want } from '../wants.ts';

/** Finish times in seconds, in the file's order, and how many rows have none. */
export interface PastTimes {
  readonly times: Seconds[];
  readonly leftOut: number;
  /** Absent where no other column is named by a distance. */
  readonly splits?: readonly PastSplit[];
}

export const isPastTimes: Shape = recordOf<PastTimes>('the times that readResults gives', {
  times: listOf(finite),
  leftOut: finite,
  splits: maybe(listOf(isPastSplit)),
});

/** Faults reported one by one; the rest are counted. */
const REPORTED = 20;

/**
 * The times of one column of a CSV text; the header's name is compared without case and outer blanks. Other columns that
 * are named by a distance ("5 km", "10K", "Half") are splits. A note says how many rows have no finish, and which splits
 * cannot be used. Not ok: no such column or two of them, a row with more fields than the header or too few,
 * a field that is no time, an open quote, no time at all.
 * @example
 * ```ts
 * import { findingLine, readResults } from '@halfcup/core/raceday';
 *
 * const read = readResults('place,finish\n1,0:32:10\n2,0:33:00\n,DNF\n', 'finish', 'past.csv');
 * read.ok && read.value; // → { times: [1930, 1980], leftOut: 1 }
 *
 * readResults('place,finish\n1,quick\n', 'finish', 'past.csv').findings.map(findingLine); // → ['past.csv:2:3: “quick” is not a finish time. It should be a time over 0 as H:MM:SS, MM:SS or seconds, or DNF, DNS or nothing.']
 * ```
 */
export function readResults(text: string, column: string, file: string): Result<PastTimes> {
  want('readResults', 'text', aText, text);
  want('readResults', 'column', aText, column);
  want('readResults', 'file', aText, file);
  const { records, broken, past } = readDelimited(text, LIMITS.results);
  if (past !== null) return bad([tableLimit('results', past, file)]);
  if (broken !== null) return bad([brokenFinding(broken, file)]);
  const [header, ...rows] = records;
  const asked = shortText(column.trim());
  const empty = (params: RacedayParams['results-empty']): Finding =>
    racedayFinding('results-empty', params, { severity: 'error', where: { file } });
  if (header === undefined) return bad([empty({ problem: 'noLine', column: asked })]);
  const named = header.flatMap(({ text: name }, k) => (same(name, column) ? [k] : []));
  if (named.length !== 1) return bad([columnFinding(header, named, asked, file)]);
  const cells = rows.map((row) => cellOf(row, header.length, named[0]!));
  const faults = cells.flatMap((cell) =>
    'unread' in cell
      ? [racedayFinding('results-unread', cell.unread, { severity: 'error', where: { file, ...cell.place } })]
      : [],
  );
  if (faults.length > 0) return bad(firstOf(faults, file));
  const times = cells.flatMap((cell) => ('time' in cell && cell.time !== null ? [cell.time] : []));
  if (times.length === 0) return bad([empty({ problem: 'noTimes', column: asked, rows: rows.length })]);
  const leftOut = rows.length - times.length;
  const finishers = rows.filter((_, k) => 'time' in cells[k]! && cells[k].time !== null);
  const { splits, findings } = splitsOf(header, finishers, named[0]!, file);
  return good({ times, leftOut, ...(splits.length === 0 ? {} : { splits }) }, [
    ...leftOutNote(leftOut, rows.length, asked, file),
    ...findings,
  ]);
}

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

type Unread = RacedayParams['results-unread'];
type Read =
  | { readonly time: number | null }
  | { readonly unread: Unread; readonly place: { readonly line: number; readonly column: number } };

function cellOf(row: readonly Cell[], width: number, index: number): Read {
  const { line, column } = row[0]!;
  const counts = { fields: row.length, header: width };
  const extra = row.slice(width).find(({ text }) => text.trim() !== '');
  if (extra !== undefined)
    return { unread: { problem: 'tooMany', ...counts }, place: { line: extra.line, column: extra.column } };
  const cell = row[index];
  if (cell === undefined) return { unread: { problem: 'tooFew', ...counts }, place: { line, column } };
  const time = readFinish(cell.text);
  return time === undefined
    ? {
        unread: { problem: 'noTime', found: foundOf(cell.text) },
        place: { line: cell.line, column: cell.column },
      }
    : { time };
}

function brokenFinding({ what, line, column }: Broken, file: string): Finding {
  const problem = what === 'quote-open' ? 'openQuote' : 'afterQuote';
  return racedayFinding('results-unread', { problem }, { severity: 'error', where: { file, line, column } });
}

/** Names of a header that are shown. */
const SHOWN = 12;

function columnFinding(header: readonly Cell[], named: readonly number[], column: string, file: string): Finding {
  if (named.length > 1) {
    const second = header[named[1]!]!;
    return racedayFinding(
      'results-column',
      { problem: 'several', column, count: named.length },
      { severity: 'error', where: { file, line: second.line, column: second.column } },
    );
  }
  const names = header.slice(0, SHOWN).map(({ text }) => shortText(text.trim()));
  return racedayFinding(
    'results-column',
    { problem: 'none', column, header: names, more: header.length - names.length },
    { severity: 'error', where: { file, line: header[0]!.line, column: 1 } },
  );
}

function firstOf(faults: readonly Finding[], file: string): readonly Finding[] {
  if (faults.length <= REPORTED) return faults;
  const { line, column } = faults[REPORTED]!.where;
  const rows = faults.length - REPORTED;
  const facts = { severity: 'error', where: { file, line: line!, column: column! } } as const;
  return [...faults.slice(0, REPORTED), racedayFinding('results-unread', { problem: 'more', rows }, facts)];
}

function leftOutNote(leftOut: number, rows: number, column: string, file: string): readonly Finding[] {
  return leftOut === 0
    ? []
    : [racedayFinding('results-left-out', { leftOut, rows, column }, { severity: 'note', where: { file } })];
}
