import { expect, it } from 'vitest';
import { words } from './en/words.ts';
import { sayIn } from './say.ts';
import { NO_NAMES } from './voice.ts';

const metric = sayIn({ units: 'metric', names: NO_NAMES }, words);
const imperial = sayIn({ units: 'imperial', names: NO_NAMES }, words);

it('rounds a measured value and its limit so that rounding never contradicts the finding', () => {
  expect(metric.compare(70, [82.3, 100.6])).toEqual({ measured: '70 m', limit: '82 to 101 m' });
  expect(metric.compare(82.2, [82.3, 100.6])).toEqual({ measured: '82.2 m', limit: '82.3 to 100.6 m' });
  expect(imperial.compare(70, [82.296, 100.584])).toEqual({ measured: '77 yd', limit: '90 to 110 yd' });
  expect(metric.comparePercent(0.0504, 0.05)).toEqual({ measured: '5.04 %', limit: '5 %' });
  expect(metric.comparePercent(0.062, 0.05)).toEqual({ measured: '6.2 %', limit: '5 %' });
  expect(metric.compareFar(1000, 1000.000_001)).toEqual({ measured: '1.00 km', limit: '1.00 km' });
  expect(metric.compareFar(5001, 5000)).toEqual({ measured: '5.001 km', limit: '5.000 km' });
});

it('rounds a length to move up, so that moving by it is enough', () => {
  expect([12.3, 12, 12.000_000_000_1, 0.31, 3].map(metric.enough)).toEqual(['13 m', '12 m', '12 m', '0.4 m', '3 m']);
  expect([12.3, 91.44].map(imperial.enough)).toEqual(['41 ft', '100 yd']);
});
