/** Crew times as a calendar: what an event says, over midnight and at changes of the clock, and what is refused. */
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../analyse.ts';
import type { Plan, PlanStation } from '../plan/plan.ts';
import type { StationDay } from '../raceday/day.ts';
import { AT_1500, STRAIGHT, analysisOf, runners } from '../testing/analyses.ts';
import { ORIGIN, valueOf } from '../testing/courses.ts';
import { toCalendar } from './calendar.ts';

const H = 3600;
const STAMP = Date.UTC(2027, 0, 2, 3, 4, 5);
const CLOCK: Partial<Plan> = { date: '2027-09-12', timeZone: 'Etc/UTC' };

/** Times that the tests choose, instead of those reckoned. */
function calendarAt(
  times: Partial<Pick<StationDay, 'crewAt' | 'openFrom' | 'openUntil' | 'packedAt' | 'quantiles'>>,
  keys: Partial<Plan> = {},
  station: Partial<PlanStation> = {},
): Analysis {
  const analysis = analysisOf(STRAIGHT, [{ ...AT_1500, name: 'Kelp Bay', ...station }], {
    races: [runners()],
    ...CLOCK,
    ...keys,
  });
  const day = analysis.day!;
  return {
    ...analysis,
    day: {
      ...day,
      stations: day.stations.map((own) => {
        const { packedAt: _packed, ...day } = { ...own, crewAt: 6 * H, openFrom: 7 * H, openUntil: 10 * H, ...times };
        return 'packedAt' in times ? { ...day, packedAt: times.packedAt! } : day;
      }),
    },
  };
}

/** Properties of the only event, unfolded (RFC 5545, section 3.1). */
function eventOf(analysis: Analysis): Map<string, string> {
  const text = valueOf(toCalendar(analysis, STAMP)).replaceAll('\r\n ', '');
  const [, event] = /BEGIN:VEVENT\r\n([\s\S]*)END:VEVENT\r\n/u.exec(text)!;
  return new Map(
    event!
      .trimEnd()
      .split('\r\n')
      .map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1)]),
  );
}
const saysOf = (analysis: Analysis): string[] => eventOf(analysis).get('DESCRIPTION')!.split('\\n');

describe('an event', () => {
  it('goes from when the crew is due until the station closes, in UTC, with place, street and grid', () => {
    const points = [{ kind: 'access', at: ORIGIN, street: 'Kelp Road' }] as const;
    const event = eventOf(calendarAt({}, { timeZone: 'Etc/GMT+1' }, { at: [-17.3839, -33.2], points }));
    // Etc/GMT+1 is one hour behind UTC (the sign of these names is turned, IANA time zone database).
    expect([event.get('DTSTART'), event.get('DTEND'), event.get('DTSTAMP')]).toEqual([
      '20270912T070000Z',
      '20270912T110000Z',
      '20270102T030405Z',
    ]);
    expect(event.get('SUMMARY')).toBe('Station 1: Kelp Bay');
    expect(event.get('LOCATION')).toBe('Kelp Bay\\, Kelp Road');
    const [lat, lon] = event.get('GEO')!.split(';').map(Number);
    expect([lat, lon]).toEqual([expect.closeTo(-33.2, 3), expect.closeTo(-17.3839, 3)]);
  });

  it('says when to be there, when it must be ready, the first runner, and that race control has the last word', () => {
    const quantiles = { first: 7.5 * H, p10: 8 * H, p50: 8 * H, p90: 8 * H, last: 9 * H };
    expect(saysOf(calendarAt({ quantiles }, { revision: '3' }))).toEqual([
      'Be there: 06:00',
      'Ready: 07:00',
      'First runner: 07:30',
      'Open until about 10:00\\, and until race control releases you',
      'Clock times there: Etc/UTC',
      'test\\, version 3',
    ]);
  });

  it('goes on until all is packed, and says when', () => {
    const analysis = calendarAt({ packedAt: 11 * H });
    expect(eventOf(analysis).get('DTEND')).toBe('20270912T110000Z');
    expect(saysOf(analysis)).toContain('Open until about 10:00\\, and until race control releases you');
    expect(saysOf(analysis)).toContain('All packed: about 11:00');
  });

  it('leaves out what nobody knows: no ready time, no first runner, no version', () => {
    expect(saysOf(calendarAt({ openFrom: null, quantiles: null }))).toEqual([
      'Be there: 06:00',
      'Open until about 10:00\\, and until race control releases you',
      'Clock times there: Etc/UTC',
      'test',
    ]);
  });

  it.each([
    [-2 * H, '20270911T220000Z', '22:00 the day before'],
    [-26 * H, '20270910T220000Z', '22:00 2 days before'],
  ])('over midnight says the day: the crew is due at %i s', (crewAt, start, said) => {
    const analysis = calendarAt({ crewAt });
    expect(eventOf(analysis).get('DTSTART')).toBe(start);
    expect(saysOf(analysis)[0]).toBe(`Be there: ${said}`);
  });

  it.each([
    [26 * H, '20270913T020000Z', '02:00 the next day'],
    [50 * H, '20270914T020000Z', '02:00 2 days later'],
  ])('over midnight says the day: it closes at %i s', (openUntil, end, said) => {
    const analysis = calendarAt({ openUntil });
    expect(eventOf(analysis).get('DTEND')).toBe(end);
    expect(saysOf(analysis)).toContain(`Open until about ${said}\\, and until race control releases you`);
  });

  it('takes the street of another point where the way in has none, and does not say a name twice', () => {
    const location = (points: PlanStation['points']): string =>
      eventOf(calendarAt({}, {}, { points })).get('LOCATION')!;
    expect(
      location([
        { kind: 'access', at: ORIGIN },
        { kind: 'drop', at: ORIGIN, street: 'Pier Lane' },
      ]),
    ).toBe('Kelp Bay\\, Pier Lane');
    expect(location([{ kind: 'access', at: ORIGIN, street: 'Kelp Bay' }])).toBe('Kelp Bay');
    expect(location([])).toBe('Kelp Bay');
  });
});

