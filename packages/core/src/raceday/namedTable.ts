/**
 * Tables that people fill in (RFC 4180; `;` or tab for the comma, as the header has it): columns by their heads in any
 * language of the papers, without case, accents or what joins words. Columns with other heads are told of and left out.
 */
import type { Finding } from '../finding.ts';
import { LIMITS } from '../limits.ts';
import { shortText } from '../text/found.ts';
import { tableLimit } from '../text/limitFinding.ts';
import type { YearParams } from '../text/params/year.ts';
import { type Cell, readDelimited } from '../delimited.ts';
import { yearFinding } from './yearFinding.ts';

/** One row with the cells of the columns that are known. */
export interface NamedRow<K extends string> {
  readonly line: number;
  readonly column: number;
  /** `undefined` where the table has no such column, or the row ends before it. */
  readonly cell: (key: K) => Cell | undefined;
}

export interface NamedTable<K extends string> {
  readonly rows: readonly NamedRow<K>[];
  readonly has: (key: K) => boolean;
  /** An error leaves its row out, or all rows. */
  readonly findings: readonly Finding[];
}

/** Names of a header that are shown. */
const SHOWN = 12;

export const plainHead = (head: string): string =>
  head
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

type Unread = YearParams['table-unread'];

const fault = (
  file: string,
  params: Unread,
  place: { readonly line?: number; readonly column?: number } = {},
): Finding =>
  yearFinding('table-unread', params, {
    severity: 'error',
    where: {
      file,
      ...(place.line === undefined ? {} : { line: place.line }),
      ...(place.column === undefined ? {} : { column: place.column }),
    },
  });

const NOTHING = { rows: [], has: () => false } as const;

/** Reads a table; `heads` by key, the first of each the name by which a missing column is asked for; `needs` must be there. */
export function readNamed<K extends string>(
  text: string,
  file: string,
  heads: Readonly<Record<K, readonly string[]>>,
  needs: readonly K[],
  reader: 'roster' | 'leftovers',
): NamedTable<K> {
  const { records, broken, past } = readDelimited(text, LIMITS[reader]);
  if (past !== null) return { ...NOTHING, findings: [tableLimit(reader, past, file)] };
  if (broken !== null) {
    const problem = broken.what === 'quote-open' ? 'openQuote' : 'afterQuote';
    return { ...NOTHING, findings: [fault(file, { problem }, broken)] };
  }
  const [header, ...body] = records;
  if (header === undefined) return { ...NOTHING, findings: [fault(file, { problem: 'noLine' })] };
  const known = new Map(
    (Object.keys(heads) as K[]).flatMap((key) => heads[key].map((head) => [plainHead(head), key] as const)),
  );
  const at = new Map<K, number>();
  const twice: Cell[] = [];
  const unknown: Cell[] = [];
  header.forEach((cell, k) => {
    const key = known.get(plainHead(cell.text));
    if (key === undefined) unknown.push(cell);
    else if (at.has(key)) twice.push(cell);
    else at.set(key, k);
  });
  const wrong = headFaults(
    header,
    twice,
    needs.filter((key) => !at.has(key)).map((key) => heads[key][0]!),
    file,
  );
  if (wrong.length > 0) return { ...NOTHING, findings: wrong };
  const bodyFaults = body.flatMap((row) => rowFaults(row, header.length, file));
  const rows = body
    .filter((row) => rowFaults(row, header.length, file).length === 0)
    .filter((row) => row.some(({ text: cell }) => cell.trim() !== ''))
    .map((row) => rowOf(row, at));
  const none = body.length === 0 ? [fault(file, { problem: 'noRows' })] : [];
  return { rows, has: (key) => at.has(key), findings: [...unknownNote(unknown, file), ...none, ...bodyFaults] };
}

const rowOf = <K extends string>(row: readonly Cell[], at: ReadonlyMap<K, number>): NamedRow<K> => ({
  line: row[0]!.line,
  column: row[0]!.column,
  cell: (key) => (at.has(key) ? row[at.get(key)!] : undefined),
});

function headFaults(
  header: readonly Cell[],
  twice: readonly Cell[],
  missing: readonly string[],
  file: string,
): Finding[] {
  const names = header.slice(0, SHOWN).map(({ text }) => shortText(text.trim()));
  const { line, column } = header[0]!;
  return [
    ...twice.map((cell) => fault(file, { problem: 'twice', column: shortText(cell.text.trim()) }, cell)),
    ...missing.map((name) =>
      fault(
        file,
        { problem: 'none', column: name, header: names, more: header.length - names.length },
        { line, column },
      ),
    ),
  ];
}

function rowFaults(row: readonly Cell[], width: number, file: string): Finding[] {
  const extra = row.slice(width).find(({ text }) => text.trim() !== '');
  return extra === undefined ? [] : [fault(file, { problem: 'tooMany', fields: row.length, header: width }, extra)];
}

function unknownNote(unknown: readonly Cell[], file: string): Finding[] {
  const named = unknown.filter(({ text }) => text.trim() !== '');
  const [first] = named;
  if (first === undefined) return [];
  const columns = named.slice(0, SHOWN).map(({ text }) => shortText(text.trim()));
  return [
    yearFinding(
      'table-column-unknown',
      { columns, more: named.length - columns.length },
      { severity: 'note', where: { file, line: first.line, column: first.column } },
    ),
  ];
}

/** A number that people write: digits, a point or a comma before decimals; `null` of an empty cell, `undefined` of anything else. */
export function writtenNumber(text: string): number | null | undefined {
  const bare = text.trim();
  if (bare === '') return null;
  return /^\d{1,7}(?:[.,]\d{1,3})?$/u.test(bare) ? Number(bare.replace(',', '.')) : undefined;
}

/** Faults reported one by one; the rest are counted. */
const REPORTED = 20;

/** Findings in the order of their lines; of very many errors the first, and how many more there are. */
export function inLines(findings: readonly Finding[], file: string): readonly Finding[] {
  const sorted = findings.toSorted((a, b) => (a.where.line ?? 0) - (b.where.line ?? 0));
  const errors = sorted.filter(({ severity }) => severity === 'error');
  const next = errors[REPORTED];
  if (next === undefined) return sorted;
  const rest = new Set(errors.slice(REPORTED));
  return [
    ...sorted.filter((finding) => !rest.has(finding)),
    fault(file, { problem: 'more', rows: rest.size }, next.where),
  ];
}
