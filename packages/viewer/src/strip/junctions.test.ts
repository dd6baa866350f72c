import type { Junction } from '@halfcup/core/ground';
import { expect, test } from 'vitest';
import { stripScale } from './geometry.ts';
import { crossingAt, junctionTicks } from './junctions.ts';

const junction = (measure: number, more: Partial<Junction> = {}): Junction => ({
  measure,
  node: `node/${measure}`,
  names: [],
  ways: ['way/1'],
  sides: ['left'],
  mouth: { from: measure - 8, to: measure + 8 },
  vehicles: true,
  access: false,
  ...more,
});
const scale = stripScale([0, 1000], 1000, 0);

test('a tick stands on each side that a street leaves to, shorter for a path, and none outside the view', () => {
  const all = [
    junction(100),
    junction(200, { sides: ['left', 'right'], vehicles: false }),
    junction(300, { sides: [] }),
    junction(1500),
  ];
  expect(junctionTicks(all, scale)).toBe('M100.0 59v-6M200.0 59v-4M200.0 65v4');
});

test('the cursor says the nearest street within a few pixels, and what it is where it has no name', () => {
  const all = [
    junction(100, { names: ['Mill Lane', 'Quay Street'] }),
    junction(104, { names: ['Tar Lane'] }),
    junction(300),
    junction(400, { vehicles: false }),
    junction(600, { access: true }),
  ];
  const said = (measure: number): string | null => crossingAt(all, measure, scale);
  expect([99, 103, 299, 401, 500, 602].map(said)).toEqual([
    'Mill Lane, Quay Street',
    'Tar Lane',
    'side street',
    'path',
    null,
    'driveway',
  ]);
});
