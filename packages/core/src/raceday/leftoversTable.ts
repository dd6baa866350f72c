/** Leftover forms that come back as a table: a row a station, columns by the heads of any language of the papers. */
import { type Finding, type Result, bad, good } from '../finding.ts';
import { LEFT_KEYS, type LeftKey } from '../kinds.ts';
import { findById } from '../plan/lookups.ts';
import type { Plan } from '../plan/plan.ts';
import { isPlan } from '../plan/shapes.ts';
import { year as english } from '../text/en/year.ts';
import { year as spanish } from '../text/es/year.ts';
import { foundOf } from '../text/found.ts';
import type { YearParams } from '../text/params/year.ts';
import { aText, listOf, want } from '../wants.ts';
import type { Cell } from '../delimited.ts';
import { type SentDay, type Used, isSentDay, usedOfTexts } from './leftovers.ts';
import { type NamedRow, inLines, readNamed } from './namedTable.ts';
import { stationNamed } from './stationNamed.ts';
import { yearFinding } from './yearFinding.ts';

/** What was used at a station, by its id. */
export interface StationUsed {
  readonly station: string;
  readonly used: Used;
}

type Column = LeftKey | 'station' | 'name';

const headsOf = (of: (words: typeof english) => string, ...more: string[]): string[] => [
  of(english),
  of(spanish),
  ...more,
];

const HEADS: Readonly<Record<Column, readonly string[]>> = {
  station: headsOf(({ station }) => station, 'id'),
  name: headsOf(({ name }) => name),
  ...(Object.fromEntries(LEFT_KEYS.map((key) => [key, headsOf(({ left }) => left[key])])) as Record<LeftKey, string[]>),
};

/**
 * What was used, by the leftover forms of a table (`leftoversCsv` makes an empty one). A row with a fault is left out, its place
 * told by line and column; the others come in. Rows without counts are no faults. Not ok where no row can be used.
 * @example
 * ```ts
 * import { readPlan } from '@halfcup/core';
 * import { findingLine, readLeftovers } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier" }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004], "serves": ["water"] }]
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const days = [{ id: 's1', packs: [{ kind: 'cups', need: 480, pack: 100, count: 5 }, { kind: 'waterJug', need: 50, pack: 4, count: 13 }] }] as const;
 * const used = readLeftovers('station;packs of cups left;loose cups left\ns1;1;30\n', 'left.csv', read.value.plan, days);
 * used.ok && used.value; // → [{ station: 's1', used: { water: 370 } }]
 * const wrong = readLeftovers('station,packs of cups left\ns1,seven\n', 'left.csv', read.value.plan, days);
 * wrong.findings.map(findingLine); // → ['left.csv:2:4: “seven” is no number of packs of cups left. It should be a number from 0, or empty where nobody counted.']
 * ```
 */
export function readLeftovers(
  text: string,
  file: string,
  plan: Plan,
  days: readonly SentDay[],
): Result<readonly StationUsed[]> {
  want('readLeftovers', 'text', aText, text);
  want('readLeftovers', 'file', aText, file);
  want('readLeftovers', 'plan', isPlan, plan);
  want('readLeftovers', 'days', listOf(isSentDay), days);
  const table = readNamed<Column>(text, file, HEADS, ['station'], 'leftovers');
  const findings: Finding[] = [...table.findings];
  const taken = new Map<string, number>();
  const used: StationUsed[] = [];
  for (const row of table.rows) {
    const read = usedOfRow(row, file, plan, days, taken);
    findings.push(...read.findings);
    if (read.ok && read.value !== null) used.push(read.value);
  }
  const wrong = findings.some(({ severity }) => severity === 'error');
  const told = inLines(findings, file);
  if (used.length > 0) return good(used, told);
  const none = yearFinding('leftovers-unread', { problem: 'noCounts' }, { severity: 'error', where: { file } });
  return bad(wrong ? told : [...told, none]);
}

type Row = NamedRow<Column>;

function usedOfRow(
  row: Row,
  file: string,
  plan: Plan,
  days: readonly SentDay[],
  taken: Map<string, number>,
): Result<StationUsed | null> {
  const at = (cell: Cell | undefined): Finding['where'] => ({
    file,
    line: cell?.line ?? row.line,
    column: cell?.column ?? row.column,
  });
  const own = row.cell('station');
  const fault = (params: YearParams['leftovers-unread'], cell: Cell | undefined = own): Finding =>
    yearFinding('leftovers-unread', params, { severity: 'error', where: at(cell) });
  const cells = LEFT_KEYS.map((key) => ({ key, cell: row.cell(key) })).filter(
    ({ cell }) => cell !== undefined && cell.text.trim() !== '',
  );
  if (own === undefined || own.text.trim() === '') {
    return cells.length === 0 ? good(null) : bad([fault({ problem: 'noStation' })]);
  }
  const station = stationNamed(plan, own.text);
  if (!station.ok)
    return bad([fault({ problem: 'unknownStation', found: foundOf(own.text.trim()), ...station.known })]);
  if (cells.length === 0) return good(null);
  const before = taken.get(station.id);
  if (before !== undefined) return bad([fault({ problem: 'twice', station: station.id, line: before })]);
  taken.set(station.id, row.line);
  const day = findById(days, station.id) ?? { id: station.id, packs: [] };
  const texts = Object.fromEntries(cells.map(({ key, cell }) => [key, cell!.text]));
  const result = usedOfTexts(plan, day, texts);
  if (!result.ok) {
    return bad(
      result.findings.map((finding) => ({
        ...finding,
        where: { ...finding.where, ...at(row.cell((finding.where.item ?? 'station') as Column) ?? own) },
      })),
    );
  }
  return good({ station: station.id, used: result.value });
}
