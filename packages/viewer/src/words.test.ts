import { expect, test } from 'vitest';
import {
  comeFrom,
  compassWord,
  dateText,
  figuresOf,
  lengthText,
  longFigure,
  percent,
  wheelFigure,
  wheelRange,
} from './words.ts';

test.each([
  [0, 'north'],
  [22, 'north'],
  [23, 'north-east'],
  [90, 'east'],
  [200, 'south'],
  [337, 'north-west'],
  [338, 'north'],
  [360, 'north'],
  [-90, 'west'],
  [725, 'north'],
])('an azimuth of %d° is told as %s', (azimuth, word) => expect(compassWord(azimuth)).toBe(word));

test('runners come from the opposite of where they head', () => {
  expect(comeFrom(95)).toBe('from the west, heading east');
});

test('figures carry no unit, two decimals when long and one when laid out, and a true minus', () => {
  expect(longFigure(5062, 'metric')).toBe('5.06');
  expect(longFigure(1609.344, 'imperial')).toBe('1.00');
  expect(wheelFigure(91.44, 'imperial')).toBe('100.0');
  expect(wheelFigure(-91.44, 'metric')).toBe('−91.4');
  expect(wheelFigure(-0.01, 'metric')).toBe('0.0');
});

test('what is not known is a dash', () => {
  expect(longFigure(null, 'metric')).toBe('–');
  expect(wheelRange(null, 'metric')).toBe('–');
});

test('a stretch is told by both ends, a point once', () => {
  expect(wheelRange([-91.44, -91.44], 'metric')).toBe('−91.4');
  expect(wheelRange([52.1, 97], 'metric')).toBe('52.1 to 97.0');
});

test('a length is told as it would be laid out, or from a kilometre or half a mile on as a course distance', () => {
  expect(lengthText(71.2, 'metric')).toBe('71.2 m');
  expect(lengthText(5062, 'metric')).toBe('5.06 km');
  expect(lengthText(91.44, 'imperial')).toBe('100 yd');
  expect(lengthText(1609.344, 'imperial')).toBe('1.00 mi');
});

test('a finding’s limit is one bound or a range, in the units chosen', () => {
  const finding = {
    code: 'x',
    severity: 'error',
    message: '',
    where: {},
    measured: 71.2,
    limit: [82.296, 100.584],
    unit: 'm',
  } as const;
  expect(figuresOf(finding, 'imperial')).toEqual({ measured: '77.9 yd', limit: '90 yd to 110 yd' });
  expect(figuresOf({ ...finding, limit: 5000 }, 'metric').limit).toBe('5.00 km');
  expect(figuresOf({ code: 'x', severity: 'note', message: '', where: {} }, 'metric')).toEqual({
    measured: null,
    limit: null,
  });
});

test('a share so near 1 that its decimals would say 100 % is told as more than 99.9 %', () => {
  expect(percent(0.9996)).toBe('>99.9 %');
  expect(percent(0.982)).toBe('98.2 %');
});

test('a date is written out, and a text that is none stays as it is', () => {
  expect(dateText('2027-09-12')).toBe('12 September 2027');
  expect(dateText('soon')).toBe('soon');
});
