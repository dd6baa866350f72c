/** Single cells of a list of stations, read into what a plan writes. */
import type { DeclaredSide, Served } from '../../kinds.ts';
import type { ListKind } from '../../text/params/list.ts';
import type { LengthUnit } from '../../units.ts';
import { parseLength } from '../../units.ts';
import { plainWord, unitNamed } from './heads.ts';
import { type Commas, digitsOf } from './numbers.ts';

/** A value, or what it should have been; `comma` where a comma can be read two ways. */
export type Value<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly kind: ListKind; readonly comma?: true };

const good = <T>(value: T): Value<T> => ({ ok: true, value });
const bad = (kind: ListKind, comma = false): Value<never> => ({ ok: false, kind, ...(comma ? { comma } : {}) });

/** The number of a cell and the unit behind it. */
export const numberPart = (text: string): string => /^[+-]?[\d.,]+/u.exec(text.trim())?.[0] ?? text.trim();

/** A length as a plan writes it, with its unit; `unit` where the cell has none. */
export function lengthValue(text: string, unit: LengthUnit, commas: Commas, kind: 'distance' | 'width'): Value<string> {
  const number = numberPart(text);
  const rest = text.trim().slice(number.length).trim();
  const digits = digitsOf(number, commas);
  if (digits === 'unclear') return bad(kind, true);
  const named = rest === '' ? unit : unitNamed(rest.replace(/\.$/u, ''));
  if (digits === 'none' || named === undefined) return bad(kind);
  const written = `${digits.digits} ${named}`;
  const metres = parseLength(written);
  return metres.ok && (kind === 'distance' || metres.value > 0) ? good(written) : bad(kind);
}

/** Degrees; a comma in them can only be a decimal comma. */
export function degreesValue(text: string, kind: 'lon' | 'lat'): Value<number> {
  const digits = digitsOf(text.trim(), { decimalComma: true, decimalPoint: false });
  const most = kind === 'lon' ? 180 : 90;
  const plain = digits === 'unclear' ? text.trim().replace(',', '.') : digits === 'none' ? 'x' : digits.digits;
  const value = Number(plain);
  return Math.abs(value) <= most ? good(Number(value.toFixed(7))) : bad(kind);
}

export function countValue(text: string): Value<number> {
  return /^\d{1,4}$/u.test(text.trim()) ? good(Number(text.trim())) : bad('count');
}

const SIDES: Readonly<Record<string, DeclaredSide>> = {
  left: 'left',
  l: 'left',
  izquierda: 'left',
  izquierdo: 'left',
  izq: 'left',
  right: 'right',
  r: 'right',
  derecha: 'right',
  derecho: 'right',
  der: 'right',
  dcha: 'right',
};

export function sideValue(text: string): Value<DeclaredSide> {
  const side = Object.hasOwn(SIDES, word(text)) ? SIDES[word(text)] : undefined;
  return side === undefined ? bad('side') : good(side);
}

const word = (text: string): string => plainWord(text).replace(/\.$/u, '');

const SERVED: Readonly<Record<string, Served>> = {
  water: 'water',
  agua: 'water',
  'sports drink': 'sportsDrink',
  'sport drink': 'sportsDrink',
  sportsdrink: 'sportsDrink',
  'isotonic drink': 'sportsDrink',
  'bebida deportiva': 'sportsDrink',
  'bebida isotonica': 'sportsDrink',
  isotonica: 'sportsDrink',
  gel: 'gel',
  gels: 'gel',
  geles: 'gel',
};
/** The order in which a plan lists what is served. */
const ORDER: readonly Served[] = ['gel', 'sportsDrink', 'water'];

/** "water, sports drink", "agua y geles". */
export function servesValue(text: string): Value<readonly Served[]> {
  const words = plainWord(text)
    .split(/[,;+&/|]| and | y /u)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const kinds = words.map((one) => (Object.hasOwn(SERVED, one) ? SERVED[one] : undefined));
  if (kinds.length === 0 || kinds.includes(undefined)) return bad('serves');
  return good(ORDER.filter((kind) => kinds.includes(kind)));
}

const YES = new Set(['x', 'yes', 'y', 'si', '✓', '✔', 'true']);
const NO = new Set(['no', 'n', '-', '–', 'false']);

/** Tables of a kind, or only whether it is served: 3, "yes", "no". */
export function tablesValue(text: string): Value<number | boolean> {
  if (YES.has(plainWord(text)) || text.trim() === '✓') return good(true);
  if (NO.has(plainWord(text)) || text.trim() === '-') return good(false);
  return countValue(text);
}

/** So many tables among the kinds that are served, one after another: water first, gels last. */
export function sharedOut(tables: number, serves: readonly Served[]): Partial<Record<Served, number>> {
  const kinds = (['water', 'sportsDrink', 'gel'] as const).filter((kind) => serves.includes(kind));
  return Object.fromEntries(
    kinds.map((kind, k) => [kind, Math.floor(tables / kinds.length) + (k < tables % kinds.length ? 1 : 0)]),
  );
}
