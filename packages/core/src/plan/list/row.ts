/** One row of a list of stations, read into a station as a plan writes it. */
import { type Cell, textOfCell } from '../../delimited.ts';
import { type Finding, type Result, bad, good } from '../../finding.ts';
import type { Served } from '../../kinds.ts';
import { foundOf, shortText } from '../../text/found.ts';
import type { ListParams } from '../../text/params/list.ts';
import { type LengthUnit, parseLength } from '../../units.ts';
import { planFinding } from '../fault.ts';
import { unknownWord } from '../nearest.ts';
import { type Head, type ListColumn, plainWord } from './heads.ts';
import type { Commas } from './numbers.ts';
import type { ListedStation, StationListOptions } from './listed.ts';
import {
  type Value,
  countValue,
  degreesValue,
  lengthValue,
  servesValue,
  sharedOut,
  sideValue,
  tablesValue,
} from './values.ts';

type RowCell = Cell & { readonly head: Head; readonly commas: Commas };

/** A row with its filled cells by column. */
export interface Row {
  readonly row: number;
  readonly cells: ReadonlyMap<ListColumn, RowCell>;
  readonly first: Cell;
  /** A cell beyond the header's last. */
  readonly extra: Cell | undefined;
  readonly fields: number;
  readonly header: number;
}

export interface ReadRow {
  readonly listed: ListedStation;
  readonly assumed: readonly ('side' | 'tables')[];
}

type Entry = Record<string, unknown>;
type Problem = ListParams['list-row'] extends infer P ? (P extends unknown ? Omit<P, 'row'> : never) : never;

/** Reads cells of a row and keeps what is wrong with them. */
class RowReader {
  readonly findings: Finding[] = [];
  readonly row: Row;
  readonly options: StationListOptions;
  constructor(row: Row, options: StationListOptions) {
    this.row = row;
    this.options = options;
  }

  fault(problem: Problem, { line, column }: Cell = this.row.first): void {
    const params = { row: this.row.row, ...problem } as ListParams['list-row'];
    this.findings.push(
      planFinding('list-row', params, { severity: 'warning', where: { file: this.options.file, line, column } }),
    );
  }

  /** The value of a column's cell; nothing where it is empty or wrong. */
  value<T>(column: ListColumn, read: (text: string, cell: RowCell) => Value<T>): T | undefined {
    const cell = this.row.cells.get(column);
    if (cell === undefined) return undefined;
    const value = read(cell.text, cell);
    if (value.ok) return value.value;
    const head = shortText(COLUMN_NAMES[column] ?? column);
    const at = { column: head, found: foundOf(cell.text.trim()) };
    this.fault(
      value.comma === true ? { problem: 'comma', ...at } : { problem: 'value', ...at, kind: value.kind },
      cell,
    );
    return undefined;
  }

  text(column: ListColumn): string | undefined {
    const cell = this.row.cells.get(column);
    return cell === undefined ? undefined : textOfCell(cell.text.trim());
  }

  length(column: 'distance' | 'width', unit: LengthUnit): string | undefined {
    return this.value(column, (text, { head, commas }) => lengthValue(text, head.unit ?? unit, commas, column));
  }
}

/** Column names in findings: those of the header are not always there. */
const COLUMN_NAMES: Partial<Record<ListColumn, string>> = {
  distance: 'Distance',
  width: 'Width',
  lon: 'Lon',
  lat: 'Lat',
  side: 'Side',
  serves: 'Serves',
  tables: 'Tables',
  water: 'Water',
  sportsDrink: 'Sports drink',
  gel: 'Gel',
  boxes: 'Boxes',
};

/** The station of a row; not ok, with each reason, where the row cannot be used. */
export function stationOf(row: Row, options: StationListOptions): Result<ReadRow> {
  const reader = new RowReader(row, options);
  if (row.extra !== undefined) reader.fault({ problem: 'fields', fields: row.fields, header: row.header }, row.extra);
  const assumed: ('side' | 'tables')[] = [];
  const place = placeOf(reader, assumed);
  const served = servedOf(reader, assumed);
  const station: Entry = {
    ...optional('id', reader.text('id')),
    ...optional('name', reader.text('name')),
    ...place,
    ...served,
    ...optional('boxes', reader.value('boxes', countValue)),
    ...optional('width', reader.length('width', options.units === 'imperial' ? 'ft' : 'm')),
    ...peopleOf(reader),
    ...optional('note', reader.text('note')),
  };
  if (reader.findings.length > 0) return bad(reader.findings);
  return good({ listed: { row: row.row, station }, assumed });
}

