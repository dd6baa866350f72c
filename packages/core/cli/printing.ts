/** How all commands print: JSON, units, dates. */
import type { UnitSystem } from '../src/units.ts';
import type { Call } from './call.ts';
import { cleanJson } from './clean.ts';

/** Two spaces, short lists of numbers on one line each. */
export function json(value: unknown): string {
  const spread = JSON.stringify(value, null, 2);
  // A line break cannot stand inside a JSON text, so this meets lists of numbers (and null) only.
  const short = spread.replaceAll(
    /\[\n\s+((?:-?[\d.e+-]+|null)(?:,\n\s+(?:-?[\d.e+-]+|null))*)\n\s+\]/gu,
    (_, inner: string) => `[${inner.replaceAll(/,\s+/gu, ', ')}]`,
  );
  return `${cleanJson(short)}\n`;
}

/** Units of the call, else the plan's, else metric. */
export const unitsOf = (call: Call, usual: UnitSystem = 'metric'): UnitSystem =>
  (call.values.get('units') as UnitSystem | undefined) ?? usual;

/** "Sunday 12 September 2027" of an ISO 8601 day. */
export function dayText(iso: string): string {
  const format = new Intl.DateTimeFormat('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  return format
    .formatToParts(new Date(`${iso}T00:00:00Z`))
    .filter(({ type }) => type !== 'literal')
    .map(({ value }) => value)
    .join(' ');
}
