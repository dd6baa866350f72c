/** Rows of the table of stations: searched, sorted, and as text for a spreadsheet. Pure. */
import type { Served, Units } from '@halfcup/core/plan';
import { lengthIn } from '@halfcup/core/units';
import type { OpenPlan } from '../store/store.ts';
import { SERVED_WORD } from '../../words.ts';
import { leadOf, stationRows, type StationRow } from './derive.ts';

export const SERVED_KINDS: readonly Served[] = ['gel', 'sportsDrink', 'water'];

export type SortKey = 'number' | 'name' | 'measure' | 'side';
export interface Sorting {
  readonly key: SortKey;
  readonly down: boolean;
}

const plain = (text: string): string => text.normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase();

/** Whether a station is meant by what somebody types: its number, a part of its name, what it serves, its side. */
function isMeant(open: OpenPlan, row: StationRow, query: string): boolean {
  const words = plain(query)
    .split(/\s+/u)
    .filter((word) => word !== '');
  const serves = open.analysis.plan.stations.find(({ id }) => id === row.id)?.serves ?? [];
  const text = plain([row.name, row.side, ...serves.map((kind) => SERVED_WORD[kind])].join(' '));
  return words.every((word) => (/^\d+$/u.test(word) && String(row.number) === word) || text.includes(word));
}

const ORDER: Readonly<Record<SortKey, (a: StationRow, b: StationRow) => number>> = {
  number: (a, b) => a.number - b.number,
  name: (a, b) => a.name.localeCompare(b.name, undefined, { numeric: true }),
  measure: (a, b) => (a.measure ?? Number.POSITIVE_INFINITY) - (b.measure ?? Number.POSITIVE_INFINITY),
  side: (a, b) => a.side.localeCompare(b.side),
};

/** Those that are meant, in their order; where that leaves two alike, by number. */
export function shownRows(open: OpenPlan, query: string, { key, down }: Sorting): readonly StationRow[] {
  const way = down ? -1 : 1;
  return stationRows(open)
    .filter((row) => isMeant(open, row, query))
    .toSorted((a, b) => way * ORDER[key](a, b) || a.number - b.number);
}

/** How many tables of a kind stand there now, by the plan, by race day or by the rule of one; nothing where it is not served. */
export function tablesNow(open: OpenPlan, id: string, kind: Served): number | undefined {
  const station = open.analysis.stations.find((one) => one.id === id);
  const item = station === undefined ? undefined : leadOf(station)?.items.find((one) => one.kind === kind);
  return item === undefined || station === undefined
    ? undefined
    : Math.round(Math.abs(item.to - item.from) / station.practice.tableLength);
}

/** A cell without what would begin another. */
const cell = (value: string | number): string => String(value).replaceAll(/[\t\r\n]+/gu, ' ');

function courseNameOf(open: OpenPlan, id: string): string {
  const station = open.analysis.stations.find((one) => one.id === id);
  const lead = station === undefined ? undefined : leadOf(station);
  return open.analysis.plan.courses.find((course) => course.id === lead?.course)?.name ?? '';
}

/** Rows as tab-separated text with heads, as spreadsheets take it: distances in km or mi, widths in m or ft; `readStationList` of core reads them. */
export function rowsText(open: OpenPlan, rows: readonly StationRow[], units: Units): string {
  const [far, near] = units === 'metric' ? (['km', 'm'] as const) : (['mi', 'ft'] as const);
  const heads = [
    'Number',
    'Name',
    `Distance (${far})`,
    'Side',
    'Serves',
    ...SERVED_KINDS.map((kind) => `${SERVED_WORD[kind]} tables`),
    `Width (${near})`,
    'Course',
  ];
  const lines = rows.map((row) => {
    const station = open.analysis.plan.stations.find(({ id }) => id === row.id);
    const { serves = [], width } = station ?? {};
    return [
      row.number,
      row.name,
      row.measure === null ? '' : lengthIn(row.measure, far).toFixed(3),
      row.side === 'unclear' ? '' : row.side,
      serves.map((kind) => SERVED_WORD[kind]).join(', '),
      ...SERVED_KINDS.map((kind) => station?.tables[kind] ?? ''),
      width === undefined ? '' : Number(lengthIn(width, near).toFixed(2)),
      courseNameOf(open, row.id),
    ];
  });
  return [heads, ...lines].map((line) => line.map(cell).join('\t')).join('\n');
}
