/**
 * A list of stations, as people keep it in a spreadsheet: one station a row, columns by their heads. A row that cannot be
 * used is left out and reported by row and column; the good rows come in.
 */
import { readDelimited, type Cell } from '../../delimited.ts';
import { type Finding, type Result, type Where, bad, good } from '../../finding.ts';
import { LIMITS } from '../../limits.ts';
import { shortText } from '../../text/found.ts';
import { tableLimit } from '../../text/limitFinding.ts';
import type { ListParams } from '../../text/params/list.ts';
import { type Shape, aText, finite, listOf, maybe, oneOf, recordOf, want } from '../../wants.ts';
import { planFinding } from '../fault.ts';
import { type Head, type ListColumn, headOf, isHeader } from './heads.ts';
import { type Commas, commasOf } from './numbers.ts';
import type { ListCourse, ListedStation, StationListOptions } from './listed.ts';
import { type Row, stationOf } from './row.ts';
import { numberPart } from './values.ts';

const COLUMNS: readonly ListColumn[] = [
  'id',
  'number',
  'name',
  'course',
  'distance',
  'lon',
  'lat',
  'side',
  'serves',
  'tables',
  'water',
  'sportsDrink',
  'gel',
  'boxes',
  'width',
  'captain',
  'phone',
  'radio',
  'note',
];

const isOptions: Shape = recordOf<StationListOptions>('options { file, units, courses }', {
  file: aText,
  units: oneOf('metric', 'imperial'),
  courses: listOf(
    recordOf<ListCourse>('a course { id, name }', {
      id: aText,
      name: aText,
      start: maybe(finite),
      length: maybe(finite),
    }),
  ),
  columns: maybe(listOf(oneOf(...COLUMNS))),
});

/**
 * The stations of a list: CSV with commas or semicolons, or rows with tabs, with heads in English or Spanish, in any order:
 * name, course, distance or lon and lat, side, serves, tables (all of them, or water, sports drink and gel apart), boxes,
 * width, captain, phone, radio, note. Distances without a unit are in that of the head, else in km or miles by `units`.
 * Findings: warnings by row for rows that are left out; notes for what was assumed. Not ok: no row that can be used as a
 * header and no `columns`, no column for the place, a column twice, an open quote, no rows.
 * @example
 * ```ts
 * import { readStationList } from '@halfcup/core/plan';
 *
 * const list = readStationList('Name;Distance;Side\nMill;5,2;left\nPier;far;left\n', {
 *   file: 'list.csv', units: 'metric', courses: [{ id: 'full', name: 'Full' }],
 * });
 * list.ok && list.value; // → [{ row: 2, station: { name: 'Mill', on: { course: 'full', measure: '5.2 km', side: 'left' } } }]
 * list.findings.map(({ message }) => message); // → ['Row 3, Distance: “far” is not a course distance. It should be a number or a length such as 5.2 km. The row was left out.']
 * ```
 */
export function readStationList(text: string, options: StationListOptions): Result<readonly ListedStation[]> {
  want('readStationList', 'text', aText, text);
  want('readStationList', 'options', isOptions, options);
  const { file } = options;
  const { records, broken, past } = readDelimited(text, LIMITS.list);
  if (past !== null) return bad([tableLimit('list', past, file)]);
  if (broken !== null) {
    const problem = broken.what === 'quote-open' ? 'openQuote' : 'afterQuote';
    return bad([error('list-unread', { problem }, { file, line: broken.line, column: broken.column })]);
  }
  const [first] = records;
  if (first === undefined) return bad([error('list-unread', { problem: 'empty' }, { file })]);
  const heads = headsOf(first, options);
  if (!heads.ok) return heads;
  const headed = isHeader(first);
  const rows = (headed ? records.slice(1) : records)
    .map((cells, k) => ({ cells, row: k + (headed ? 2 : 1) }))
    .filter(({ cells }) => cells.some((cell) => cell.text.trim() !== ''));
  if (rows.length === 0) return bad([error('list-unread', { problem: 'noRows' }, { file })]);
  const read = rows.map(({ cells, row }) => stationOf(rowOf(cells, row, heads.value, rows), options));
  const stations = read.flatMap((one) => (one.ok ? [one.value.listed] : []));
  return good(stations, [
    ...heads.findings,
    ...read.flatMap(({ findings }) => findings),
    ...(['side', 'tables'] as const).flatMap((problem) => {
      const count = read.filter((one) => one.ok && one.value.assumed.includes(problem)).length;
      return count === 0
        ? []
        : [planFinding('list-assumed', { problem, rows: count }, { severity: 'note', where: { file } })];
    }),
  ]);
}

