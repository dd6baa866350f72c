/** Splits of past results: the columns that are named by distances. */
import type { Finding } from '../finding.ts';
import { foundOf, shortText } from '../text/found.ts';
import type { RacedayParams } from '../text/params/raceday.ts';
import type { Metres, Seconds } from '../units.ts';
import { type Shape, aText, either, finite, listOf, oneOf, orNull, recordOf } from '../wants.ts';
import type { Cell } from '../delimited.ts';
import { racedayFinding } from './racedayFinding.ts';
import { readFinish } from './readFinish.ts';
import { splitPlaceOf } from './splitNames.ts';

/** Times of a column that is named by a distance. */
export interface PastSplit {
  /** The column's name. */
  readonly column: string;
  /** Metres from the start, or halfway of the course. */
  readonly at: Metres | 'half';
  /** Seconds from the start, one for each of the finish times; `null` where there is none. */
  readonly times: readonly (Seconds | null)[];
}

export const isPastSplit: Shape = recordOf<PastSplit>('a split', {
  column: aText,
  at: either(oneOf('half'), finite),
  times: listOf(orNull(finite)),
});

/** The splits of those rows that have a finish time; `finish`: index of the column of finish times. */
export function splitsOf(
  header: readonly Cell[],
  rows: readonly (readonly Cell[])[],
  finish: number,
  file: string,
): { readonly splits: readonly PastSplit[]; readonly findings: readonly Finding[] } {
  const named = header.flatMap(({ text }, index) => {
    const at = index === finish ? null : splitPlaceOf(text);
    return at === null ? [] : [{ index, at, column: shortText(text.trim()) }];
  });
  const findings: Finding[] = [];
  const say = (problem: RacedayParams['splits-left-out'], place: Partial<Cell>): void => {
    const { line, column } = place;
    const where = { file, ...(line === undefined || column === undefined ? {} : { line, column }) };
    findings.push(racedayFinding('splits-left-out', problem, { severity: 'note', where }));
  };
  const splits = named.flatMap(({ index, at, column }): PastSplit[] => {
    const twin = named.find((other) => other.index !== index && other.at === at);
    if (twin !== undefined) {
      if (twin.index > index) say({ problem: 'twice', columns: [column, twin.column] }, header[twin.index]!);
      return [];
    }
    const times = rows.map((row) => readFinish(row[index]?.text ?? ''));
    const unread = times.flatMap((time, k) => (time === undefined ? [rows[k]![index]!] : []));
    const used = unread.length * 2 <= times.length;
    const [first] = unread;
    if (first !== undefined)
      say({ problem: 'unread', column, rows: unread.length, found: foundOf(first.text), used }, first);
    return used && times.some((time) => typeof time === 'number')
      ? [{ column, at, times: times.map((time) => time ?? null) }]
      : [];
  });
  return { splits, findings };
}
