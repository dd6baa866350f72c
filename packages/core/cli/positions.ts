/**
 * Positions on the command line: `LON,LAT`. One that begins with a minus would be taken for an
 * option; such tokens are masked before the options are read, and unmasked afterwards.
 */
import { type Result, good } from '../src/finding.ts';
import type { LonLat } from '../src/finding.ts';
import { refuse } from './call.ts';
import { POINTS } from './messages.ts';

/** No argument of a process can hold this character. */
const MASK = '\0';

/** No option begins with a digit: a token such as `-118.51,34.08` or `-5m` is a value. */
export const mask = (argv: readonly string[]): string[] =>
  argv.map((token) => (/^-[\d.]/u.test(token) ? MASK + token : token));

export const unmask = (token: string): string => (token.startsWith(MASK) ? token.slice(1) : token);

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)$/u;

/** Longitude and latitude of a token; says when the two look swapped. */
export function parsePosition(token: string): Result<LonLat> {
  const parts = token.split(',').map((part) => part.trim());
  const [lonText = '', latText = ''] = parts;
  if (parts.length !== 2 || !NUMBER.test(lonText) || !NUMBER.test(latText)) return refuse(POINTS.notAPoint(token));
  // Adding nought turns -0 into 0.
  const [lon, lat] = [Number(lonText) + 0, Number(latText) + 0];
  if (Math.abs(lat) > 90) {
    const swapped = Math.abs(lon) <= 90 ? `${latText},${lonText}` : null;
    return refuse(POINTS.latitude(token, latText, swapped));
  }
  if (Math.abs(lon) > 180) return refuse(POINTS.longitude(token, lonText));
  return good([lon, lat]);
}
