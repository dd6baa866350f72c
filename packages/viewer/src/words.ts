/**
 * The words and figures that people read: item names, sides, compass words, lengths in the
 * units chosen for display. Lengths come in as metres.
 */
import type { Finding, ItemKind, PointKind, Served, Severity, Side, Units } from '@halfcup/core';
import { formatLength, lengthIn } from '@halfcup/core';

export const DASH = '–';
const MINUS = '−';

export const ITEM_WORD: Readonly<Record<ItemKind, string>> = {
  sign: 'Ahead',
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

export const SEVERITY_WORD: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', note: 'note' };

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

export const longUnit = (units: Units): string => (units === 'metric' ? 'km' : 'mi');
export const wheelUnit = (units: Units): string => (units === 'metric' ? 'm' : 'yd');

const signed = (value: number, decimals: number): string => {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
};

/** The bare number for a column whose head carries the unit; a dash for `null`. */
export const longFigure = (metres: number | null, units: Units): string =>
  metres === null ? DASH : signed(lengthIn(metres, units === 'metric' ? 'km' : 'mi'), 2);

export const wheelFigure = (metres: number | null, units: Units, decimals = 1): string =>
  metres === null ? DASH : signed(lengthIn(metres, units === 'metric' ? 'm' : 'yd'), decimals);

/** One figure, or "52.1 to 97.0" where the two ends differ. */
export function wheelRange(pair: readonly [number, number] | null, units: Units): string {
  if (pair === null) return DASH;
  const [from, to] = [wheelFigure(pair[0], units), wheelFigure(pair[1], units)];
  return from === to ? from : `${from} to ${to}`;
}

/** Under a kilometre or half a mile as laid out on the ground, above it as a course distance. */
export function lengthText(metres: number, units: Units): string {
  const far = Math.abs(metres) >= (units === 'metric' ? 1000 : 804.672);
  return formatLength(metres, units, far ? 'long' : 'wheel').replace(/^-/u, MINUS);
}

export const percent = (share: number): string => (share > 0.9995 ? '>99.9 %' : `${(share * 100).toFixed(1)} %`);

/** "1 error", "2 errors". */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

const quantity = (value: number, unit: string | undefined, units: Units): string => {
  if (unit === 'm') return lengthText(value, units);
  const figure = Number(value.toPrecision(4)).toString().replace(/^-/u, MINUS);
  return unit === undefined || unit === '' ? figure : `${figure} ${unit}`;
};

/** What a check measured and what it asks for, each `null` where the finding has none. */
export function figuresOf(
  finding: Finding,
  units: Units,
): { readonly measured: string | null; readonly limit: string | null } {
  const { measured, limit, unit } = finding;
  const bound = (value: number): string => quantity(value, unit, units);
  return {
    measured: measured === undefined ? null : bound(measured),
    limit:
      limit === undefined
        ? null
        : typeof limit === 'number'
          ? bound(limit)
          : `${bound(limit[0])} to ${bound(limit[1])}`,
  };
}

/** "12 September 2027" of an ISO date, the text itself where it is none. */
export function dateText(iso: string): string {
  const date = new Date(`${iso}T00:00:00Z`);
  return Number.isNaN(date.getTime())
    ? iso
    : new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(date);
}
