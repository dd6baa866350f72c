import { expect, it } from 'vitest';
import { en } from '../text/en.ts';
import { es } from '../text/es.ts';
import { marginText } from '../export/wheeled.ts';
import { figureOf, pointFigure } from './figures.ts';

const item = { kind: 'water', wheel: [10.36, 21.34], along: [10.4, 21.3], wheelMargin: 0 } as const;

it('says how far before or past the chalk mark, with the margin where there is one', () => {
  expect(figureOf(item, 'metric', en).text).toBe('10.4 to 21.3 m past');
  expect(figureOf({ ...item, wheel: [-91.44, -91.44], wheelMargin: 0.31 }, 'imperial', en).text).toBe(
    '100 yd before ± 0.4 yd',
  );
  expect(figureOf({ ...item, wheelMargin: 1e-9 }, 'metric', en).text).toBe('10.4 to 21.3 m past');
  expect(figureOf({ ...item, wheel: [-9.45, 14.02] }, 'metric', en).text).toBe('9.4 m before to 14 m past');
  expect(figureOf({ ...item, wheel: [0, 7.3] }, 'metric', es).text).toBe('0 a 7.3 m después');
  expect(figureOf({ ...item, wheel: [0, 0] }, 'metric', en).text).toBe('at the chalk mark');
});

it('says feet where the nearer end is under 30 yards of an imperial plan, for both ends and the margin', () => {
  const says = (wheel: readonly [number, number], wheelMargin: number = 0): string =>
    figureOf({ ...item, wheel, wheelMargin }, 'imperial', en).text;
  // 25 ft are 7.62 m, 30 yd are 27.432 m (NIST Handbook 44, appendix C).
  expect(says([7.62, 30.48], 0.3048)).toBe('25 to 100 ft past ± 1 ft');
  expect(says([-27.4, -27.4])).toBe('89.9 ft before');
  expect(says([-27.432, -27.432])).toBe('30 yd before');
  expect(says([-1.524, 91.44])).toBe('5 ft before to 300 ft past');
  expect(pointFigure(-7.6, 'imperial', en)).toBe('≈ 25 ft before');
  expect(pointFigure(45.5, 'imperial', en)).toBe('≈ 50 yd past');
});

it('says plainly that a distance is along the course where the wheel’s line folds', () => {
  const { text, folds, data } = figureOf({ ...item, wheel: null }, 'metric', en);
  expect(text).toBe('10.4 to 21.3 m past along the course');
  expect(folds).toBe(true);
  expect(data.html).toContain('data-along="10.4 21.3"');
});

it('rounds a margin up: it never says less than was reckoned', () => {
  expect(marginText(0.01, 'm')).toBe('± 0.1 m');
  expect(marginText(0.3, 'm')).toBe('± 0.3 m');
  expect(marginText(0.301, 'm')).toBe('± 0.4 m');
  expect(marginText(1.8288, 'yd')).toBe('± 2 yd');
  expect(marginText(1.8288, 'ft')).toBe('± 6 ft');
});

it('gives points to the metre and says that they are about there', () => {
  expect(pointFigure(-13.7, 'metric', en)).toBe('≈ 14 m before');
});
