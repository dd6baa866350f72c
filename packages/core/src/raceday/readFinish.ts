/** A time of results as people write it. */
/** What results write for who did not start, did not finish, was disqualified or was not timed. */
const NO_FINISH: ReadonlySet<string> = new Set(['', '-', '--', '–', '—', 'DNF', 'DNS', 'DSQ', 'DQ', 'DNC', 'NT']);

/**
 * Seconds from "3:59:10", "59:10", "14350" or "3:59:10.5" (a comma for the point too, after colons); `null` for who has
 * no finish, `undefined` for what is neither.
 */
export function readFinish(text: string): number | null | undefined {
  const trimmed = text.trim();
  if (NO_FINISH.has(trimmed.toUpperCase())) return null;
  if (/^\d+(\.\d+)?$/u.test(trimmed)) return positive(Number(trimmed));
  const match = /^(?:(\d{1,3}):([0-5]?\d)|(\d{1,3})):([0-5]\d(?:[.,]\d+)?)$/u.exec(trimmed);
  if (match === null) return undefined;
  const [, hours = '0', minutes, alone = '0', seconds = '0'] = match;
  return positive(Number(hours) * 3600 + Number(minutes ?? alone) * 60 + Number(seconds.replace(',', '.')));
}

const positive = (seconds: number): number | undefined =>
  seconds > 0 && Number.isFinite(seconds) ? seconds : undefined;
