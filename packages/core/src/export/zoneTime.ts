/**
 * Instants of clock times in an IANA time zone, by the tables that `Intl` carries. Of a time that the clock shows
 * twice the first is meant, and one that it skips is read with the offset before the gap: RFC 5545, 3.3.5.
 */

const DAY = 86_400_000;

/** What is to be said of a clock time: `skipped` in spring, `repeated` in autumn. */
export type ClockTrouble = 'skipped' | 'repeated';

export interface ZonedInstant {
  /** Milliseconds since 1970 UTC. */
  readonly instant: number;
  readonly trouble: ClockTrouble | null;
}

/** Milliseconds by which the clock of a zone is ahead of UTC at an instant. */
export function zoneAhead(timeZone: string, instant: number): number {
  const whole = Math.floor(instant / 1000) * 1000;
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  const parts = new Map(format.formatToParts(whole).map(({ type, value }) => [type, Number(value)]));
  const of = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type)!;
  return Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'), of('second')) - whole;
}

/**
 * The instant at which the clocks of a zone show a time of a day: `date` ISO 8601, `seconds` after its midnight as the
 * clock counts (the next day's from 24 h on, the day's before under 0). Throws a RangeError for a zone or date that is none.
 */
export function zonedInstant(date: string, seconds: number, timeZone: string): ZonedInstant {
  const shown = Date.parse(`${date}T00:00:00Z`) + Math.round(seconds) * 1000;
  if (Number.isNaN(shown)) throw new RangeError(`expected a date and a number of seconds, got ${date} and ${seconds}`);
  const before = zoneAhead(timeZone, shown - DAY);
  const after = zoneAhead(timeZone, shown + DAY);
  const shows = (ahead: number): boolean => zoneAhead(timeZone, shown - ahead) === ahead;
  if (before === after) return { instant: shown - before, trouble: null };
  if (shows(before)) return { instant: shown - before, trouble: shows(after) ? 'repeated' : null };
  return shows(after) ? { instant: shown - after, trouble: null } : { instant: shown - before, trouble: 'skipped' };
}
