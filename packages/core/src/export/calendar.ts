/**
 * Crew times as iCalendar (RFC 5545): one event a station, from "be there" to "open until". Times are UTC, computed
 * for the plan's time zone, so that every calendar shows the right moment; the description says them as the clocks
 * there show them. A planning aid: whoever runs the race on the day has the last word, and the event says so.
 */
import type { Analysis } from '../analyse.ts';
import { type Finding, type Result, bad, good } from '../finding.ts';
import type { StationLayout } from '../layout/layout.ts';
import type { Plan } from '../plan/plan.ts';
import type { StationDay } from '../raceday/day.ts';
import { formatMinute } from '../format.ts';
import { exportFinding } from './exportFinding.ts';
import { foldedLine, instantValue, textValue, uidOf } from './iCalendarText.ts';
import { CAUTION } from '../text/caution.ts';
import { numberOf } from '../layout/layout.ts';
import { type ZonedInstant, zonedInstant } from './zoneTime.ts';
import { finite, want } from '../wants.ts';
import { isAnalysis } from '../review/shapes.ts';

/** When and where the plan's clock runs. */
interface PlanClock {
  readonly date: string;
  readonly timeZone: string;
}

interface CrewTime {
  readonly station: StationLayout;
  readonly day: StationDay;
  /** Seconds after midnight of the plan's day. */
  readonly from: number;
  readonly until: number;
}

/**
 * The calendar of a plan's crews. `stampedAt`: when it is made, milliseconds since 1970 UTC (DTSTAMP). An event keeps
 * its UID as long as the plan's name and date and the station's id stay, so that a later export replaces it. Errors:
 * the plan has no date or no time zone, or nobody arrives anywhere. Notes: a station that nobody passes is left out;
 * a time that the clock skips or shows twice on that night.
 * @example
 * ```ts
 * import { analyse, readPlan, toCalendar } from '@halfcup/core';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "name": "Tern Cay 4", "date": "2027-09-12", "timeZone": "Atlantic/Azores",
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c",
 *     "waves": [{ "time": "08:00", "entrants": 200 }], "finish": { "median": "0:24:00", "spread": 0.2 } }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const calendar = toCalendar(result.value, Date.UTC(2027, 7, 1));
 * calendar.ok && /DTSTART:(.*)/u.exec(calendar.value)?.[1]?.trim(); // → '20270912T063411Z'
 * ```
 */
export function toCalendar(analysis: Analysis, stampedAt: number): Result<string> {
  want('toCalendar', 'analysis', isAnalysis, analysis);
  want('toCalendar', 'stampedAt', finite, stampedAt);
  const { plan, stations, day } = analysis;
  const clock = clockOf(analysis);
  if (!clock.ok) return clock;
  const times = crewTimes(analysis);
  if (times.length === 0) return bad([noTimes(day === null)]);
  const idle = stations.filter(({ id }) => !times.some(({ station }) => station.id === id));
  const events = times.map((time) => eventOf(time, plan, clock.value, stampedAt));
  const head = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Halfcup//Crew times//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${textValue(plan.name)}`,
    `DESCRIPTION:${textValue(CAUTION)}`,
  ];
  const lines = [...head, ...events.flatMap(({ lines: own }) => own), 'END:VCALENDAR'];
  return good(lines.map(foldedLine).join(''), [...idle.map(leftOut), ...events.flatMap(({ findings }) => findings)]);
}

function clockOf({ plan: { date, timeZone } }: Analysis): Result<PlanClock> {
  if (date !== undefined && timeZone !== undefined) return good({ date, timeZone });
  const missing = [
    ...(date === undefined ? (['date'] as const) : []),
    ...(timeZone === undefined ? (['timeZone'] as const) : []),
  ];
  return bad(
    missing.map((key) =>
      exportFinding('calendar-no-clock', { missing: key }, { severity: 'error', where: { path: '' } }),
    ),
  );
}

const noTimes = (noWaves: boolean): Finding =>
  exportFinding(
    'calendar-no-times',
    { problem: noWaves ? 'noWaves' : 'noArrivals' },
    { severity: 'error', where: { path: noWaves ? '/races' : '/stations' } },
  );

