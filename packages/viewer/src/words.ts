/**
 * The words and figures that people read: item names, sides, compass words, and lengths as a crew can lay them out,
 * in the units chosen for display. Lengths come in as metres.
 */
import type { Finding, Severity } from '@halfcup/core';
import type { ItemKind, PointKind, Served, Units } from '@halfcup/core/plan';
import type { StationPhase } from '@halfcup/core/raceday';
import type { Say } from '@halfcup/core/sentences';
import type { Side } from '@halfcup/core/stages';
import { NO_NAMES, sayOf } from '@halfcup/core/sentences';

export const DASH = '–';
const MINUS = '−';

export const ITEM_WORD: Readonly<Record<ItemKind, string>> = {
  sign: 'Sign',
  gel: 'Gel',
  sportsDrink: 'Sports drink',
  water: 'Water',
  handOut: 'Hand-out line',
  trash: 'Trash',
};

export const SERVED_WORD: Readonly<Record<Served, string>> = {
  gel: 'gel',
  sportsDrink: 'sports drink',
  water: 'water',
};

export const POINT_WORD: Readonly<Record<PointKind, string>> = {
  drop: 'Drop',
  access: 'Access',
  medical: 'Medical',
  toilets: 'Toilets',
  radio: 'Radio',
  other: 'Point',
};

export const SEVERITY_WORD: Readonly<Record<Severity, string>> = { error: 'Error', warning: 'Warning', note: 'Note' };

/** "4 %", "2.5 %"; of a grade with its sign: "+2.5 %", "−1 %", "0 %". */
export const percentText = (share: number): string => `${Math.round(share * 1000) / 10} %`;
export function gradeText(grade: number): string {
  const tenths = Math.round(Math.abs(grade) * 1000) / 10;
  return `${tenths === 0 ? '' : grade < 0 ? MINUS : '+'}${tenths} %`;
}

export const PHASE_WORD: Readonly<Record<StationPhase, string>> = {
  before: 'not there yet',
  settingUp: 'setting up',
  ready: 'ready',
  open: 'open',
  breakingDown: 'clearing',
  packed: 'packed',
};

/** "1,968"; up to one decimal. */
export const grouped = (count: number): string =>
  new Intl.NumberFormat('en-GB', { maximumFractionDigits: 1 }).format(count);

/** "right-hand side", or what there is to say instead. */
export const sideWords = (side: Side): string => (side === 'unclear' ? 'side unclear' : `${side}-hand side`);

const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const;

/** The nearest of eight compass words to an azimuth in degrees, any turn of it. */
export function compassWord(azimuthDeg: number): string {
  const eighth = Math.round((((azimuthDeg % 360) + 360) % 360) / 45) % 8;
  return COMPASS[eighth] ?? 'north';
}

/** Runners heading `azimuthDeg` come from the opposite word: "from the north, heading south". */
export const comeFrom = (azimuthDeg: number): string =>
  `from the ${compassWord(azimuthDeg + 180)}, heading ${compassWord(azimuthDeg)}`;

/** "2nd": which time runners come past. */
export function ordinal(count: number): string {
  const tens = count % 100;
  const ending = tens > 10 && tens < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][count % 10] ?? 'th');
  return `${count}${ending}`;
}

/** ", 2nd time past" where a race comes past more than once; `pass` counts from 0. */
export const timePast = (pass: number): string => (pass === 0 ? '' : `, ${ordinal(pass + 1)} time past`);

export const longUnit = (units: Units): string => (units === 'metric' ? 'km' : 'mi');
export const wheelUnit = (units: Units): string => (units === 'metric' ? 'm' : 'yd');

const SAY: Readonly<Record<Units, Say>> = {
  metric: sayOf({ language: 'en', units: 'metric', names: NO_NAMES }),
  imperial: sayOf({ language: 'en', units: 'imperial', names: NO_NAMES }),
};

const signed = (text: string): string => text.replace(/^-/u, MINUS);

/** Under a kilometre or half a mile as laid out on the ground, above it as a course distance. */
const isFar = (metres: number, units: Units): boolean => Math.abs(metres) >= (units === 'metric' ? 1000 : 804.672);

/** "82 m", "5.5 m", "1.20 km"; "100 yd", "18 ft", "0.75 mi". */
export const lengthText = (metres: number, units: Units): string =>
  signed(isFar(metres, units) ? SAY[units].far(metres) : SAY[units].length(metres));

/** A course distance: "41.39 km". */
export const farText = (metres: number, units: Units): string => signed(SAY[units].far(metres));

