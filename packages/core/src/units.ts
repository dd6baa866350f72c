/**
 * Lengths, durations, volumes, masses and clock times: read from text into SI units, and
 * printed for people. The only place that knows a yard.
 * Factors are exact: NIST Handbook 44, appendix C (international yard and pound of 1959,
 * US gallon of 231 cubic inches). A text of up to 15 digits is converted with one rounding.
 */

declare const unit: unique symbol;

/**
 * A number whose unit its type knows: plain numbers pass for one, a number in another unit does not compile.
 * There is nothing of it at run time.
 */
export type In<Unit extends string> = number & { readonly [unit]?: Unit };
/** A length. */
export type Metres = In<'metre'>;
export type Seconds = In<'second'>;
export type Litres = In<'litre'>;
export type Kilograms = In<'kilogram'>;
/** Of an azimuth: clockwise from north. */
export type Degrees = In<'degree'>;
/** Degrees east of Greenwich, WGS 84. */
export type Longitude = In<'degree of longitude'>;
/** Degrees north of the equator, WGS 84, -90 to 90. */
export type Latitude = In<'degree of latitude'>;

/** Systems of units for display. */
export type UnitSystem = 'metric' | 'imperial';

/** A number in SI units, or why there is none: what was found and what is accepted. */
export type Parsed<Quantity extends number = number> = { readonly ok: true; readonly value: Quantity } | { readonly ok: false; readonly message: string };

/** An exact factor to the SI unit, as numerator over denominator. */
type Factor = readonly [numerator: number, denominator: number];

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
  readonly base: string;
  readonly example: string;
  readonly units: Readonly<Record<string, Factor>>;
}

const LENGTH: Kind = { noun: 'a length', base: 'metres', example: '"100 yd" or "5 km"', units: LENGTHS };
const DURATION: Kind = { noun: 'a duration', base: 'seconds', example: '"30 min" or "4:25:00"', units: DURATIONS };
const VOLUME: Kind = { noun: 'a volume', base: 'litres', example: '"7 fl oz" or "200 ml"', units: VOLUMES };
const MASS: Kind = { noun: 'a mass', base: 'kilograms', example: '"8.3 lb" or "3.9 kg"', units: MASSES };

const pattern = (kind: Kind): string => `^\\s*(\\d+(\\.\\d+)?|\\.\\d+)\\s*(${Object.keys(kind.units).join('|').replaceAll(' ', '\\s+')})\\s*$`;

/** Regular expressions of the texts that the readers below accept, for a JSON Schema. */
export const QUANTITY_PATTERNS: Readonly<Record<'length' | 'duration' | 'volume' | 'mass' | 'clock', string>> = {
  length: pattern(LENGTH),
  duration: `${pattern(DURATION)}|^\\s*\\d{1,3}:[0-5]\\d:[0-5]\\d(\\.\\d{1,6})?\\s*$`,
  volume: pattern(VOLUME),
  mass: pattern(MASS),
  clock: '^\\s*\\d{1,3}:[0-5]\\d(:[0-5]\\d)?\\s*$',
};

/** What a value is, in words that fit after "found": texts quoted and cut at 40 characters. */
export function describeValue(value: unknown): string {
  if (typeof value === 'string') {
    const text = JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value);
    return text === '""' ? 'an empty text' : text;
  }
  if (typeof value === 'number') {
    if (Number.isNaN(value)) return 'something that is not a number';
    return Number.isFinite(value) ? String(value) : 'a number too large to hold';
  }
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (value === null || typeof value === 'boolean') return String(value);
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}

const refuse = (found: string, accepted: string): Parsed<never> => ({ ok: false, message: `found ${found}; accepted: ${accepted}` });

const acceptedFor = (kind: Kind): string => {
  const units = Object.keys(kind.units).join(', ');
  return `${kind.noun} of 0 or more, as a number (${kind.base}) or a text such as ${kind.example} (units: ${units})`;
};