const leftOut = ({ id, index }: StationLayout): Finding =>
  exportFinding('calendar-left-out', {}, { severity: 'note', where: { path: `/stations/${index}`, station: id } });

function crewTimes({ stations, day }: Analysis): CrewTime[] {
  const days = new Map(day?.stations.map((one) => [one.id, one]));
  return stations.flatMap((station): CrewTime[] => {
    const own = days.get(station.id);
    return own === undefined || own.crewAt === null || own.openUntil === null
      ? []
      : [{ station, day: own, from: own.crewAt, until: own.packedAt ?? own.openUntil }];
  });
}

interface CalendarEvent {
  readonly lines: readonly string[];
  readonly findings: readonly Finding[];
}

function eventOf(
  { station, day, from, until }: CrewTime,
  plan: Plan,
  { date, timeZone }: PlanClock,
  stampedAt: number,
): CalendarEvent {
  const [start, end] = [zonedInstant(date, from, timeZone), zonedInstant(date, until, timeZone)];
  const [lon, lat] = station.at;
  const lines = [
    'BEGIN:VEVENT',
    `UID:${uidOf(plan.name, date, station.id)}`,
    `DTSTAMP:${instantValue(stampedAt)}`,
    `DTSTART:${instantValue(start.instant)}`,
    `DTEND:${instantValue(end.instant)}`,
    `SUMMARY:${textValue(`Station ${numberOf(station)}: ${station.name}`)}`,
    `LOCATION:${textValue(locationOf(station))}`,
    `GEO:${degrees(lat)};${degrees(lon)}`,
    `DESCRIPTION:${textValue([...timesOf(day, from, until), `Clock times there: ${timeZone}`, planLine(plan)].join('\n'))}`,
    'END:VEVENT',
  ];
  return { lines, findings: [troubleOf(station, from, start, date), troubleOf(station, until, end, date)].flat() };
}

const degrees = (value: number): string => (Number(value.toFixed(7)) + 0).toFixed(7);

/** The street by which one gets in, where the plan names one; else the station's own, where plan or map tells. */
function locationOf({ name, station: { points }, street: place }: StationLayout): string {
  const { street = place?.street ?? undefined } =
    points.find((point) => point.kind === 'access' && point.street !== undefined) ??
    points.find((point) => point.street !== undefined) ??
    {};
  return street === undefined || street === name ? name : `${name}, ${street}`;
}

/** As the clocks there show them. */
const timesOf = (
  { openFrom, openUntil, quantiles, packedAt = null }: StationDay,
  from: number,
  until: number,
): string[] => [
  `Be there: ${clockText(from)}`,
  ...(openFrom === null ? [] : [`Ready: ${clockText(openFrom)}`]),
  ...(quantiles === null ? [] : [`First runner: ${clockText(quantiles.first)}`]),
  `Open until about ${clockText(openUntil ?? until)}, and until race control releases you`,
  ...(packedAt === null ? [] : [`All packed: about ${clockText(packedAt)}`]),
];

/** Which plan the times are of, so that an old copy can be told. */
const planLine = ({ name, revision }: Plan): string => (revision === undefined ? name : `${name}, version ${revision}`);

/** A clock time to the minute; in words where it is not on the day itself. */
function clockText(seconds: number): string {
  const days = Math.floor(seconds / DAY);
  const shown = formatMinute(seconds - days * DAY);
  return days === 0
    ? shown
    : `${shown} ${days === -1 ? 'the day before' : days === 1 ? 'the next day' : `${Math.abs(days)} days ${days < 0 ? 'before' : 'later'}`}`;
}

const DAY = 86_400;

function troubleOf({ id, index }: StationLayout, time: number, { trouble }: ZonedInstant, date: string): Finding[] {
  if (trouble === null) return [];
  const where = { path: `/stations/${index}`, station: id };
  return [exportFinding('calendar-clock-change', { date, time, problem: trouble }, { severity: 'note', where })];
}
