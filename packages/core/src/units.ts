/**
 * Lengths, durations, volumes, masses and clock times: read from text into SI units, and turned
 * into others. The only place that knows how long a yard is; `format.ts` prints them.
 * Factors are exact: NIST Handbook 44, appendix C (international yard and pound of 1959,
 * US gallon of 231 cubic inches). A text of up to 15 digits is converted with one rounding.
 */

import { type Shape, cutAt40, describeValue, finite, oneOf, want } from './wants.ts';

declare const unit: unique symbol;

/**
 * A number whose unit its type knows: plain numbers pass for one, a number in another unit does not compile.
 * There is nothing of it at run time.
 */
export type In<Unit extends string> = number & { readonly [unit]?: Unit };
/** A length. */
export type Metres = In<'metre'>;
/** A duration, or a clock time after midnight. */
export type Seconds = In<'second'>;
/** A volume. */
export type Litres = In<'litre'>;
/** A mass. */
export type Kilograms = In<'kilogram'>;
/** Of an azimuth: clockwise from north. */
export type Degrees = In<'degree'>;
/** Degrees east of Greenwich, WGS 84. */
export type Longitude = In<'degree of longitude'>;
/** Degrees north of the equator, WGS 84, -90 to 90. */
export type Latitude = In<'degree of latitude'>;

/** Systems of units for display; lengths, times and masses in the code are SI in either. */
export type UnitSystem = 'metric' | 'imperial';

/** A number in SI units, or why there is none, as a sentence: what was found and what should be there. */
export type Parsed<Quantity extends number = number> =
  | { readonly ok: true; readonly value: Quantity }
  | { readonly ok: false; readonly message: string };

/** An exact factor to the SI unit, as numerator over denominator. */
type Factor = readonly [numerator: number, denominator: number];

/** Units of length; all but the metric ones are the international units of 1959. */
export type LengthUnit = 'm' | 'km' | 'cm' | 'in' | 'ft' | 'yd' | 'mi';
export type VolumeUnit = 'l' | 'ml' | 'gal' | 'fl oz';
export type MassUnit = 'kg' | 'lb';

const LENGTHS: Readonly<Record<LengthUnit, Factor>> = {
  m: [1, 1],
  km: [1000, 1],
  cm: [1, 100],
  in: [254, 10_000],
  ft: [3048, 10_000],
  yd: [9144, 10_000],
  mi: [1_609_344, 1000],
};

const isLengthUnit: Shape = oneOf('m', 'km', 'cm', 'in', 'ft', 'yd', 'mi');

const DURATIONS: Readonly<Record<'s' | 'min' | 'h', Factor>> = { s: [1, 1], min: [60, 1], h: [3600, 1] };

const VOLUMES: Readonly<Record<VolumeUnit, Factor>> = {
  l: [1, 1],
  ml: [1, 1000],
  gal: [3_785_411_784, 1_000_000_000],
  'fl oz': [295_735_295_625, 10_000_000_000_000],
};

const MASSES: Readonly<Record<MassUnit, Factor>> = { kg: [1, 1], lb: [45_359_237, 100_000_000] };

interface Kind {
  /** With its article: "a length". */
  readonly noun: string;
  readonly example: string;
  readonly units: Readonly<Record<string, Factor>>;
}

const LENGTH: Kind = { noun: 'a length', example: '100 yd or 5 km', units: LENGTHS };
const DURATION: Kind = { noun: 'a duration', example: '30 min or 4:25:00', units: DURATIONS };
const VOLUME: Kind = { noun: 'a volume', example: '7 fl oz or 200 ml', units: VOLUMES };
const MASS: Kind = { noun: 'a mass', example: '8.3 lb or 3.9 kg', units: MASSES };

const pattern = (kind: Kind): string =>
  `^\\s*(\\d+(\\.\\d+)?|\\.\\d+)\\s*(${Object.keys(kind.units).join('|').replaceAll(' ', '\\s+')})\\s*$`;

