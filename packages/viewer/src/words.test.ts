import { expect, test } from 'vitest';
import {
  comeFrom,
  compassWord,
  dateText,
  farText,
  figuresOf,
  lengthText,
  longFigure,
  ordinal,
  sureText,
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

test('figures carry no unit, two decimals when long, whole from 10 on when laid out, and a true minus', () => {
  expect(longFigure(5062, 'metric')).toBe('5.06');
  expect(longFigure(1609.344, 'imperial')).toBe('1.00');
  expect(longFigure(-5062, 'metric')).toBe('−5.06');
  expect(longFigure(-0.01, 'metric')).toBe('0.00');
  expect(wheelFigure(91.44, 'imperial')).toBe('100');
  expect(wheelFigure(-91.44, 'metric')).toBe('−91');
  expect(wheelFigure(-3.048, 'metric')).toBe('−3');
  expect(wheelFigure(5.46, 'metric')).toBe('5.5');
});

test('nothing is less than nothing', () => {
  for (const units of ['metric', 'imperial'] as const)
    for (const metres of [-0, -0.001, -0.01, 0, 0.01]) {
      expect(wheelFigure(metres, units)).toBe('0');
      expect(wheelRange([metres, metres], units)).toBe('0');
      expect(lengthText(metres, units)).toMatch(/^0 /u);
      expect(farText(metres, units)).toMatch(/^0\.00 /u);
    }
});

test('what is not known is a dash', () => {
  expect(longFigure(null, 'metric')).toBe('–');
  expect(wheelFigure(null, 'metric')).toBe('–');
  expect(wheelRange(null, 'metric')).toBe('–');
});

test('a stretch is told by both ends, a point once, and under 30 yd in feet', () => {
  expect(wheelRange([-91.44, -91.44], 'metric')).toBe('−91');
  expect(wheelRange([52.1, 97], 'metric')).toBe('52 to 97');
  expect(wheelRange([-12, -2.5], 'metric')).toBe('−12 to −2.5');
  expect(wheelRange([0, 9.144], 'imperial')).toBe('0 to 30 ft');
  expect(wheelRange([45.72, 91.44], 'imperial')).toBe('50 to 100');
  expect(wheelFigure(5.4864, 'imperial')).toBe('18 ft');
});

test('a length is told as it would be laid out, or from a kilometre or half a mile on as a course distance', () => {
  expect(lengthText(71.2, 'metric')).toBe('71 m');
  expect(lengthText(5.25, 'metric')).toBe('5.3 m');
  expect(lengthText(5062, 'metric')).toBe('5.06 km');
  expect(lengthText(91.44, 'imperial')).toBe('100 yd');
  expect(lengthText(1.8288, 'imperial')).toBe('6 ft');
  expect(lengthText(1609.344, 'imperial')).toBe('1.00 mi');
});

test('a finding’s limit is one bound or a range, in the units chosen, and stands to what was measured as it does', () => {
  const finding = { measured: 71.2, limit: [82.296, 100.584], unit: 'm' } as const;
  expect(figuresOf(finding, 'imperial')).toEqual({ measured: '78 yd', limit: '90 to 110 yd' });
  expect(figuresOf({ measured: 82.2, limit: 82.296, unit: 'm' }, 'metric')).toEqual({
    measured: '82.2 m',
    limit: '82.3 m',
  });
  expect(figuresOf({ ...finding, limit: 5000 }, 'metric')).toEqual({ measured: '0.07 km', limit: '5.00 km' });
  expect(figuresOf({ measured: 12, limit: [5, 10], unit: 'degrees' }, 'metric')).toEqual({
    measured: '12°',
    limit: '5° to 10°',
  });
  expect(figuresOf({ measured: 10, limit: 9, unit: 'kg' }, 'imperial')).toEqual({ measured: '22 lb', limit: '20 lb' });
  expect(figuresOf({ measured: 3, limit: 2 }, 'metric')).toEqual({ measured: '3', limit: '2' });
  expect(figuresOf({ code: 'grade-at-tables', measured: 0.055_68, limit: [-0.04, 0.04] }, 'metric')).toEqual({
    measured: '5.6 %',
    limit: '−4 % to 4 %',
  });
  // How many are missing is in the sentence.
  expect(figuresOf({ code: 'no-medical', measured: 2, limit: 0 }, 'metric')).toEqual({ measured: null, limit: null });
  expect(figuresOf({}, 'metric')).toEqual({ measured: null, limit: null });
});

test('certainty shows only where it is in doubt, and never as more than it is', () => {
  expect(sureText(0.982)).toBe('');
  expect(sureText(0.95)).toBe('');
  expect(sureText(0.9499)).toBe('94 % sure');
  expect(sureText(0.5)).toBe('50 % sure');
});

test('times past are counted as people count', () => {
  expect([1, 2, 3, 4, 11, 12, 13, 21, 102].map(ordinal)).toEqual([
    '1st',
    '2nd',
    '3rd',
    '4th',
    '11th',
    '12th',
    '13th',
    '21st',
    '102nd',
  ]);
});

test('a date is written out with its weekday, and a text that is none stays as it is', () => {
  expect(dateText('2027-09-12')).toBe('Sunday 12 September 2027');
  expect(dateText('soon')).toBe('soon');
});
