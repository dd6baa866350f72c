import { expect, it } from 'vitest';
import type { Finding } from '../../finding.ts';
import { limitText, measuredText, subjectOf, waiverText } from './words.ts';

const finding: Finding = { code: 'sign-distance', severity: 'error', message: 'm', where: {} };

// 1 yd = 0.9144 m, 1 mi = 1609.344 m, exact.
it('prints lengths in the units asked for, long ones in km or miles', () => {
  const sign: Finding = { ...finding, measured: 70.04, limit: [82.296, 100.584], unit: 'm' };
  expect([measuredText(sign, 'metric'), limitText(sign, 'metric')]).toEqual(['70 m', '82.3 to 100.6 m']);
  expect([measuredText(sign, 'imperial'), limitText(sign, 'imperial')]).toEqual(['76.6 yd', '90 to 110 yd']);
  const leg: Finding = { ...finding, measured: 5160, limit: 5000, unit: 'm' };
  expect([measuredText(leg, 'metric'), limitText(leg, 'metric')]).toEqual(['5.160 km', '5.000 km']);
  expect(limitText({ ...leg, limit: [990, 1010] }, 'metric')).toBe('990 m to 1.010 km');
});

it('prints what has no unit as it is, and nothing where nothing is measured', () => {
  expect(measuredText({ ...finding, measured: 0.94964, limit: 0.95 }, 'imperial')).toBe('0.95');
  expect([measuredText(finding, 'metric'), limitText(finding, 'metric')]).toEqual(['', '']);
});

it('names the station, else the race, else the course; and who waived it', () => {
  expect(subjectOf({ ...finding, where: { station: 's1', race: 'm', course: 'c' } })).toBe('s1');
  expect(subjectOf({ ...finding, where: { race: 'm', course: 'c' } })).toBe('m');
  expect(subjectOf({ ...finding, where: { course: 'c' } })).toBe('c');
  expect(subjectOf(finding)).toBe('');
  expect(waiverText({ by: 'R. Gull', reason: 'driveway', date: '2027-08-01' })).toBe('R. Gull, 2027-08-01: driveway');
  expect(waiverText({ by: 'R. Gull', reason: 'driveway' })).toBe('R. Gull: driveway');
});