/** Regular expressions of the texts that the readers below accept, for a JSON Schema. */
export const QUANTITY_PATTERNS: Readonly<Record<'length' | 'duration' | 'volume' | 'mass' | 'clock', string>> = {
  length: pattern(LENGTH),
  duration: `${pattern(DURATION)}|^\\s*\\d{1,3}:[0-5]\\d:[0-5]\\d(\\.\\d{1,6})?\\s*$`,
  volume: pattern(VOLUME),
  mass: pattern(MASS),
  clock: '^\\s*\\d{1,3}:[0-5]\\d(:[0-5]\\d)?\\s*$',
};

/** Names of the units that the readers below know, by kind. */
export const QUANTITY_UNITS: Readonly<Record<'length' | 'duration' | 'volume' | 'mass', readonly string[]>> = {
  length: Object.keys(LENGTHS),
  duration: Object.keys(DURATIONS),
  volume: Object.keys(VOLUMES),
  mass: Object.keys(MASSES),
};

const refuse = (found: string, wanted: string): Parsed<never> => ({
  ok: false,
  message: `${found.charAt(0).toUpperCase()}${found.slice(1)} cannot be used. It should be ${wanted}.`,
});

const wantedFor = (kind: Kind): string => {
  const units = Object.keys(kind.units);
  const last = units.pop() ?? '';
  return `${kind.noun} of 0 or more, such as ${kind.example}; units are ${units.join(', ')} and ${last}`;
};

/** Decimal digits times an exact factor: one rounding where the digits fit a double. */
function scaled(text: string, [numerator, denominator]: Factor): number {
  const [whole = '', decimals = ''] = text.split('.');
  if (whole.length + decimals.length > 15) return (Number(text) * numerator) / denominator;
  return (Number(whole + decimals) * numerator) / (denominator * 10 ** decimals.length);
}

function parseNumber(value: number, kind: Kind): Parsed {
  if (!Number.isFinite(value) || value < 0) return refuse(describeValue(value), wantedFor(kind));
  return { ok: true, value: value === 0 ? 0 : value };
}

function parseQuantity(value: unknown, kind: Kind): Parsed {
  if (typeof value === 'number') return parseNumber(value, kind);
  if (typeof value !== 'string') return refuse(describeValue(value), wantedFor(kind));
  const match = /^(\d+(?:\.\d+)?|\.\d+)\s*(\p{L}[\p{L}\s.]*)?$/u.exec(value.trim());
  if (match === null) return refuse(describeValue(value), wantedFor(kind));
  const [, digits = '', unit = ''] = match;
  if (unit === '') return refuse(`${describeValue(value)} has no unit, so it`, wantedFor(kind));
  const name = unit.replace(/\s+/gu, ' ');
  const factor = Object.hasOwn(kind.units, name) ? kind.units[name] : undefined;
  if (factor === undefined)
    return refuse(`The unit “${cutAt40(name)}” is not known, so ${describeValue(value)}`, wantedFor(kind));
  return parseNumber(scaled(digits, factor), kind);
}

/**
 * Metres from a number (metres) or a text such as "100 yd"; refuses what is negative, not finite or has no known unit, with
 * what was found and what is accepted. Units: m, km, cm, in, ft, yd, mi.
 * @example
 * ```ts
 * import { parseLength } from '@halfcup/core/units';
 * parseLength('1.5 mi'); // → { ok: true, value: 2414.016 }
 * parseLength(91.44); // → { ok: true, value: 91.44 }
 * parseLength('100').ok; // → false
 * ```
 */
export const parseLength = (value: unknown): Parsed<Metres> => parseQuantity(value, LENGTH);

/**
 * Litres from a number (litres) or a text such as "7 fl oz" (US); refuses as `parseLength` does. Units: l, ml, gal, fl oz.
 * @example
 * ```ts
 * import { parseVolume } from '@halfcup/core/units';
 * parseVolume('1 gal'); // → { ok: true, value: 3.785411784 }
 * parseVolume('200 ml'); // → { ok: true, value: 0.2 }
 * ```
 */
