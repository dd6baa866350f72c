/** The cups that stand poured at a station before the first runner, its tables and pourers, and what is to be said of them. */
import type { Finding } from '../finding.ts';
import type { Served } from '../plan/plan.ts';
import type { PrePour, StationDay } from './day.ts';
import { type Pour, type PourCase, type Poured, pourOf } from './pour.ts';
import { firstDry } from './prePour.ts';
import { racedayFinding } from './racedayFinding.ts';
import { demandOf, type Site } from './site.ts';
import { DRINKS, type Drink } from './take.ts';
import { mergedTimes, quantilesOf } from './timing.ts';

export interface Stock {
  readonly prePour: StationDay['prePour'];
  readonly tables: { readonly [kind in Served]: number };
  readonly pourers: number;
  readonly findings: readonly Finding[];
}

/** Drink tables that stand within `tablesRoom`, with the gap between two drinks. */
function roomFor({ practice, station }: Site): number {
  const drinks = DRINKS.filter((drink) => station.serves.includes(drink)).length;
  const gaps = Math.max(0, drinks - 1) * practice.tableGap;
  return Math.max(drinks, Math.floor((practice.tablesRoom - gaps) / practice.tableLength + 1e-9));
}

/** `null` where no cups are poured: bottles, nobody on foot, or nothing to drink. `first`: when the first minute of the demand begins. */
function caseOf(site: Site): { readonly one: PourCase; readonly first: number } | null {
  const { station, supplies, rules, races, needs } = site;
  // Wheels take cups, but the pour begins and the floor's spread is measured with those who come on foot.
  const foot = quantilesOf(mergedTimes(races.filter(({ division }) => division !== 'wheels')));
  // Without a table nothing is laid out: `tables-mismatch`.
  const served = DRINKS.filter((drink) => station.serves.includes(drink) && station.tables[drink] !== 0);
  if (foot === null || served.length === 0 || supplies.handOut === 'bottles') return null;
  const all = Math.max(1e-9, needs.exact.water + needs.exact.sportsDrink);
  const demands = served.map((drink) => demandOf(site, drink, foot.first));
  const { from: first } = demands[0]!;
  return {
    first,
    one: {
      drinks: served.map((drink, k) => ({
        drink,
        demand: demands[k]!.cups,
        from: Math.round((foot.first - first) / 60),
        cups: needs.exact[drink],
        share: needs.exact[drink] / all,
        fixed: station.tables[drink] ?? null,
      })),
      spread: foot.p90 - foot.p10,
      cupsPerTable: supplies.cupsPerLayer * supplies.layers,
      floor: supplies.prePourFloor,
      rate: rules.pourRate,
      safety: supplies.prePourSafety,
      room: roomFor(site),
      others: site.handOut + site.gel + site.clean,
      within: rules.pourWithin / 60,
      pourers: rules.pourers ?? null,
      tableCost: rules.tableCost,
    },
  };
}

function prePourOf(site: Site, drink: Drink, { cups, curve, floor, tables }: Poured, pourers: number): PrePour {
  const { supplies, needs, station } = site;
  return {
    cups,
    share: needs.cups[drink] === 0 ? 0 : cups / needs.cups[drink],
    massCurve: curve,
    floor,
    room: station.tables[drink] === undefined ? null : tables * supplies.cupsPerLayer * supplies.layers,
    tables,
    layers: tables === 0 ? 0 : Math.ceil(cups / (tables * supplies.cupsPerLayer)),
    cupsPerLayer: supplies.cupsPerLayer,
    pourers,
  };
}

/** One table where the plan has no number and nothing needs more. */
export function stockOf(site: Site): Stock {
  const { station } = site;
  const given = (kind: Served): number => (station.serves.includes(kind) ? (station.tables[kind] ?? 1) : 0);
  const tables = { gel: given('gel'), sportsDrink: given('sportsDrink'), water: given('water') };
  const found = caseOf(site);
  if (found === null) return { prePour: {}, tables, pourers: 0, findings: [] };
  const pour = pourOf(found.one);
  const prePour: { [drink in Drink]?: PrePour } = {};
  for (const [drink, poured] of pour.byDrink) {
    prePour[drink] = prePourOf(site, drink, poured, pour.pourers);
    tables[drink] = poured.tables;
  }
  return { prePour, tables, pourers: pour.pourers, findings: findingsOf(site, found.one, pour, found.first) };
}

function findingsOf(site: Site, one: PourCase, pour: Pour, first: number): Finding[] {
  return [...one.drinks.flatMap((drink) => dryFinding(site, one, pour, drink, first)), ...roomFinding(site, one, pour)];
}

/** Where the cups run out, whatever stands: the tables hold too few for the curve, or those who pour are too slow. */
function dryFinding(
  { station }: Site,
  { rate, safety, cupsPerTable }: PourCase,
  { pourers, byDrink }: Pour,
  { drink, demand, from, share }: PourCase['drinks'][number],
  first: number,
): Finding[] {
  const { cups, curve, tables } = byDrink.get(drink)!;
  const where = { station: station.id, item: drink };
  const hold = tables * cupsPerTable;
  const dry = firstDry(demand, (pourers * rate * share) / safety, cups, hold, from);
  if (dry !== null) {
    const enough = Math.max(pourers + 1, Math.ceil((Math.max(...demand) * safety) / rate));
    return [
      racedayFinding(
        'cups-run-out',
        { drink, at: first + dry.minute * 60, short: dry.short, hold, pourers: enough },
        { severity: 'warning', where, measured: dry.short, limit: 0, unit: 'cups' },
      ),
    ];
  }
  if (curve <= cups) return [];
  const more = Math.max(1, Math.ceil(curve / cupsPerTable) - tables);
  return [
    racedayFinding(
      'pre-pour-room',
      { drink, tables, hold: cups, wanted: curve, more },
      { severity: 'warning', where, measured: cups, limit: curve, unit: 'cups' },
    ),
  ];
}

/** Where the tables that the day asks for, or the plan gives, are longer than the place. */
function roomFinding({ station, practice, rules }: Site, one: PourCase, pour: Pour): Finding[] {
  const count = [...pour.byDrink.values()].reduce((sum, { tables }) => sum + tables, 0);
  if (Math.max(pour.wantedTables, count) <= one.room) return [];
  const metres = (tables: number): number =>
    tables * practice.tableLength + Math.max(0, pour.byDrink.size - 1) * practice.tableGap;
  const params = {
    wanted: pour.wantedTables,
    tables: count,
    length: metres(pour.wantedTables),
    room: practice.tablesRoom,
    pourers: rules.pourers === undefined ? pour.pourers : null,
  };
  return [
    racedayFinding('tables-room', params, {
      severity: count > one.room || !pour.lasts ? 'warning' : 'note',
      where: { station: station.id },
      measured: params.length,
      limit: practice.tablesRoom,
      unit: 'm',
    }),
  ];
}
