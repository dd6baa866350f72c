/**
 * How a field shows and writes a length, duration, volume or mass. A bare number typed means the unit beside
 * the field; the file keeps its own form (number, or text with its own spacing) where that agrees with the unit.
 * Pure.
 */
import { type Units } from '@halfcup/core/plan';
import { formatDuration, parseDuration, parseLength, parseMass, parseVolume, type Parsed } from '@halfcup/core/units';
import type { Form } from './useEntry.ts';

export interface Kind {
  readonly parse: (value: unknown) => Parsed;
  /** What a bare number in the file means. */
  readonly base: string;
}

export const LENGTH: Kind = { parse: parseLength, base: 'm' };
export const DURATION: Kind = { parse: parseDuration, base: 's' };
export const VOLUME: Kind = { parse: parseVolume, base: 'l' };
export const MASS: Kind = { parse: parseMass, base: 'kg' };

/** What the value is about decides the unit for it: laid out by wheel, along a course, a cup, a jug, a load. */
export type Size = 'short' | 'long' | 'small' | 'large' | 'load';

const UNIT: Readonly<Record<Size, Readonly<Record<Units, string>>>> = {
  short: { metric: 'm', imperial: 'yd' },
  long: { metric: 'km', imperial: 'mi' },
  small: { metric: 'ml', imperial: 'fl oz' },
  large: { metric: 'l', imperial: 'gal' },
  load: { metric: 'kg', imperial: 'lb' },
};
export const unitFor = (size: Size, units: Units): string => UNIT[size][units];

const DIGITS = /^(?:\d+(?:\.\d+)?|\.\d+)$/u;
const WITH_UNIT = /^\s*((?:\d+(?:\.\d+)?|\.\d+))(\s*)(\p{L}[\p{L}\s]*?)\s*$/u;

const partsOf = (raw: unknown): { readonly digits: string; readonly space: string; readonly unit: string } | null => {
  const [, digits, space, unit] = typeof raw === 'string' ? (WITH_UNIT.exec(raw) ?? []) : [];
  return digits === undefined || space === undefined || unit === undefined ? null : { digits, space, unit };
};

/** SI as a figure in a unit of the kind, to a thousandth. */
export function figureIn(kind: Kind, value: number, unit: string): string {
  const one = kind.parse(`1 ${unit}`);
  return one.ok ? String(Number((value / one.value).toFixed(3))) : '';
}

/** A value in a unit: the bare figure where the file has it so, else with the unit that it has. */
export function showQuantity(kind: Kind, raw: unknown, unit: string): string {
  if (typeof raw === 'number') return kind.base === unit ? String(raw) : `${raw} ${kind.base}`;
  const parts = partsOf(raw);
  return parts !== null && parts.unit === unit ? parts.digits : String(raw);
}

export function writeQuantity(kind: Kind, text: string, raw: unknown, unit: string): unknown {
  const typed = DIGITS.test(text) ? { digits: text, space: ' ', unit } : partsOf(text);
  if (typed === null) return text;
  const before = partsOf(raw);
  if (before !== null && before.unit === typed.unit) return `${typed.digits}${before.space}${typed.unit}`;
  const plain = typed.unit === kind.base && (DIGITS.test(text) || typeof raw === 'number');
  return plain ? Number(typed.digits) : DIGITS.test(text) ? `${text} ${unit}` : text;
}

export const quantityForm = (kind: Kind, unit: string): Form => ({
  show: (raw) => showQuantity(kind, raw, unit),
  write: (text, raw) => writeQuantity(kind, text, raw, unit),
});

/** What stands beside the field: the unit of a bare number, and where the file has another unit the value in this one. */
export function besideOf(kind: Kind, raw: unknown, unit: string): string {
  const other =
    raw !== undefined &&
    showQuantity(kind, raw, unit) !== partsOf(raw)?.digits &&
    !(typeof raw === 'number' && kind.base === unit);
  const read = other ? kind.parse(raw) : null;
  return read?.ok === true ? `= ${figureIn(kind, read.value, unit)} ${unit}` : unit;
}

export const durationText = (seconds: number): string => formatDuration(seconds);