export const parseVolume = (value: unknown): Parsed<Litres> => parseQuantity(value, VOLUME);

/**
 * Kilograms from a number (kilograms) or a text such as "8.3 lb"; refuses as `parseLength` does. Units: kg, lb.
 * @example
 * ```ts
 * import { parseMass } from '@halfcup/core/units';
 * parseMass('10 lb'); // → { ok: true, value: 4.5359237 }
 * ```
 */
export const parseMass = (value: unknown): Parsed<Kilograms> => parseQuantity(value, MASS);

/**
 * Seconds from a number (seconds), "30 min", "4 h" or "4:25:00" (seconds may have decimals); refuses as `parseLength` does.
 * "4:25" is refused: it could be minutes or hours.
 * @example
 * ```ts
 * import { parseDuration } from '@halfcup/core/units';
 * parseDuration('4:25:00'); // → { ok: true, value: 15900 }
 * parseDuration('30 min'); // → { ok: true, value: 1800 }
 * parseDuration('4:25').ok; // → false
 * ```
 */
export function parseDuration(value: unknown): Parsed<Seconds> {
  if (typeof value !== 'string' || !value.includes(':')) return parseQuantity(value, DURATION);
  const match = /^(\d{1,3}):([0-5]\d):([0-5]\d(?:\.\d{1,6})?)$/u.exec(value.trim());
  if (match === null)
    return refuse(describeValue(value), `${wantedFor(DURATION)}. With colons it is always hours:minutes:seconds`);
  const [, hours, minutes, seconds] = match;
  return { ok: true, value: Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) };
}

/**
 * Seconds after midnight from "08:00" or "08:00:30"; hours may pass 24 (the next day). Anything else is refused, numbers too.
 * @example
 * ```ts
 * import { parseClock } from '@halfcup/core/units';
 * parseClock('08:00:30'); // → { ok: true, value: 28830 }
 * parseClock('26:30'); // → { ok: true, value: 95400 }
 * parseClock('8 am').ok; // → false
 * ```
 */
export function parseClock(value: unknown): Parsed<Seconds> {
  const match = typeof value === 'string' ? /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?$/u.exec(value.trim()) : null;
  if (match === null) return refuse(describeValue(value), 'a time such as 08:00 or 08:00:30; hours may pass 24');
  const [, hours, minutes, seconds = '0'] = match;
  return { ok: true, value: Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) };
}

/**
 * Metres expressed in another unit of length.
 * @example
 * ```ts
 * import { lengthIn } from '@halfcup/core/units';
 * lengthIn(42195, 'mi'); // → 26.2188
 * ```
 */
export function lengthIn(metres: Metres, unit: LengthUnit): number {
  want('lengthIn', 'metres', finite, metres);
  want('lengthIn', 'unit', isLengthUnit, unit);
  const [numerator, denominator] = LENGTHS[unit];
  const product = metres * denominator;
  // One rounding, but where the product is larger than a number can be.
  return Number.isFinite(product) ? product / numerator : (metres / numerator) * denominator;
}

/** Litres expressed in another unit of volume. */
export const volumeIn = (litres: Litres, unit: VolumeUnit): number => (litres * VOLUMES[unit][1]) / VOLUMES[unit][0];

/** Kilograms expressed in another unit of mass. */
export const massIn = (kilograms: Kilograms, unit: MassUnit): number => (kilograms * MASSES[unit][1]) / MASSES[unit][0];

/**
 * Metres of so many of a unit, with one rounding for whole numbers.
 * @example
 * ```ts
 * import { metres } from '@halfcup/core/units';
 * metres(100, 'yd'); // → 91.44
 * ```
 */
export function metres(count: number, unit: LengthUnit): Metres {
  want('metres', 'count', finite, count);
  want('metres', 'unit', isLengthUnit, unit);
  return (count * LENGTHS[unit][0]) / LENGTHS[unit][1];
}

/** Litres of so many of a unit of volume. */
export const litres = (count: number, unit: VolumeUnit): Litres => (count * VOLUMES[unit][0]) / VOLUMES[unit][1];
