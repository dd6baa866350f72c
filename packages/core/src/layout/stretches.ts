/**
 * Where each item stands along the course, in running order: sign, gel, sports drink, water, trash.
 * Distances are the practice's; the first table is the upstream end of the gel tables, else of the
 * drink tables.
 */
import type { ItemKind, PlanStation, Practice, Served } from '../plan/plan.ts';
import type { StationDay } from '../raceday/day.ts';

/** One item along the course, from the pin's foot, metres, negative upstream. */
export interface Stretch {
  readonly kind: ItemKind;
  readonly from: number;
  readonly to: number;
}

/** Tables by kind, 0 where a kind is not served. */
export type TableCounts = { readonly [kind in Served]: number };

/** What race day asks of the layout of one station: see `StationDay`. */
export type DayNeeds = Pick<StationDay, 'tables' | 'boxes'> & { readonly crew: Pick<StationDay['crew'], 'handOut'> };

/** Tables of a station: the plan's number, else race day's, else 1 of each kind served. */
export function tableCounts(station: PlanStation, day?: DayNeeds): TableCounts {
  const count = (kind: Served): number =>
    station.serves.includes(kind) ? (station.tables[kind] ?? day?.tables[kind] ?? 1) : 0;
  return { gel: count('gel'), sportsDrink: count('sportsDrink'), water: count('water') };
}

/** What a station hands out: what it serves, less what the plan gives no table. */
export const servedOn = (station: PlanStation): Served[] => station.serves.filter((kind) => station.tables[kind] !== 0);

/** The tables alone, upstream first. */
export function tableStretches(counts: TableCounts, practice: Practice): Stretch[] {
  const { tableLength, tableGap, gelAhead } = practice;
  const tables: Stretch[] = [];
  if (counts.gel > 0) tables.push({ kind: 'gel', from: -gelAhead - counts.gel * tableLength, to: -gelAhead });
  if (counts.sportsDrink > 0) tables.push({ kind: 'sportsDrink', from: 0, to: counts.sportsDrink * tableLength });
  if (counts.water > 0) {
    const from = counts.sportsDrink > 0 ? counts.sportsDrink * tableLength + tableGap : 0;
    tables.push({ kind: 'water', from, to: from + counts.water * tableLength });
  }
  return tables;
}

/**
 * The line where cups change hands: as far as the tables reach, or farther where `persons` standing `spacing` metres apart
 * need it, centred on the drink tables. `null` where nobody hands out or there are no drink tables.
 */
export function handOutStretch(tables: readonly Stretch[], persons: number, spacing: number): Stretch | null {
  const drinks = tables.filter(({ kind }) => kind !== 'gel');
  if (persons === 0 || drinks.length === 0) return null;
  const centre = (Math.min(...drinks.map(({ from }) => from)) + Math.max(...drinks.map(({ to }) => to))) / 2;
  const half = (persons * spacing) / 2;
  return {
    kind: 'handOut',
    from: Math.min(...tables.map(({ from }) => from), centre - half),
    to: Math.max(...tables.map(({ to }) => to), centre + half),
  };
}

/** Sign before, trash after, whatever the tables are; nothing where there are no tables. */
export function aroundTables(tables: readonly Stretch[], practice: Practice): { sign: Stretch; trash: Stretch } | null {
  const first = Math.min(...tables.map((table) => table.from));
  const last = Math.max(...tables.map((table) => table.to));
  if (tables.length === 0) return null;
  const sign = first - practice.signAhead;
  return {
    sign: { kind: 'sign', from: sign, to: sign },
    trash: { kind: 'trash', from: last + practice.trashFrom, to: last + practice.trashTo },
  };
}
