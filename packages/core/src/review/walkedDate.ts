/** Stations that somebody is said to have walked after the race, or so long before it that the place may be another. */
import type { Layout } from '../layout/layout.ts';
import { type Case, type Check, COMMON_PRACTICE, check } from './check.ts';

/** Years: common practice, no source. */
const OLD = 3;

/** The same day so many years earlier, as a calendar date. */
const yearsBefore = (date: string, years: number): string =>
  `${String(Number(date.slice(0, 4)) - years).padStart(4, '0')}${date.slice(4)}`;

function casesOf({ plan: { date, stations } }: Layout, is: 'after' | 'before'): Case<'walked-date'>[] {
  if (date === undefined) return [];
  const oldest = yearsBefore(date, OLD);
  const off = stations.flatMap(({ id, walked }) => {
    const on = walked?.date;
    return on !== undefined && (is === 'after' ? on > date : on < oldest) ? [{ station: id, date: on }] : [];
  });
  const [first] = off.sort((a, b) => a.date.localeCompare(b.date));
  if (first === undefined) return [];
  const alone = off.length === 1 ? { station: first.station } : {};
  return [
    {
      params: { is, stations: off, date },
      where: { path: '/stations', ...alone },
      severity: is === 'after' ? 'warning' : 'note',
      measured: off.length,
      limit: 0,
    },
  ];
}

export const walkedDate: Check = check(
  {
    code: 'walked-date',
    severity: 'warning',
    source: COMMON_PRACTICE,
    missing: ({ plan }) => (plan.date === undefined ? 'no-date' : null),
  },
  (layout) => (['after', 'before'] as const).flatMap((is) => casesOf(layout, is)),
);
