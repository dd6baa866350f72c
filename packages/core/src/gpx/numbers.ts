/**
 * Numbers of a GPX file: XML Schema decimals and doubles (XSD 1.1 part 2, 3.3.3 and 3.3.5) without INF and NaN,
 * white space around them collapsed; and what is wrong with the others. Short decimals are divided by
 * an exact power of ten, which rounds correctly (Clinger 1990, doi:10.1145/93542.93557); the rest is left to Number.
 */

import type { BadNumber } from '../text/params/gpx.ts';
import { excerpt, type Place, type Trouble } from './trouble.ts';

const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** 10⁰ to 10⁹: with at most 15 digits in all, both sides of the division below are whole numbers that a double holds. */
const POWERS = Float64Array.from({ length: 10 }, (_, exponent) => Number(`1e${exponent}`));
/** Digits on one side of the point that a 32-bit integer holds, and in all. */
const SIDE = 9;
const ALL = 15;

/**
 * Writes the value of a short decimal, with or without a point and a minus, at a place of a list; false for any other text.
 * Both sides of the point in integers, which are quicker; into a list, since a number that is returned is put on the heap.
 */
function readShort(text: string, into: Float64Array, at: number): boolean {
  const { length } = text;
  const from = text.charCodeAt(0) === 45 ? 1 : 0;
  let digit = 0;
  let whole = 0;
  let i = from;
  for (; i < length; i++) {
    digit = text.charCodeAt(i) - 48;
    if (digit < 0 || digit > 9) break;
    whole = (whole * 10 + digit) | 0;
  }
  const before = i - from;
  if (before > SIDE) return false;
  if (i === length) {
    into[at] = from === 1 ? 0 - whole : whole;
    return before > 0;
  }
  if (digit !== 46 - 48) return false;
  let fraction = 0;
  for (i++; i < length; i++) {
    digit = text.charCodeAt(i) - 48;
    if (digit < 0 || digit > 9) return false;
    fraction = (fraction * 10 + digit) | 0;
  }
  const behind = length - from - before - 1;
  if (behind > SIDE || before + behind > ALL || before + behind === 0) return false;
  const power = POWERS[behind]!;
  const value = (whole * power + fraction) / power;
  into[at] = from === 1 ? 0 - value : value;
  return true;
}

/** Writes the number of a text at a place of a list; false where the text is none or too large for one; `-0` becomes 0. */
export function readNumber(text: string, into: Float64Array, at: number): boolean {
  if (readShort(text, into, at)) return true;
  if (!DECIMAL.test(text)) {
    const trimmed = text.trim();
    return trimmed !== text && readNumber(trimmed, into, at);
  }
  into[at] = Number(text) + 0;
  return Number.isFinite(into[at]);
}

/** The number, or `null` where the text is none or too large for one. */
export function parseNumber(text: string): number | null {
  const into = new Float64Array(1);
  return readNumber(text, into, 0) ? into[0]! : null;
}

/** What is wrong with a text that should be a number. */
export function badNumber(text: string): BadNumber {
  const trimmed = text.trim();
  if (trimmed === '') return { found: '', fault: 'empty' };
  // A literal mark in a message would look like a fault of ours.
  if (/^[+-]?nan$/i.test(trimmed)) return { found: '', fault: 'mark' };
  const found = excerpt(text);
  if (/^[+-]?\d+,\d+$/.test(trimmed)) return { found, fault: 'comma' };
  return { found, fault: DECIMAL.test(trimmed) ? 'large' : 'word' };
}

const LIMIT = { lat: 90, lon: 180 } as const;
const CODE = { lat: 'gpx-latitude', lon: 'gpx-longitude' } as const;
type Axis = keyof typeof LIMIT;

/** Reports every fault of a point's `lat` and `lon`. To be called only where one of them cannot stand. */
export function reportPosition(
  trouble: Trouble,
  element: string,
  lat: string | undefined,
  lon: string | undefined,
  place: Place,
): void {
  reportAxis(trouble, element, 'lat', lat, lon, place);
  reportAxis(trouble, element, 'lon', lon, lat, place);
}

function reportAxis(
  trouble: Trouble,
  element: string,
  axis: Axis,
  text: string | undefined,
  otherText: string | undefined,
  place: Place,
): void {
  if (text === undefined) {
    trouble.report('error', CODE[axis], { element, fault: 'missing' }, place);
    return;
  }
  const value = parseNumber(text);
  if (value === null) {
    trouble.report('error', CODE[axis], { element, ...badNumber(text) }, place);
    return;
  }
  const limit = LIMIT[axis];
  if (Math.abs(value) <= limit) return;
  const other = otherText === undefined ? null : parseNumber(otherText);
  const params = { element, fault: 'range', found: excerpt(text.trim()), ...rangeHint(axis, value, other) } as const;
  trouble.report('error', CODE[axis], params, place, { measured: value, limit: [-limit, limit], unit: 'degrees' });
}

type Hint = { readonly hint: 'swapped' | null } | { readonly hint: 'wrapped'; readonly instead: number };

function rangeHint(axis: Axis, value: number, other: number | null): Hint {
  if (axis === 'lat' && Math.abs(value) <= 180 && other !== null && Math.abs(other) <= 90) return { hint: 'swapped' };
  if (axis === 'lon' && value > 180 && value <= 360)
    return { hint: 'wrapped', instead: Number((value - 360).toFixed(9)) };
  return { hint: null };
}
