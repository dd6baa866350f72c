import { expect, test } from 'vitest';
import { provenText } from './words.ts';

const searched = { tried: 352, step: 25, stepBeyond: 25, within: 500 };

test('a proof names what was tried, in the units shown, and how far apart beyond 500 m', () => {
  expect(provenText({ ...searched, proof: 'optimal' }, 'metric')).toBe(
    'Proven best of all combinations of the 352 places tried: one every 25 m within 500 m, then finer around the best.',
  );
  expect(provenText({ ...searched, within: 2000, stepBeyond: 75, proof: 'optimal' }, 'metric')).toContain(
    'every 25 m within 500 m, then every 75 m up to 2.00 km',
  );
  // 25 m are 82.02 ft (1 ft = 0.3048 m, exact).
  expect(provenText({ ...searched, proof: 'optimal' }, 'imperial')).toContain('every 82 ft');
});

test('a bound is told as what none can be better than, never as a proof', () => {
  const text = provenText({ ...searched, proof: { bound: { error: 0, warning: 1, longest: 9700 } } }, 'metric');
  expect(text).toMatch(/^There may be a better/u);
  expect(text).not.toContain('Proven');
  expect(text).toContain('fewer than 0 errors');
  expect(text).toContain('fewer than 1 warning;');
});