const optional = (key: string, value: unknown): Entry => (value === undefined ? {} : { [key]: value });

function peopleOf(reader: RowReader): Entry {
  const people = Object.assign(
    {},
    ...(['captain', 'phone', 'radio'] as const).map((key) => optional(key, reader.text(key))),
  ) as Entry;
  return Object.keys(people).length === 0 ? {} : { people };
}

function placeOf(reader: RowReader, assumed: ('side' | 'tables')[]): Entry {
  const { cells } = reader.row;
  const [lon, lat] = [
    reader.value('lon', (t) => degreesValue(t, 'lon')),
    reader.value('lat', (t) => degreesValue(t, 'lat')),
  ];
  const side = reader.value('side', sideValue);
  const measure = reader.length('distance', reader.options.units === 'imperial' ? 'mi' : 'km');
  if (cells.has('lon') !== cells.has('lat'))
    reader.fault({ problem: 'halfPlace' }, cells.get('lon') ?? cells.get('lat'));
  else if (cells.has('lon') && cells.has('distance')) reader.fault({ problem: 'twoPlaces' }, cells.get('distance'));
  else if (!cells.has('lon') && !cells.has('distance')) reader.fault({ problem: 'noPlace' });
  if (lon !== undefined && lat !== undefined) return { at: [lon, lat], ...optional('side', side) };
  if (measure === undefined) return {};
  const course = courseOf(reader, measure);
  if (side === undefined && !cells.has('side')) assumed.push('side');
  return { on: { course, measure, side: side ?? 'right' } };
}

function courseOf(reader: RowReader, measure: string): string {
  const { courses } = reader.options;
  const cell = reader.row.cells.get('course');
  const named = (text: string): boolean =>
    courses.some(({ id, name }) => [id, name].some((one) => plainWord(one) === plainWord(text)));
  if (cell !== undefined && !named(cell.text)) {
    const name = unknownWord(
      cell.text.trim(),
      courses.map((one) => one.name),
    );
    reader.fault({ problem: 'course', name }, cell);
    return '';
  }
  const course =
    cell === undefined
      ? courses[0]
      : (courses.find(({ id }) => plainWord(id) === plainWord(cell.text)) ??
        courses.find(({ name }) => plainWord(name) === plainWord(cell.text)));
  const metres = parseLength(measure);
  const { start = 0, length = Infinity, id = '' } = course ?? {};
  const at = reader.row.cells.get('distance');
  if (metres.ok && metres.value > length) reader.fault({ problem: 'past', measure: metres.value, length }, at);
  if (metres.ok && metres.value < start) reader.fault({ problem: 'before', measure: metres.value, start }, at);
  return id;
}

const KINDS = ['gel', 'sportsDrink', 'water'] as const;

/** What is served, and the tables for it: `serves`, else the kinds whose own columns are not empty. */
function servedOf(reader: RowReader, assumed: ('side' | 'tables')[]): Entry {
  const stated = reader.value('serves', servesValue);
  const own = KINDS.map((kind) => [kind, reader.value(kind, tablesValue)] as const);
  const counts = own.flatMap(([kind, value]) => (typeof value === 'number' ? [[kind, value] as const] : []));
  const taken = own.flatMap(([kind, value]) =>
    value === true || (typeof value === 'number' && value > 0) ? [kind] : [],
  );
  const serves: readonly Served[] | undefined = stated ?? (taken.length > 0 ? taken : undefined);
  const all = reader.value('tables', countValue);
  if (all !== undefined && counts.length === 0) {
    const among = serves ?? ['sportsDrink', 'water'];
    if (among.length > 1) assumed.push('tables');
    return { ...optional('serves', serves), tables: sharedOut(all, among) };
  }
  return { ...optional('serves', serves), ...(counts.length === 0 ? {} : { tables: Object.fromEntries(counts) }) };
}
