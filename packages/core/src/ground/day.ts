/** Days of dates and times, as files of streets have them. */

/** The day of a date or a time (ISO 8601), `null` where it is none of the calendar. */
export function dayOf(value: unknown): string | null {
  const day = typeof value === 'string' ? /^\d{4}-\d{2}-\d{2}(?=$|T|\s)/u.exec(value)?.[0] : undefined;
  if (day === undefined) return null;
  const time = Date.parse(`${day}T00:00:00Z`);
  // A 30 February is taken for a day of March.
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(day) ? day : null;
}
