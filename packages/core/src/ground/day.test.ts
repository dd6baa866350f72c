import { expect, it } from 'vitest';
import { dayOf } from './day.ts';

it('is that of a date or of a time, where the calendar has it', () => {
  expect(dayOf('2027-09-12')).toBe('2027-09-12');
  expect(dayOf('2012-07-06T20:12:02Z')).toBe('2012-07-06');
  expect(dayOf('2028-02-29 10:00')).toBe('2028-02-29');
  for (const none of [
    '2017-19-13',
    '2017-02-30',
    '2027-02-29T10:00:00Z',
    '12.9.2027',
    '2027-9-12',
    '',
    20_270_912,
    null,
  ])
    expect(dayOf(none)).toBeNull();
});
