/** Who of the roster is at a station, against the crew that the day needs there. */
import type { Plan, PlanPerson, PlanStation } from '../plan/plan.ts';
import { byId } from '../plan/lookups.ts';
import { saysNothing } from '../plan/placeholder.ts';
import { isPlan } from '../plan/shapes.ts';
import { type Shape, aText, finite, listOf, orNull, recordOf, want } from '../wants.ts';
import type { StationDay } from './day.ts';

/** People of the roster at a station, in its order. */
export const peopleAt = ({ people }: Pick<Plan, 'people'>, station: string): readonly PlanPerson[] =>
  (people?.crew ?? []).filter((one) => one.station === station);

/** Fewest who are there while a station serves, and from when. */
export interface Presence {
  readonly there: number;
  /** A whole minute, seconds after midnight. */
  readonly at: number;
  readonly needed: number;
}

const minute = (seconds: number): number => Math.floor(seconds / 60);
const plain = (name: string): string => name.trim().toLowerCase();

/** Whether two entries name the same person. */
export const sameName = (a: string, b: string): boolean => plain(a) === plain(b);

/**
 * The fewest people at a station from when it serves until it closes, by whole minutes: who gives no hours is there for all of
 * them. The captain whom the station names counts, also where the roster does not list them. `null` where nobody arrives.
 */
export function presenceAt(
  plan: Pick<Plan, 'people'>,
  { id, people: own }: Pick<PlanStation, 'id' | 'people'>,
  day: Pick<StationDay, 'openFrom' | 'openUntil' | 'crew'>,
): Presence | null {
  if (day.openFrom === null || day.openUntil === null) return null;
  const [open, close] = [minute(day.openFrom), minute(day.openUntil)];
  const listed = peopleAt(plan, id);
  const spans = listed.map(({ from, until }) => ({
    from: from === undefined ? -Infinity : minute(from),
    until: until === undefined || minute(until) >= close ? Infinity : minute(until),
  }));
  const { captain } = own;
  if (captain !== undefined && !saysNothing(captain) && !listed.some(({ name }) => sameName(name, captain)))
    spans.push({ from: -Infinity, until: Infinity });
  const times = [open, ...spans.map(({ until }) => until).filter((at) => at > open && at < close)];
  const counts = times.map((at) => ({
    at: at * 60,
    there: spans.filter(({ from, until }) => from <= at && at < until).length,
  }));
  const least = counts.toSorted((a, b) => a.there - b.there || a.at - b.at)[0]!;
  return { ...least, needed: day.crew.total };
}

/** When a station serves, and with how many. */
const isStaffedDay: Shape = recordOf('a day of a station', {
  id: aText,
  openFrom: orNull(finite),
  openUntil: orNull(finite),
  crew: recordOf('a crew', { total: finite }),
});

/** A station's crew by the roster beside what its day needs. */
export interface RosterRow extends Presence {
  readonly station: string;
  /** People on the roster, whenever they come. */
  readonly listed: number;
}

/**
 * The crew of each station that serves, by the roster, in the plan's order.
 * @example
 * ```ts
 * import { analyse, readPlan } from '@halfcup/core';
 * import { rosterRows } from '@halfcup/core/raceday';
 *
 * const text = `{
 *   "format": "halfcup-plan", "version": 1, "name": "Pier run",
 *   "courses": [{ "id": "pier", "line": [[-30.1, 12.2], [-30.01, 12.2]], "drawn": "centre" }],
 *   "races": [{ "id": "run", "course": "pier", "waves": [{ "time": "08:00", "entrants": 400 }], "finish": { "median": "50 min", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "at": [-30.06, 12.20004] }],
 *   "people": { "crew": [{ "name": "Ada Tern", "station": "s1" }, { "name": "Ivo Skua", "station": "s1", "until": "07:00" }] }
 * }`;
 * const read = readPlan(text, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const analysed = analyse(read.value.plan, { gpx: new Map() });
 * if (!analysed.ok) throw new Error(analysed.findings[0]?.message);
 * const rows = rosterRows(read.value.plan, analysed.value.day!.stations);
 * rows.map(({ station, listed, there }) => ({ station, listed, there })); // → [{ station: 's1', listed: 2, there: 1 }]
 * ```
 */
export function rosterRows(
  plan: Plan,
  days: readonly Pick<StationDay, 'id' | 'openFrom' | 'openUntil' | 'crew'>[],
): RosterRow[] {
  want('rosterRows', 'plan', isPlan, plan);
  want('rosterRows', 'days', listOf(isStaffedDay), days);
  return days.flatMap((day) => {
    const station = byId(plan.stations, day.id);
    const presence = presenceAt(plan, station, day);
    return presence === null ? [] : [{ station: day.id, listed: peopleAt(plan, day.id).length, ...presence }];
  });
}
