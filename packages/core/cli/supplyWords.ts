/** Supplies by name, with amounts in the units that they are measured in. */
import { formatVolume } from '../src/format.ts';
import type { Pack } from '../src/raceday/day.ts';
import type { UnitSystem } from '../src/units.ts';

const SUPPLIES: Readonly<Record<string, string>> = {
  waterJug: 'Water jugs',
  sportsDrinkJug: 'Sports-drink jugs',
  cups: 'Cups',
  gels: 'Gels',
  gloves: 'Gloves',
  bags: 'Bags',
  towels: 'Towels',
  stackingSheets: 'Stacking sheets',
  table: 'Tables',
  box: 'Boxes',
  instructions: 'Instruction sheets',
};

/** Jugs are counted by what is in them. */
const POURED: ReadonlySet<string> = new Set(['waterJug', 'sportsDrinkJug']);

const SIGN = 'sign: ';

/** What people call an item of supplies. */
export const supplyName = (item: string): string =>
  item.startsWith(SIGN) ? `Signs “${item.slice(SIGN.length)}”` : (SUPPLIES[item] ?? item);

const KINDS: Readonly<Record<string, string>> = { water: 'Water', sportsDrink: 'Sports drink', gel: 'Gels' };

/** What people call a kind of thing that is taken. */
export const kindName = (kind: string): string => KINDS[kind] ?? kind;

/** A count, no decimals unless it has some. */
export const amount = (value: number): string => Number(value.toFixed(1)).toLocaleString('en');

/** An amount of an item: pieces, or what is in the jugs. */
export const supplyAmount = ({ item }: Pick<Pack, 'item'>, value: number, units: UnitSystem): string =>
  POURED.has(item) ? grouped(formatVolume(value, units)) : amount(value);

/** The same volume with commas between thousands. */
export function grouped(text: string): string {
  const [number, unit] = text.split(' ') as [string, string?];
  const value = Number(number);
  return unit === undefined || !Number.isFinite(value)
    ? text
    : `${value.toLocaleString('en', { minimumFractionDigits: 1, maximumFractionDigits: 1 })} ${unit}`;
}
