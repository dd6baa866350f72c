import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { limitText, measuredText, subjectOf, waiverText } from './words.ts';

const finding = (keys: Partial<Finding>): Finding => ({
  code: 'x',
  severity: 'note',
  message: 'm',
  where: {},
  ...keys,
});

it('limits have their unit once, and none is cut off where there is none', () => {
  expect(limitText(finding({ limit: [82.296, 100.584], unit: 'm' }), 'metric')).toBe('82.3 to 100.6 m');
  expect(limitText(finding({ limit: [0.97, 1.03] }), 'metric')).toBe('0.97 to 1.03');
  expect(limitText(finding({ limit: [-0.04, 0.04] }), 'metric')).toBe('-0.04 to 0.04');
});

it('grades and probabilities are told per cent', () => {
  expect(limitText(finding({ code: 'grade-at-tables', limit: [-0.04, 0.04] }), 'metric')).toBe('-4 to 4 %');
  expect(measuredText(finding({ code: 'grade-at-tables', measured: -0.1789 }), 'metric')).toBe('-17.9 %');
  expect(measuredText(finding({ code: 'side-unclear', measured: 0.5 }), 'imperial')).toBe('50 %');
});

it('a length is told in the plan’s units, long ones as course distances; other figures keep their unit', () => {
  expect(measuredText(finding({ measured: 71.234, unit: 'm' }), 'metric')).toBe('71.2 m');
  expect(measuredText(finding({ measured: 6437.376, unit: 'm' }), 'imperial')).toBe('4.000 mi');
  expect(measuredText(finding({ measured: 2.71449, unit: 'cups' }), 'metric')).toBe('2.714 cups');
  expect(measuredText(finding({}), 'metric')).toBe('');
  expect(limitText(finding({ limit: 5, unit: 'm' }), 'metric')).toBe('5 m');
  expect(limitText(finding({}), 'metric')).toBe('');
  // Two units are both said.
  expect(limitText(finding({ limit: [500, 5000], unit: 'm' }), 'metric')).toBe('500 m to 5.000 km');
});

it('a finding is about its station, else its race, else its course, else nothing', () => {
  const where = { station: 's1', race: 'm', course: 'c' };
  expect(
    [where, { race: 'm', course: 'c' }, { course: 'c' }, {}].map((one) => subjectOf(finding({ where: one }))),
  ).toEqual(['s1', 'm', 'c', '']);
});

it('a waiver says who, when where that is known, and why', () => {
  expect(waiverText({ by: 'Ada', reason: 'a ditch' })).toBe('Ada: a ditch');
  expect(waiverText({ by: 'Ada', reason: 'a ditch', date: '2027-08-01' })).toBe('Ada, 2027-08-01: a ditch');
});