describe('the clocks of a zone change in the night', () => {
  // New York 2027: forward on 14 March 02:00, back on 7 November 02:00 (15 U.S.C. 260a: second Sunday of March, first of November).
  it('says that a time is skipped, and reads it as before the change', () => {
    const analysis = calendarAt({ crewAt: 2.5 * H }, { date: '2027-03-14', timeZone: 'America/New_York' });
    const { findings } = toCalendar(analysis, STAMP);
    // 02:30 with the offset before the gap, −5 h.
    expect(eventOf(analysis).get('DTSTART')).toBe('20270314T073000Z');
    expect(findings).toEqual([
      {
        code: 'calendar-clock-change',
        severity: 'note',
        message:
          'The time 02:30 on 2027-03-14 does not exist: clocks go forward past it. It is read as if the clocks had not changed yet. Tell the crew which time is meant.',
        params: { date: '2027-03-14', time: 2.5 * H, problem: 'skipped' },
        where: { path: '/stations/0', station: 's1' },
      },
    ]);
  });

  it('says that a time comes twice, and takes the first', () => {
    const analysis = calendarAt(
      { crewAt: 0, openUntil: 1.5 * H },
      { date: '2027-11-07', timeZone: 'America/New_York' },
    );
    expect(eventOf(analysis).get('DTEND')).toBe('20271107T053000Z');
    expect(toCalendar(analysis, STAMP).findings.map(({ message }) => message)).toEqual([
      expect.stringContaining('The time 01:30 on 2027-11-07 comes twice: clocks go back.'),
    ]);
  });
});

describe('a calendar cannot be made', () => {
  const refusal = (analysis: Analysis): (readonly [string, string, string | undefined])[] => {
    const result = toCalendar(analysis, STAMP);
    expect(result.ok).toBe(false);
    return result.findings.map(({ code, message, where }) => [code, message, where.path]);
  };
  const without = (key: 'date' | 'timeZone'): Analysis => {
    const analysis = calendarAt({});
    const { [key]: _, ...plan } = analysis.plan;
    return { ...analysis, plan };
  };

  it('without a date or a time zone, and says what to add', () => {
    expect(refusal(without('date'))).toEqual([
      [
        'calendar-no-clock',
        expect.stringContaining(
          'The plan has no date. A calendar needs one to say when the crews come. Add the date, such as 2027-09-12.',
        ),
        '',
      ],
    ]);
    expect(refusal(without('timeZone'))).toEqual([
      ['calendar-no-clock', expect.stringContaining('The plan has no time zone.'), ''],
    ]);
  });

  it('where no race has waves, or nobody arrives anywhere', () => {
    expect(refusal(analysisOf(STRAIGHT, [AT_1500], CLOCK))).toEqual([
      ['calendar-no-times', expect.stringContaining('No race of the plan has waves.'), '/races'],
    ]);
    expect(refusal(calendarAt({ crewAt: null }))).toEqual([
      ['calendar-no-times', expect.stringContaining('Nobody arrives at any station.'), '/stations'],
    ]);
    expect(refusal(calendarAt({ openUntil: null }))).toHaveLength(1);
  });

  it('but is made for the stations that somebody passes, with a note for each other', () => {
    const analysis = analysisOf(STRAIGHT, [AT_1500, { at: [-10, -30] }], { races: [runners()], ...CLOCK });
    const result = toCalendar(analysis, STAMP);
    expect(valueOf(result).split('BEGIN:VEVENT')).toHaveLength(2);
    expect(result.findings).toEqual([
      {
        code: 'calendar-left-out',
        severity: 'note',
        message: 'Nobody arrives here, so the crew has no times. The calendar leaves the station out.',
        params: {},
        where: { path: '/stations/1', station: 's2' },
      },
    ]);
  });

  it('and a station that the race day does not know is left out as well', () => {
    const analysis = calendarAt({});
    expect(refusal({ ...analysis, day: { ...analysis.day!, stations: [] } })).toEqual([
      ['calendar-no-times', expect.stringContaining('Nobody arrives at any station.'), '/stations'],
    ]);
  });
});

it('is one calendar in the order of RFC 5545, with the plan’s name, the caution and no line over 75 octets', () => {
  const text = valueOf(toCalendar(calendarAt({}, { name: 'Kelp; Run, 水' }), STAMP));
  const lines = text.split('\r\n');
  expect(lines.slice(0, 5)).toEqual([
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Halfcup//Crew times//EN',
    'CALSCALE:GREGORIAN',
    'NAME:Kelp\\; Run\\, 水',
  ]);
  expect(lines.slice(-2)).toEqual(['END:VCALENDAR', '']);
  const bytes = new TextEncoder();
  expect(lines.filter((line) => bytes.encode(line).length > 75)).toEqual([]);
  expect(text.replaceAll('\r\n ', '')).toContain('DESCRIPTION:A planning aid: local codes\\, the road authority\\,');
});
