/**
 * Lengths, durations, volumes, masses and clock times printed for people, in the units they use.
 */
import {
  type Kilograms,
  type LengthUnit,
  type Litres,
  type Metres,
  type Seconds,
  type UnitSystem,
  lengthIn,
  massIn,
  volumeIn,
} from './units.ts';
import { aNumber, oneOf, want, maybe, upTo } from './wants.ts';

/** What people see where there is no finite number. */
const NONE = '–';

/** So many decimals, and never an exponent, which `toFixed` has from 1e21 on. */
export const plainFixed = (value: number, decimals: number): string =>
  Math.abs(value) < 1e21 ? value.toFixed(decimals) : String(BigInt(value));

/** A number with so many decimals, never "-0"; a dash for what is not finite. `drop` leaves out zeros at the end. */
function digits(value: number, decimals: number, drop: boolean): string {
  if (!Number.isFinite(value)) return NONE;
  const fixed = plainFixed(value, decimals);
  const short = drop && fixed.includes('.') ? fixed.replace(/\.?0+$/u, '') : fixed;
  return Number(short) === 0 ? short.replace('-', '') : short;
}

const withUnit = (text: string, unit: string): string => (text === NONE ? NONE : `${text} ${unit}`);

/**
 * What the length is for. `long`: between places on a course (km, mi). `wheel`: laid out with a
 * measuring wheel, such as signs and trash (m, yd). `table`: at the tables (m, ft).
 */
export type LengthStyle = 'long' | 'wheel' | 'table';

const STYLES: Readonly<
  Record<UnitSystem, Readonly<Record<LengthStyle, readonly [unit: LengthUnit, decimals: number, drop: boolean]>>>
> = {
  metric: { long: ['km', 2, false], wheel: ['m', 1, true], table: ['m', 2, true] },
  imperial: { long: ['mi', 2, false], wheel: ['yd', 1, true], table: ['ft', 1, true] },
};

/**
 * A length in metres for people: "5.01 km", "100 yd", "6 ft". `decimals` replaces the style's own number of
 * decimals. What is not finite prints as a dash.
 * @example
 * ```ts
 * import { formatLength } from '@halfcup/core/units';
 * formatLength(5012.3, 'metric', 'long'); // → '5.01 km'
 * formatLength(91.44, 'imperial', 'wheel'); // → '100 yd'
 * formatLength(1.8288, 'imperial', 'table'); // → '6 ft'
 * ```
 */
export function formatLength(metres: Metres, units: UnitSystem, style: LengthStyle, decimals?: number): string {
  want('formatLength', 'metres', aNumber, metres);
  want('formatLength', 'units', oneOf('metric', 'imperial'), units);
  want('formatLength', 'style', oneOf('long', 'wheel', 'table'), style);
  want('formatLength', 'decimals', maybe(upTo(100)), decimals);
  const [unit, usual, drop] = STYLES[units][style];
  return Number.isFinite(metres) ? withUnit(digits(lengthIn(metres, unit), decimals ?? usual, drop), unit) : NONE;
}

/**
 * Course distance (a measure in metres) for people, to about a metre. What is not finite prints as a dash.
 * @example
 * ```ts
 * import { formatMeasure } from '@halfcup/core/units';
 * formatMeasure(5012.3, 'metric'); // → '5.012 km'
 * formatMeasure(5012.3, 'imperial'); // → '3.114 mi'
 * ```
 */
export function formatMeasure(measure: Metres, units: UnitSystem): string {
  want('formatMeasure', 'measure', aNumber, measure);
  want('formatMeasure', 'units', oneOf('metric', 'imperial'), units);
  return formatLength(measure, units, 'long', 3);
}

/**
 * A volume in litres for people, in litres or US gallons. What is not finite prints as a dash.
 * @example
 * ```ts
 * import { formatVolume } from '@halfcup/core/units';
 * formatVolume(7.57, 'metric'); // → '7.6 l'
 * formatVolume(7.57, 'imperial'); // → '2.0 gal'
 * ```
 */
export function formatVolume(litres: Litres, units: UnitSystem): string {
  want('formatVolume', 'litres', aNumber, litres);
  want('formatVolume', 'units', oneOf('metric', 'imperial'), units);
  const unit = units === 'metric' ? 'l' : 'gal';
  return withUnit(digits(volumeIn(litres, unit), 1, false), unit);
}

/**
 * A mass in kilograms for people, in kilograms or pounds. What is not finite prints as a dash.
 * @example
 * ```ts
 * import { formatMass } from '@halfcup/core/units';
 * formatMass(3.9, 'metric'); // → '3.9 kg'
 * formatMass(3.9, 'imperial'); // → '8.6 lb'
 * ```
 */
export function formatMass(kilograms: Kilograms, units: UnitSystem): string {
  want('formatMass', 'kilograms', aNumber, kilograms);
  want('formatMass', 'units', oneOf('metric', 'imperial'), units);
  const unit = units === 'metric' ? 'kg' : 'lb';
  return withUnit(digits(massIn(kilograms, unit), 1, false), unit);
}

const two = (value: number): string => String(value).padStart(2, '0');

/**
 * HH:MM:SS of seconds after midnight, rounded to a second; hours pass 24, and a minus counts back from midnight. What is not
 * finite prints as a dash.
 * @example
 * ```ts
 * import { formatClock } from '@halfcup/core/units';
 * formatClock(28830); // → '08:00:30'
 * formatClock(95400); // → '26:30:00'
 * formatClock(-60); // → '-00:01:00'
 * ```
 */
export function formatClock(seconds: Seconds): string {
  want('formatClock', 'seconds', aNumber, seconds);
  if (!Number.isFinite(seconds)) return NONE;
  const whole = Math.round(Math.abs(seconds));
  const sign = seconds < 0 && whole > 0 ? '-' : '';
  return `${sign}${two(Math.floor(whole / 3600))}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}

/**
 * HH:MM of the clock minute that a time falls in (seconds after midnight, rounded down). What is not finite prints as a dash.
 * @example
 * ```ts
 * import { formatMinute } from '@halfcup/core/units';
 * formatMinute(28859); // → '08:00'
 * ```
 */
export function formatMinute(seconds: Seconds): string {
  want('formatMinute', 'seconds', aNumber, seconds);
  return Number.isFinite(seconds) ? formatClock(Math.floor(seconds / 60) * 60).slice(0, -3) : NONE;
}

/**
 * A duration in seconds for people, to a second: "45 s", "30 min", "4 h", else "4:25:00"; of 0 or more all of them read back by
 * `parseDuration`. What is not finite prints as a dash.
 * @example
 * ```ts
 * import { formatDuration } from '@halfcup/core/units';
 * formatDuration(1800); // → '30 min'
 * formatDuration(15900); // → '4:25:00'
 * ```
 */
export function formatDuration(seconds: Seconds): string {
  want('formatDuration', 'seconds', aNumber, seconds);
  if (!Number.isFinite(seconds)) return NONE;
  const whole = Math.round(Math.abs(seconds));
  const sign = seconds < 0 && whole > 0 ? '-' : '';
  if (whole < 60) return `${sign}${whole} s`;
  if (whole % 3600 === 0) return `${sign}${whole / 3600} h`;
  if (whole % 60 === 0 && whole < 3600) return `${sign}${whole / 60} min`;
  return `${sign}${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
}