/** The bare number for a column whose head carries the unit; a dash for `null`. */
export const longFigure = (metres: number | null, units: Units): string =>
  metres === null ? DASH : farText(metres, units).replace(/ \S+$/u, '');

const bare = (text: string, units: Units): string => text.replace(new RegExp(` ${wheelUnit(units)}$`, 'u'), '');

/** The bare number for a column in m or yd; what is given in feet carries its own unit, "18 ft". */
export const wheelFigure = (metres: number | null, units: Units): string => {
  if (metres === null) return DASH;
  const text = SAY[units].length(metres);
  return text.startsWith('0 ') ? '0' : bare(signed(text), units);
};

/** One figure, or "52 to 97" where the two ends differ, both in one unit. */
export function wheelRange(pair: readonly [number, number] | null, units: Units): string {
  if (pair === null) return DASH;
  const text = SAY[units].range(pair[0], pair[1]);
  return text.startsWith('0 ') && !text.includes(' to ')
    ? '0'
    : bare(text.replaceAll(/(^| )-(?=\d)/gu, `$1${MINUS}`), units);
}

/** From this confidence on a side is not in doubt. */
const SURE = 0.95;

/** "72 % sure" where it is in doubt, else nothing. */
export const sureText = (confidence: number): string =>
  confidence >= SURE ? '' : `${Math.floor(confidence * 100)} % sure`;

/** "1 error", "2 errors". */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

/** "1 error, 2 notes"; empty where there is none. */
export const countWords = (counts: Readonly<Record<Severity, number>>): string =>
  (['error', 'warning', 'note'] as const)
    .filter((severity) => counts[severity] > 0)
    .map((severity) => counted(counts[severity], severity))
    .join(', ');

/** "1 waived error, 2 other waived findings"; empty where there is none. */
export const waivedWords = ({ errors, others }: { readonly errors: number; readonly others: number }): string =>
  [
    errors === 0 ? '' : counted(errors, 'waived error'),
    others === 0 ? '' : counted(others, errors === 0 ? 'waived finding' : 'other waived finding'),
  ]
    .filter((part) => part !== '')
    .join(', ');

function quantity(value: number, unit: string | undefined, units: Units): string {
  if (unit === 'kg') return SAY[units].mass(value);
  if (unit === 's') return SAY[units].duration(value);
  if (unit === '%') return `${signed((100 * value).toFixed(1).replace(/\.0$/u, ''))} %`;
  const figure = signed(Number(value.toPrecision(4)).toString());
  if (unit === undefined || unit === '') return figure;
  return unit === '°' || unit === 'degrees' ? `${figure}°` : `${figure} ${unit}`;
}

/** Checks whose figures are grades, rise over run. */
const GRADES = new Set(['grade-at-tables', 'after-descent', 'descent-with-wheels', 'sign-hard-to-read']);

/** What a check measured and what it asks for, each `null` where the finding has none, or only counts what is missing. */
export function figuresOf(
  { code = '', measured, limit, unit: given }: Partial<Pick<Finding, 'code' | 'measured' | 'limit' | 'unit'>>,
  units: Units,
): { readonly measured: string | null; readonly limit: string | null } {
  const unit = given === undefined && GRADES.has(code) ? '%' : given;
  if (unit === undefined && limit === 0) return { measured: null, limit: null };
  const bounds = limit === undefined ? [] : typeof limit === 'number' ? [limit] : limit;
  const far = unit === 'm' && [...bounds, measured ?? 0].some((value) => isFar(value, units));
  if (unit === 'm' && !far && measured !== undefined && limit !== undefined) {
    const compared = SAY[units].compare(measured, limit);
    return { measured: signed(compared.measured), limit: signed(compared.limit) };
  }
  const one = (value: number): string =>
    unit === 'm' ? (far ? farText(value, units) : lengthText(value, units)) : quantity(value, unit, units);
  return {
    measured: measured === undefined ? null : one(measured),
    limit: bounds.length === 0 ? null : bounds.map(one).join(' to '),
  };
}

/** "Sunday 12 September 2027" of an ISO date, the text itself where it is none. */
export function dateText(iso: string): string {
  const date = new Date(`${iso}T00:00:00Z`);
  if (Number.isNaN(date.getTime())) return iso;
  const part = (form: Intl.DateTimeFormatOptions): string =>
    new Intl.DateTimeFormat('en-GB', { ...form, timeZone: 'UTC' }).format(date);
  return `${part({ weekday: 'long' })} ${part({ dateStyle: 'long' })}`;
}
