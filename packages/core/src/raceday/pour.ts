/**
 * Tables, pourers and the cups that stand poured before the first runner, found together: the fewest people, a table
 * counted as `tableCost` of them, with whom the tables never run dry (`massCurve`), hold what is poured, fit the kerb,
 * and are filled in the time there is. The floor of the pre-pour gives way to the room, the curve never does.
 */
import { floorShare, largestStock, massCurve } from './prePour.ts';
import { whole } from './cups.ts';
import type { Drink } from './take.ts';

/** One drink of a station. */
export interface PourDrink {
  readonly drink: Drink;
  /** Cups a minute, spilt ones included, by minutes counted from the first arrival on foot. */
  readonly demand: readonly number[];
  /** The minute in `demand` from which the pourers pour. */
  readonly from: number;
  /** The day's cups, spilt ones included. */
  readonly cups: number;
  /** Of the station's cups. */
  readonly share: number;
  /** Tables as the plan says; `null`: as many as it takes. */
  readonly fixed: number | null;
}

export interface PourCase {
  readonly drinks: readonly PourDrink[];
  /** p90 − p10 of those who come on foot, seconds. */
  readonly spread: number;
  readonly cupsPerTable: number;
  readonly floor: readonly [number, number];
  /** Cups a minute that a person pours, and how many times slower they are taken to be while runners come. */
  readonly rate: number;
  readonly safety: number;
  /** Drink tables that the kerb has room for. */
  readonly room: number;
  /** Who are there besides the pourers and pour before the first runner. */
  readonly others: number;
  /** Longest time for it, minutes. */
  readonly within: number;
  /** As the plan says; `null`: the fewest. */
  readonly pourers: number | null;
  readonly tableCost: number;
}

/** Of one drink: cups poured before the first runner and the tables for them. */
export interface Poured {
  readonly cups: number;
  readonly curve: number;
  readonly floor: number;
  readonly tables: number;
}

export interface Pour {
  readonly pourers: number;
  readonly byDrink: ReadonlyMap<Drink, Poured>;
  /** Whether the tables never run dry. */
  readonly lasts: boolean;
  /** Tables that the floor and the curve would fill, were there room. */
  readonly wantedTables: number;
}

/** With so many pourers: what is poured, on how many tables, and whether it lasts. */
function withPourers(one: PourCase, pourers: number): Pour & { readonly cost: number; readonly settled: boolean } {
  const { cupsPerTable, rate, safety } = one;
  const wants = one.drinks.map((drink) => {
    const pour = (pourers * rate * drink.share) / safety;
    const curve = Math.min(whole(drink.cups), massCurve(drink.demand, pour, drink.from));
    const floor = whole(drink.cups * floorShare(one.floor, one.spread));
    const stock = Math.min(whole(drink.cups), largestStock(drink.demand, pour, drink.from));
    return { ...drink, curve, floor, want: Math.max(curve, floor), stock };
  });
  const tablesFor = (cups: number): number => Math.max(1, Math.ceil(cups / cupsPerTable));
  const least = wants.map(({ fixed, stock }) => fixed ?? tablesFor(stock));
  const most = wants.map(({ fixed, want, stock }) => fixed ?? tablesFor(Math.max(want, stock)));
  const tables = shareRoom(least, most, one.room);
  const hours = (one.others + pourers) * rate * one.within;
  const held = wants.map(({ want }, k) => Math.min(want, tables[k]! * cupsPerTable));
  const cups = inTime(
    held,
    wants.map(({ curve }) => curve),
    hours,
  );
  const inHours = sum(wants.map(({ curve }) => curve)) <= hours;
  const lasts =
    inHours && wants.every(({ curve, stock }, k) => curve <= cups[k]! && stock <= tables[k]! * cupsPerTable);
  const count = sum(tables);
  return {
    pourers,
    byDrink: new Map(
      wants.map(({ drink, curve, floor }, k) => [drink, { cups: cups[k]!, curve, floor, tables: tables[k]! }]),
    ),
    lasts: lasts && (one.drinks.every(({ fixed }) => fixed !== null) || sum(least) <= one.room),
    wantedTables: sum(most),
    cost: pourers + one.tableCost * count,
    settled: wants.every(({ stock, floor }) => stock <= floor) && sum(most) <= one.room,
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Tables of each drink: as many as are wanted, or what the room leaves beyond the least, one by one where most is missing. */
function shareRoom(least: readonly number[], most: readonly number[], room: number): number[] {
  if (sum(most) <= room) return [...most];
  const tables = [...least];
  for (let left = room - sum(least); left > 0; left--) {
    const missing = tables.map((count, k) => (most[k]! - count) / most[k]!);
    const next = missing.indexOf(Math.max(...missing));
    if (missing[next]! <= 0) break;
    tables[next]!++;
  }
  return tables;
}

/** What can be poured in the time: of what goes beyond the curves each drink gives up the same share. */
function inTime(held: readonly number[], curves: readonly number[], most: number): number[] {
  if (sum(held) <= most) return [...held];
  const least = held.map((cups, k) => Math.min(cups, curves[k]!));
  const beyond = sum(held) - sum(least);
  const keep = beyond === 0 ? 0 : Math.max(0, most - sum(least)) / beyond;
  return held.map((cups, k) => Math.floor(least[k]! + keep * (cups - least[k]!) + 1e-9));
}

/** Pourers with whom every minute's cups are poured within it: more are of no use. */
const mostPourers = ({ drinks, rate, safety }: PourCase): number =>
  Math.max(
    1,
    ...drinks.map(({ demand, share }) =>
      share === 0 ? 0 : Math.ceil((Math.max(0, ...demand) * safety) / (rate * share)),
    ),
  );

/** The cheapest pour that lasts; where none does, that of the most pourers. */
export function pourOf(one: PourCase): Pour {
  if (one.pourers !== null) return withPourers(one, one.pourers);
  let best: (Pour & { readonly cost: number }) | null = null;
  const most = mostPourers(one);
  for (let pourers = 1; pourers <= most; pourers++) {
    if (best?.lasts && pourers >= best.cost) break;
    const found = withPourers(one, pourers);
    if (found.lasts && (!best?.lasts || found.cost < best.cost - 1e-9)) best = found;
    if (!best?.lasts && !found.lasts) best = found;
    if (found.settled && found.lasts) break;
  }
  return best!;
}
