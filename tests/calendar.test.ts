/**
 * Crew times as a calendar, read back by ical.js 2 (MPL 2.0) and held against `raceday`. The offsets of zones from UTC
 * are written here as their laws have them (IANA time zone database; from memory), not asked of `Intl`.
 */
import { type Analysis, toCalendar } from '@halfcup/core';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { OCEAN, gpxText, planText, straight } from './support/courses.ts';
import { analysisOf, must } from './support/exported.ts';
import { sourceOf } from './support/fixtures.ts';
import { folderWith, halfcupIn, refusalIn } from './support/halfcup.ts';

const GPX = { 'c.gpx': gpxText([straight(OCEAN, 90, 51, 100)]) };
const STATIONS = [
  { id: 's1', name: 'One', on: { course: 'c', measure: 2500, side: 'right' } },
  { id: 's2', name: 'Two', on: { course: 'c', measure: 4000, side: 'left' } },
];
const racesAt = (time: string): object => ({
  races: [{ id: 'm', course: 'c', waves: [{ time, entrants: 100 }], finish: { median: '0:30:00', spread: 0.1 } }],
});
const planAt = (time: string, more: object): string =>
  planText(STATIONS, { name: 'Island', ...racesAt(time), ...more });
const analysisAt = (time: string, date: string, timeZone: string): Analysis =>
  analysisOf({ plan: planAt(time, { date, timeZone }), gpx: GPX });

const STAMP = Date.UTC(2027, 0, 2, 3, 4, 5);

interface Event {
  readonly uid: string;
  readonly summary: string;
  readonly stamp: string;
  readonly start: number;
  readonly end: number;
  readonly geo: unknown;
}

function eventsOf(text: string): Event[] {
  const value = (event: InstanceType<typeof ICAL.Component>, name: string): string =>
    String(event.getFirstPropertyValue(name));
  return new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => ({
    uid: value(event, 'uid'),
    summary: value(event, 'summary'),
    stamp: value(event, 'dtstamp'),
    start: Date.parse(value(event, 'dtstart')),
    end: Date.parse(value(event, 'dtend')),
    geo: event.getFirstPropertyValue('geo'),
  }));
}

it('has an event for each station of the demo, from when its crew is due until it closes, at its pin', () => {
  const analysis = analysisOf(sourceOf('demo'));
  const events = eventsOf(must(toCalendar(analysis, STAMP)));
  expect(events).toHaveLength(analysis.stations.length);
  // The demo's clock is an hour behind UTC.
  const midnight = Date.UTC(2027, 8, 12) + 3_600_000;
  for (const [k, { id, name, at }] of analysis.stations.entries()) {
    const day = analysis.day!.stations.find((one) => one.id === id)!;
    const { summary, start, end, stamp, geo } = events[k]!;
    expect([summary, start, end, stamp]).toEqual([
      `Station ${k + 1}: ${name}`,
      midnight + Math.round(day.crewAt!) * 1000,
      midnight + Math.round(day.packedAt!) * 1000,
      '2027-01-02T03:04:05Z',
    ]);
    const [lat, lon] = geo as [number, number];
    expect(Math.max(Math.abs(lat - at[1]), Math.abs(lon - at[0]))).toBeLessThan(1e-7);
  }
});

it('keeps its identifiers when times change and the calendar is made again, and has others for another plan', () => {
  const uids = (analysis: Analysis, stamp: number = STAMP): string[] =>
    eventsOf(must(toCalendar(analysis, stamp))).map(({ uid }) => uid);
  const first = uids(analysisAt('07:00', '2027-09-12', 'Etc/UTC'));
  expect(new Set(first).size).toBe(2);
  expect(uids(analysisAt('09:00', '2027-09-12', 'Etc/UTC'), STAMP + 1000)).toEqual(first);
  expect(uids(analysisAt('07:00', '2028-09-10', 'Etc/UTC')).some((uid) => first.includes(uid))).toBe(false);
});