/**
 * The heads of a list that are understood, as they are written and in their order; none where its first row names no columns.
 * @example
 * ```ts
 * import { listColumns } from '@halfcup/core/plan';
 * listColumns('Name;Distance;Tent;Captain'); // → ['Name', 'Distance', 'Captain']
 * ```
 */
export function listColumns(text: string): readonly string[] {
  want('listColumns', 'text', aText, text);
  const [first = []] = readDelimited(text, LIMITS.list).records;
  return isHeader(first)
    ? first.flatMap((cell) => (headOf(cell.text) === null ? [] : [shortText(cell.text.trim())]))
    : [];
}

const error = <C extends 'list-unread' | 'list-heads'>(code: C, params: ListParams[C], where: Where): Finding =>
  planFinding(code, params as never, { severity: 'error', where });

type Heads = readonly (Head | null)[];

function headsOf(first: readonly Cell[], { file, columns }: StationListOptions): Result<Heads> {
  const { line, column } = first[0]!;
  if (!isHeader(first)) {
    if (columns !== undefined) return good(columns.map((one) => ({ column: one })));
    return bad([error('list-heads', { problem: 'none' }, { file, line, column })]);
  }
  const heads = first.map(({ text }) => headOf(text));
  const twice = first.find(
    (_, k) => heads[k] !== null && heads.findIndex((head) => head?.column === heads[k]?.column) < k,
  );
  if (twice !== undefined) {
    const params = { problem: 'twice', column: shortText(twice.text.trim()) } as const;
    return bad([error('list-heads', params, { file, line: twice.line, column: twice.column })]);
  }
  const has = (one: ListColumn): boolean => heads.some((head) => head?.column === one);
  if (!has('distance') && !(has('lon') && has('lat')))
    return bad([error('list-heads', { problem: 'noPlace' }, { file, line, column })]);
  return good(heads, unusedNote(first, heads, file));
}

const NAMED = 5;

function unusedNote(first: readonly Cell[], heads: Heads, file: string): Finding[] {
  const unused = first.filter(({ text }, k) => heads[k] === null && text.trim() !== '');
  const [cell] = unused;
  if (cell === undefined) return [];
  const columns = unused.slice(0, NAMED).map(({ text }) => shortText(text.trim()));
  return [
    planFinding(
      'list-heads',
      { problem: 'unused', columns, more: unused.length - columns.length },
      { severity: 'note', where: { file, line: cell.line, column: cell.column } },
    ),
  ];
}

function rowOf(
  cells: readonly Cell[],
  row: number,
  heads: Heads,
  rows: readonly { readonly cells: readonly Cell[] }[],
): Row {
  const found = new Map<ListColumn, Cell & { readonly head: Head; readonly commas: Commas }>();
  heads.forEach((head, k) => {
    const cell = cells[k];
    if (head === null || cell === undefined || cell.text.trim() === '') return;
    found.set(head.column, { ...cell, head, commas: commasOfColumn(rows, k) });
  });
  const extra = cells.slice(heads.length).find(({ text }) => text.trim() !== '');
  return { row, cells: found, first: cells[0]!, extra, fields: cells.length, header: heads.length };
}

const known = new WeakMap<readonly object[], Map<number, Commas>>();

/** Worked out once for each column. */
function commasOfColumn(rows: readonly { readonly cells: readonly Cell[] }[], k: number): Commas {
  const columns = known.get(rows) ?? new Map<number, Commas>();
  known.set(rows, columns);
  const commas = columns.get(k) ?? commasOf(rows.map(({ cells }) => numberPart(cells[k]?.text ?? '')));
  columns.set(k, commas);
  return commas;
}