/** Decimal digits times an exact factor: one rounding where the digits fit a double. */
function scaled(text: string, [numerator, denominator]: Factor): number {
  const [whole = '', decimals = ''] = text.split('.');
  if (whole.length + decimals.length > 15) return (Number(text) * numerator) / denominator;
  return (Number(whole + decimals) * numerator) / (denominator * 10 ** decimals.length);
}

function parseNumber(value: number, kind: Kind): Parsed {
  if (!Number.isFinite(value) || value < 0) return refuse(describeValue(value), acceptedFor(kind));
  return { ok: true, value: value === 0 ? 0 : value };
}

function parseQuantity(value: unknown, kind: Kind): Parsed {
  if (typeof value === 'number') return parseNumber(value, kind);
  if (typeof value !== 'string') return refuse(describeValue(value), acceptedFor(kind));
  const match = /^(\d+(?:\.\d+)?|\.\d+)\s*(\p{L}[\p{L}\s.]*)?$/u.exec(value.trim());
  if (match === null) return refuse(describeValue(value), acceptedFor(kind));
  const [, digits = '', unit = ''] = match;
  if (unit === '') return refuse(`${describeValue(value)}, which has no unit`, acceptedFor(kind));
  const name = unit.replace(/\s+/gu, ' ');
  const factor = Object.hasOwn(kind.units, name) ? kind.units[name] : undefined;
  if (factor === undefined) return refuse(`${describeValue(value)}, whose unit "${name.slice(0, 40)}" is not known here`, acceptedFor(kind));
  return parseNumber(scaled(digits, factor), kind);
}

/** Metres from a number (metres) or a text such as "100 yd"; refuses what is negative or has no known unit. */
export const parseLength = (value: unknown): Parsed<Metres> => parseQuantity(value, LENGTH);

/** Litres from a number (litres) or a text such as "7 fl oz" (US). */
export const parseVolume = (value: unknown): Parsed<Litres> => parseQuantity(value, VOLUME);

/** Kilograms from a number (kilograms) or a text such as "8.3 lb". */
export const parseMass = (value: unknown): Parsed<Kilograms> => parseQuantity(value, MASS);

/** Seconds from a number (seconds), "30 min", "4 h" or "4:25:00" (seconds may have decimals). "4:25" is refused: it could be either. */
export function parseDuration(value: unknown): Parsed<Seconds> {
  if (typeof value !== 'string' || !value.includes(':')) return parseQuantity(value, DURATION);
  const match = /^(\d{1,3}):([0-5]\d):([0-5]\d(?:\.\d{1,6})?)$/u.exec(value.trim());
  if (match === null) return refuse(describeValue(value), `${acceptedFor(DURATION)}; with colons always hours:minutes:seconds`);
  const [, hours, minutes, seconds] = match;
  return { ok: true, value: Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) };
}

/** Seconds after midnight from "08:00" or "08:00:30"; hours may pass 24 (the next day). */
export function parseClock(value: unknown): Parsed<Seconds> {
  const match = typeof value === 'string' ? /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?$/u.exec(value.trim()) : null;
  if (match === null) return refuse(describeValue(value), 'a clock time such as "08:00" or "08:00:30" (hours may pass 24)');
  const [, hours, minutes, seconds = '0'] = match;
  return { ok: true, value: Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) };
}

/** Metres expressed in another unit of length. */
export const lengthIn = (metres: Metres, unit: LengthUnit): number => (metres * LENGTHS[unit][1]) / LENGTHS[unit][0];

/** Litres expressed in another unit of volume. */
export const volumeIn = (litres: Litres, unit: VolumeUnit): number => (litres * VOLUMES[unit][1]) / VOLUMES[unit][0];

/** Kilograms expressed in another unit of mass. */
export const massIn = (kilograms: Kilograms, unit: MassUnit): number => (kilograms * MASSES[unit][1]) / MASSES[unit][0];

/** Metres of so many of a unit, with one rounding for whole numbers: `metres(100, 'yd')` is 91.44. */
export const metres = (count: number, unit: LengthUnit): Metres => (count * LENGTHS[unit][0]) / LENGTHS[unit][1];

