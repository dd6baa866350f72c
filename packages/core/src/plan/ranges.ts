/**
 * The ranges of a plan's numbers: wider than any race, and narrow enough that every stage, document and paper carries both
 * ends. They stand beside the keys in the schema, both ends included, in SI units; here is what many keys share.
 */
import { LONGEST_COURSE } from '../course/longest.ts';
import { foundOf } from '../text/found.ts';
import type { QuantityKind, ValueProblem } from '../text/params/plan.ts';
import type { Parsed } from '../units.ts';

/** From and to, both included; SI units. */
export type Range = readonly [from: number, to: number];

const HOUR = 3600;

/** Metres along a course. */
export const ALONG: Range = [0, LONGEST_COURSE];
/** A course's own length, metres. */
export const COURSE_LENGTH: Range = [1, LONGEST_COURSE];
/** Metres between stations, and from the ends to them. */
export const LEG: Range = [0, LONGEST_COURSE];
/** Metres on the ground of one station. */
export const NEAR: Range = [0, 10_000];
/** Metres across a road. */
export const ACROSS: Range = [0, 1000];
/** Metres, where 0 would be divided by. */
export const WIDE: Range = [0.1, 1000];
/** Seconds of work at a station. */
export const TASK: Range = [0, 100 * HOUR];
/** Seconds from start to finish of one runner. */
export const FINISH: Range = [1, 1000 * HOUR];
/** Metres above the sea, or under it. */
export const ELEVATION: Range = [-12_000, 12_000];

export const within = (value: number, [from, to]: Range): boolean => value >= from && value <= to;

/** The unit a step down and a step up, which are taken for one another. */
const DOWN: Readonly<Record<string, string>> = {
  km: 'm',
  m: 'cm',
  mi: 'yd',
  h: 'min',
  min: 's',
  l: 'ml',
  gal: 'fl oz',
};
const UP: Readonly<Record<string, string>> = {
  m: 'km',
  cm: 'm',
  yd: 'mi',
  s: 'min',
  min: 'h',
  ml: 'l',
  'fl oz': 'gal',
};

/** The same digits with a unit by which the value would be in range: 42195 m for 42195 km. */
function meantBy(value: unknown, range: Range, parse: (text: string) => Parsed): string | undefined {
  const [, digits, unit] = (typeof value === 'string' && /^\s*([\d.]+)\s*(\D+?)\s*$/u.exec(value)) || [];
  if (digits === undefined || unit === undefined) return undefined;
  const parsed = parse(String(value));
  if (!parsed.ok) return undefined;
  const other = (parsed.value > range[1] ? DOWN : UP)[unit.replaceAll(/\s+/gu, ' ')];
  const text = `${digits} ${other}`;
  const meant = other === undefined ? null : parse(text);
  return meant?.ok === true && within(meant.value, range) ? text : undefined;
}

/** A quantity that is none of its range. */
export function outside(
  value: unknown,
  quantity: QuantityKind,
  range: Range,
  parse: (text: string) => Parsed,
): ValueProblem {
  const meant = meantBy(value, range, parse);
  const accepted = { kind: 'within', quantity, range, ...(meant === undefined ? {} : { meant }) } as const;
  return { problem: 'value', found: foundOf(value), accepted };
}

const QUANTITIES: Readonly<Record<QuantityKind, readonly [noun: string, unit: string, example: string]>> = {
  length: ['length', 'metres', '"100 yd"'],
  duration: ['duration', 'seconds', '"30 min" or "4:25:00"'],
  volume: ['volume', 'litres', '"7 fl oz"'],
  mass: ['mass', 'kilograms', '"8.3 lb"'],
};

/** A quantity for a JSON Schema, whose bounds cannot reach into texts. */
export function quantityDescription(kind: QuantityKind, [from, to]: Range): string {
  const [noun, unit, example] = QUANTITIES[kind];
  return `A ${noun} from ${from} to ${to} ${unit}: a number in ${unit}, or a text such as ${example}.`;
}
