/**
 * Finish times from a CSV file of past results: one column, found by the name in the header. Every field that is neither
 * a time nor a word for no finish is told with its place: a result that is misread shifts a whole day.
 */
import { type Finding, type Result, bad, good } from '../finding.ts';
import { type Seconds, describeValue } from '../units.ts';
import { type Broken, type Cell, readDelimited } from './delimited.ts';

/** Finish times in seconds, in the file's order, and how many rows have none. */
export interface PastTimes {
  readonly times: Seconds[];
  readonly leftOut: number;
}

/** What results write for who did not start, did not finish, was disqualified or was not timed. */
const NO_FINISH: ReadonlySet<string> = new Set(['', '-', '--', '–', '—', 'DNF', 'DNS', 'DSQ', 'DQ', 'DNC', 'NT']);

/** Faults told one by one; the rest are counted. */
const TOLD = 20;

const ACCEPTED = 'a time of more than 0 as H:MM:SS, MM:SS or seconds, or DNF, DNS or nothing for who did not finish';

/**
 * Seconds from "3:59:10", "59:10", "14350" or "3:59:10.5" (a comma for the point too, after colons); `null` for who has
 * no finish, `undefined` for what is neither.
 */
export function readFinish(text: string): number | null | undefined {
  const trimmed = text.trim();
  if (NO_FINISH.has(trimmed.toUpperCase())) return null;
  if (/^\d+(\.\d+)?$/u.test(trimmed)) return positive(Number(trimmed));
  const match = /^(?:(\d{1,3}):([0-5]?\d)|(\d{1,3})):([0-5]\d(?:[.,]\d+)?)$/u.exec(trimmed);
  if (match === null) return undefined;
  const [, hours = '0', minutes, alone = '0', seconds = '0'] = match;
  return positive(Number(hours) * 3600 + Number(minutes ?? alone) * 60 + Number(seconds.replace(',', '.')));
}

const positive = (seconds: number): number | undefined =>
  seconds > 0 && Number.isFinite(seconds) ? seconds : undefined;

/**
 * The times of one column of a CSV text; the header's name is compared without case and outer blanks. A note says how
 * many rows have no finish. Not ok: no such column or two of them, a row with more fields than the header or too few,
 * a field that is no time, an open quote, no time at all.
 * @example
 * ```ts
 * import { findingLine, readResults } from '@halfcup/core/raceday';
 *
 * const read = readResults('place,finish\n1,0:32:10\n2,0:33:00\n,DNF\n', 'finish', 'past.csv');
 * read.ok && read.value; // → { times: [1930, 1980], leftOut: 1 }
 *
 * readResults('place,finish\n1,quick\n', 'finish', 'past.csv').findings.map(findingLine); // → ['past.csv:2:3: found "quick"; expected a time of more than 0 as H:MM:SS, MM:SS or seconds, or DNF, DNS or nothing for who did not finish']
 * ```
 */
export function readResults(text: string, column: string, file: string): Result<PastTimes> {
  const { records, broken } = readDelimited(text);
  if (broken !== null) return bad([brokenFinding(broken, file)]);
  const [header, ...rows] = records;
  if (header === undefined)
    return bad([
      finding(
        'results-empty',
        'error',
        `found no line; expected a header with a column "${column}", and a row for each finisher`,
        { file },
      ),
    ]);
  const named = header.flatMap(({ text: name }, k) => (same(name, column) ? [k] : []));
  if (named.length !== 1) return bad([columnFinding(header, named, column, file)]);
  const cells = rows.map((row) => cellOf(row, header.length, named[0]!));
  const faults = cells.flatMap((cell) =>
    'message' in cell ? [finding('results-unread', 'error', cell.message, { file, ...cell.place })] : [],
  );
  if (faults.length > 0) return bad(firstOf(faults, file));
  const times = cells.flatMap((cell) => ('time' in cell && cell.time !== null ? [cell.time] : []));
  if (times.length === 0)
    return bad([
      finding(
        'results-empty',
        'error',
        `column "${column}" has no finish time in ${counted(rows.length)}; expected at least one`,
        { file },
      ),
    ]);
  return good(
    { times, leftOut: rows.length - times.length },
    leftOutNote(rows.length - times.length, rows.length, column, file),
  );
}

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();
const counted = (rows: number): string => `${rows} ${rows === 1 ? 'row' : 'rows'}`;
const finding = (code: string, severity: Finding['severity'], message: string, where: Finding['where']): Finding => ({
  code,
  severity,
  message,
  where,
});

type Read =
  | { readonly time: number | null }
  | { readonly message: string; readonly place: { readonly line: number; readonly column: number } };

function cellOf(row: readonly Cell[], width: number, index: number): Read {
  const { line, column } = row[0]!;
  const extra = row.slice(width).find(({ text }) => text.trim() !== '');
  if (extra !== undefined) {
    return {
      message: `found ${row.length} fields where the header has ${width}: put a field that holds a delimiter in quotes`,
      place: { line: extra.line, column: extra.column },
    };
  }
  const cell = row[index];
  if (cell === undefined)
    return {
      message: `found ${row.length} ${row.length === 1 ? 'field' : 'fields'} where the header has ${width}, so that the time is missing; leave it empty between delimiters for who did not finish`,
      place: { line, column },
    };
  const time = readFinish(cell.text);
  return time === undefined
    ? {
        message: `found ${describeValue(cell.text)}; expected ${ACCEPTED}`,
        place: { line: cell.line, column: cell.column },
      }
    : { time };
}

function brokenFinding({ what, line, column }: Broken, file: string): Finding {
  const message =
    what === 'quote-open'
      ? 'found a quote that is never closed; expected a closing quote, and quotes inside a field doubled'
      : 'found text after a closing quote; expected a delimiter or the end of the line, and quotes inside a field doubled';
  return finding('results-unread', 'error', message, { file, line, column });
}

function columnFinding(header: readonly Cell[], named: readonly number[], column: string, file: string): Finding {
  if (named.length > 1) {
    const second = header[named[1]!]!;
    return finding(
      'results-column',
      'error',
      `found ${named.length} columns named "${column.trim()}"; expected one: rename the others`,
      { file, line: second.line, column: second.column },
    );
  }
  const known = header.map(({ text }) => `"${text.trim()}"`).join(', ');
  return finding(
    'results-column',
    'error',
    `found no column "${column.trim()}"; the header has ${known.length > 500 ? `${known.slice(0, 500)}…` : known}`,
    { file, line: header[0]!.line, column: 1 },
  );
}

function firstOf(faults: readonly Finding[], file: string): readonly Finding[] {
  if (faults.length <= TOLD) return faults;
  const { line, column } = faults[TOLD]!.where;
  return [
    ...faults.slice(0, TOLD),
    finding('results-unread', 'error', `and ${faults.length - TOLD} more rows from here on that cannot be read`, {
      file,
      line: line!,
      column: column!,
    }),
  ];
}

function leftOutNote(leftOut: number, rows: number, column: string, file: string): readonly Finding[] {
  if (leftOut === 0) return [];
  return [
    finding(
      'results-left-out',
      'note',
      `${leftOut} of ${counted(rows)} ${leftOut === 1 ? 'has' : 'have'} no finish time in column "${column}" (DNF, DNS or empty) and ${leftOut === 1 ? 'is' : 'are'} left out`,
      { file },
    ),
  ];
}