it('is the same text for the same plan and stamp, each line ended by CRLF', () => {
  const analysis = analysisAt('07:00', '2027-09-12', 'Etc/UTC');
  const text = must(toCalendar(analysis, STAMP));
  expect(must(toCalendar(analysis, STAMP))).toBe(text);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
  expect(text).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:[^\r]+\r\n[\s\S]*END:VCALENDAR\r\n$/u);
});

describe.each([
  ['Etc/UTC', '2027-09-12', 0],
  ['America/New_York', '2027-09-12', -4],
  ['America/New_York', '2027-01-10', -5],
  ['America/St_Johns', '2027-01-10', -3.5],
  ['Europe/Berlin', '2027-09-12', 2],
  ['Asia/Kolkata', '2027-09-12', 5.5],
  ['Asia/Kathmandu', '2027-09-12', 5.75],
  ['Pacific/Kiritimati', '2027-09-12', 14],
  ['Pacific/Pago_Pago', '2027-09-12', -11],
  ['Australia/Lord_Howe', '2027-01-10', 11],
  // The clocks change in the night before these races.
  ['America/New_York', '2027-03-14', -4],
  ['Europe/Berlin', '2027-10-31', 1],
])('in %s on %s', (timeZone, date, hours) => {
  it(`every time is ${hours} h ahead of UTC`, () => {
    const analysis = analysisAt('09:00', date, timeZone);
    const midnight = Date.parse(`${date}T00:00:00Z`) - hours * 3_600_000;
    expect(eventsOf(must(toCalendar(analysis, STAMP))).map(({ start, end }) => [start, end])).toEqual(
      analysis.day!.stations.map(({ crewAt, packedAt }) => [
        midnight + Math.round(crewAt!) * 1000,
        midnight + Math.round(packedAt!) * 1000,
      ]),
    );
  });
});

it('says so where a crew is due at a time that the clock skips or shows twice', () => {
  for (const [date, word] of [
    ['2027-03-14', 'does not exist'],
    ['2027-11-07', 'comes twice'],
  ] as const) {
    const due = analysisAt('09:00', date, 'America/New_York').day!.stations[0]!.crewAt!;
    // So early that the first crew is due at half past the hour of the change.
    const start = 9 * 3600 - due + (date.includes('-03-') ? 2.5 : 1.5) * 3600;
    const clock = new Date(Math.round(start) * 1000).toISOString().slice(11, 19);
    const { findings } = toCalendar(analysisAt(clock, date, 'America/New_York'), STAMP);
    expect(findings.map(({ code, severity, where }) => [code, severity, where.station])).toContainEqual([
      'calendar-clock-change',
      'note',
      's1',
    ]);
    expect(findings[0]!.message).toContain(word);
  }
});

describe('halfcup export --to ics', () => {
  const noWaves = planText(STATIONS, { date: '2027-09-12', timeZone: 'Etc/UTC' });
  const folder = folderWith({
    ...GPX,
    'good.json': planAt('07:00', { date: '2027-09-12', timeZone: 'Etc/GMT+1' }),
    'no-date.json': planAt('07:00', { timeZone: 'Etc/UTC' }),
    'bare.json': planAt('07:00', {}),
    'no-waves.json': noWaves,
  });

  it('prints a calendar', async () => {
    const { exit, out, err } = await halfcupIn(folder, 'export', 'good.json', '--to', 'ics');
    expect([exit, err]).toEqual([0, '']);
    expect(eventsOf(out)).toHaveLength(2);
  });

  it('refuses a plan without a date, a time zone or waves, at the place in the plan, and says what to add', async () => {
    expect(await refusalIn(folder, 'export', 'no-date.json', '--to', 'ics')).toEqual([
      expect.stringMatching(
        /^no-date\.json:1:1: error: The plan has no date\. .*Add the date, such as \d{4}-\d{2}-\d{2}\.$/u,
      ),
    ]);
    expect(await refusalIn(folder, 'export', 'bare.json', '--to', 'ics')).toHaveLength(2);
    expect(await refusalIn(folder, 'export', 'no-waves.json', '--to', 'ics')).toEqual([
      expect.stringMatching(/^no-waves\.json:\d+:\d+: error: No race of the plan has waves\. .*Add waves/u),
    ]);
  });
});