/** Litres of so many of a unit of volume. */
export const litres = (count: number, unit: VolumeUnit): Litres => (count * VOLUMES[unit][0]) / VOLUMES[unit][1];

/** What people see where there is no finite number. */
const NONE = '–';

/** A number with so many decimals, never "-0"; a dash for what is not finite. `drop` leaves out zeros at the end. */
function digits(value: number, decimals: number, drop: boolean): string {
  if (!Number.isFinite(value)) return NONE;
  const fixed = value.toFixed(decimals);
  const short = drop && fixed.includes('.') ? fixed.replace(/\.?0+$/u, '') : fixed;
  return Number(short) === 0 ? short.replace('-', '') : short;
}

const withUnit = (text: string, unit: string): string => (text === NONE ? NONE : `${text} ${unit}`);

/**
 * What the length is for. `long`: between places on a course (km, mi). `wheel`: laid out with a
 * measuring wheel, such as signs and trash (m, yd). `table`: at the tables (m, ft).
 */
export type LengthStyle = 'long' | 'wheel' | 'table';

const STYLES: Readonly<Record<UnitSystem, Readonly<Record<LengthStyle, readonly [unit: LengthUnit, decimals: number, drop: boolean]>>>> = {
  metric: { long: ['km', 2, false], wheel: ['m', 1, true], table: ['m', 2, true] },
  imperial: { long: ['mi', 2, false], wheel: ['yd', 1, true], table: ['ft', 1, true] },
};

/**
 * A length in metres for people: "5.01 km", "100 yd", "6 ft". `decimals` replaces the style's own number of
 * decimals. What is not finite prints as a dash.
 */
export function formatLength(metres: Metres, units: UnitSystem, style: LengthStyle, decimals?: number): string {
  const [unit, usual, drop] = STYLES[units][style];
  return withUnit(digits(lengthIn(metres, unit), decimals ?? usual, drop), unit);
}

/** Course distance (a measure in metres) for people, to about a metre: "5.012 km", "3.114 mi". */
export const formatMeasure = (measure: Metres, units: UnitSystem): string => formatLength(measure, units, 'long', 3);

/** A volume in litres for people: "7.6 l" or "2.0 gal" (US). */
export function formatVolume(litres: Litres, units: UnitSystem): string {
  const unit = units === 'metric' ? 'l' : 'gal';
  return withUnit(digits(volumeIn(litres, unit), 1, false), unit);
}

/** A mass in kilograms for people: "3.9 kg" or "8.6 lb". */
export function formatMass(kilograms: Kilograms, units: UnitSystem): string {
  const unit = units === 'metric' ? 'kg' : 'lb';
  return withUnit(digits(massIn(kilograms, unit), 1, false), unit);
}

const two = (value: number): string => String(value).padStart(2, '0');

/** HH:MM:SS of seconds after midnight, rounded to a second; hours pass 24, and a minus counts back from midnight. */
export function formatClock(seconds: Seconds): string {
  if (!Number.isFinite(seconds)) return NONE;
  const whole = Math.round(Math.abs(seconds));
  const sign = seconds < 0 && whole > 0 ? '-' : '';
  return `${sign}${two(Math.floor(whole / 3600))}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}

/** HH:MM of the clock minute that a time falls in (seconds after midnight, rounded down). */
export const formatMinute = (seconds: Seconds): string =>
  Number.isFinite(seconds) ? formatClock(Math.floor(seconds / 60) * 60).slice(0, -3) : NONE;

/** A duration for people, to a second: "45 s", "30 min", "4 h", else "4:25:00"; all of them read back by `parseDuration`. */
export function formatDuration(seconds: Seconds): string {
  if (!Number.isFinite(seconds)) return NONE;
  const whole = Math.round(Math.abs(seconds));
  const sign = seconds < 0 && whole > 0 ? '-' : '';
  if (whole < 60) return `${sign}${whole} s`;
  if (whole % 3600 === 0) return `${sign}${whole / 3600} h`;
  if (whole % 60 === 0 && whole < 3600) return `${sign}${whole / 60} min`;
  return `${sign}${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}
