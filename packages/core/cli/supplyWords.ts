/** Supplies by name, with amounts in the units that they are measured in. */
import { formatVolume } from '../src/format.ts';
import type { Supply, SupplyKind } from '../src/kinds.ts';
import { supplyWords } from '../src/text/en/supplyWords.ts';
import { suppliesText } from '../src/text/supplyWords.ts';
import type { UnitSystem } from '../src/units.ts';

/** Jugs are counted by what is in them. */
const POURED: ReadonlySet<SupplyKind> = new Set<SupplyKind>(['waterJug', 'sportsDrinkJug']);

/** What people call supplies of a kind. */
export const supplyName = (supply: Supply): string => suppliesText(supply, supplyWords);

const KINDS: Readonly<Record<string, string>> = { water: 'Water', sportsDrink: 'Sports drink', gel: 'Gels' };

/** What people call a kind of thing that is taken. */
export const kindName = (kind: string): string => KINDS[kind] ?? kind;

/** A count, no decimals unless it has some. */
export const amount = (value: number): string => Number(value.toFixed(1)).toLocaleString('en');

/** An amount of an item: pieces, or what is in the jugs. */
export const supplyAmount = ({ kind }: Pick<Supply, 'kind'>, value: number, units: UnitSystem): string =>
  POURED.has(kind) ? grouped(formatVolume(value, units)) : amount(value);

/** The same volume with commas between thousands. */
export function grouped(text: string): string {
  const [number, unit] = text.split(' ') as [string, string?];
  const value = Number(number);
  return unit === undefined || !Number.isFinite(value)
    ? text
    : `${value.toLocaleString('en', { minimumFractionDigits: 1, maximumFractionDigits: 1 })} ${unit}`;
}
