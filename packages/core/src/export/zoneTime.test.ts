import { expect, it } from 'vitest';
import { zoneAhead, zonedInstant } from './zoneTime.ts';

const h = 3600;

/**
 * Rules as laws and the IANA time zone database have them (from memory): the United States change at 2 h standard or
 * daylight time on the second Sunday of March and the first of November (Energy Policy Act of 2005, section 110); the
 * European Union at 01:00 UTC on the last Sundays of March and October (Directive 2000/84/EC); Lord Howe by half an hour.
 */
it.each([
  ['Etc/UTC', '2027-09-12', 8 * h, '2027-09-12T08:00:00Z', null],
  ['Etc/GMT+1', '2027-09-12', 5 * h + 33 * 60 + 51, '2027-09-12T06:33:51Z', null],
  ['America/New_York', '2027-03-13', 8 * h, '2027-03-13T13:00:00Z', null],
  ['America/New_York', '2027-03-14', 1.5 * h, '2027-03-14T06:30:00Z', null],
  ['America/New_York', '2027-03-14', 2.5 * h, '2027-03-14T07:30:00Z', 'skipped'],
  ['America/New_York', '2027-03-14', 4 * h, '2027-03-14T08:00:00Z', null],
  ['America/New_York', '2027-11-07', 0.5 * h, '2027-11-07T04:30:00Z', null],
  ['America/New_York', '2027-11-07', 1.5 * h, '2027-11-07T05:30:00Z', 'repeated'],
  ['America/New_York', '2027-11-07', 2 * h, '2027-11-07T07:00:00Z', null],
  ['America/New_York', '2027-11-06', 26 * h, '2027-11-07T07:00:00Z', null],
  ['Europe/Berlin', '2027-03-28', 2.25 * h, '2027-03-28T01:15:00Z', 'skipped'],
  ['Europe/Berlin', '2027-03-28', 3 * h, '2027-03-28T01:00:00Z', null],
  ['Europe/Berlin', '2027-10-31', 2.75 * h, '2027-10-31T00:45:00Z', 'repeated'],
  ['Europe/Berlin', '2027-10-31', 3 * h, '2027-10-31T02:00:00Z', null],
  ['Europe/Berlin', '2027-10-31', -0.5 * h, '2027-10-30T21:30:00Z', null],
  ['Asia/Kolkata', '2027-01-01', 4 * h, '2026-12-31T22:30:00Z', null],
  ['Pacific/Kiritimati', '2027-01-01', 5 * h, '2026-12-31T15:00:00Z', null],
  ['Pacific/Pago_Pago', '2027-01-01', 23 * h, '2027-01-02T10:00:00Z', null],
  ['Asia/Kathmandu', '2028-02-29', 0, '2028-02-28T18:15:00Z', null],
  ['Australia/Lord_Howe', '2027-07-01', 6 * h, '2027-06-30T19:30:00Z', null],
  ['Australia/Lord_Howe', '2027-01-10', 6 * h, '2027-01-09T19:00:00Z', null],
])('in %s on %s, %d s after midnight is %s', (timeZone, date, seconds, utc, trouble) => {
  const { instant, trouble: found } = zonedInstant(date, seconds, timeZone);
  expect([new Date(instant).toISOString().replace('.000', ''), found]).toEqual([utc, trouble]);
});

it('tells how far a zone is ahead of UTC, also before 1970', () => {
  expect(
    [zoneAhead('Etc/GMT-14', 0), zoneAhead('Etc/GMT+12', -86_400_001), zoneAhead('Asia/Kolkata', 1)].map(
      (ahead) => ahead / 3_600_000,
    ),
  ).toEqual([14, -12, 5.5]);
});

it('takes a date or zone that is none for a fault of the caller', () => {
  expect(() => zonedInstant('soon', 0, 'Etc/UTC')).toThrow(RangeError);
  expect(() => zonedInstant('2027-09-12', 0, 'Nowhere/None')).toThrow(RangeError);
});
