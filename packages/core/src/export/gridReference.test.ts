import { expect, it } from 'vitest';
import { direct } from '../geodesy/karney.ts';
import type { LonLat } from '../finding.ts';
import { gridReference } from './gridReference.ts';

// Longitude, latitude, reference to 1 m, and where it is published.
const PUBLISHED: readonly (readonly [LonLat, string, string])[] = [
  [[-93, 42], '15T WG 00000 49776', 'description of the Python package mgrs 1.3.4 (GeoTrans)'],
  [[11.60833, 48.14666], '32U PU 94010 35891', 'README of the Common Lisp library mgrs'],
  [[-118.24, 34], '11S LT 85485 62848', 'documentation of the Elixir package ex_mgrs 0.0.3'],
];

it.each(PUBLISHED)('gives the published reference of %j: %s (%s)', (at, text) => {
  expect(gridReference(at, 5).text).toBe(text);
});

it('cuts digits off and never rounds up: the shorter reference names the square that holds the place', () => {
  expect(gridReference([11.60833, 48.14666], 3).text).toBe('32U PU 940 358');
  expect(gridReference([11.60833, 48.14666]).text).toBe('32U PU 9401 3589');
});

// Zones widened for Norway and Svalbard: DMA Technical Manual 8358.1, chapter 2 (from memory).
it.each([
  [[5, 60], '32V'],
  [[2, 60], '31V'],
  [[8, 75], '31X'],
  [[10, 75], '33X'],
  [[179.999, 0.001], '60N'],
  [[-180, -0.001], '1M'],
] as const)('takes the zone of %j: %s', (at, zone) => {
  expect(gridReference(at).text).toMatch(new RegExp(`^${zone} [A-Z]{2} \\d{4} \\d{4}$`, 'u'));
});

it('moves by about 100 m in its last digits where the place moves 100 m', () => {
  const digits = (at: LonLat): number[] => gridReference(at, 5).text!.split(' ').slice(2).map(Number);
  const at: LonLat = [-17.4, -33.2];
  const [east, north] = digits(at);
  const [moved, same] = digits(direct(at[0], at[1], 90, 100));
  expect(Math.hypot(moved! - east!, same! - north!)).toBeGreaterThan(98);
  expect(Math.hypot(moved! - east!, same! - north!)).toBeLessThan(102);
});

it('gives a reason instead of a reference at the poles, and for what is no place', () => {
  for (const at of [
    [0, 90],
    [0, -90],
    [10, 84.01],
    [10, -80.01],
  ] as const) {
    expect(gridReference(at)).toEqual({
      text: null,
      reason: expect.stringContaining('84° north and 80° south') as string,
    });
  }
  for (const at of [
    [NaN, 0],
    [181, 0],
    [0, 91],
    [0, Infinity],
  ] as const)
    expect(gridReference(at)).toEqual({ text: null, reason: expect.stringContaining('expected degrees') as string });
  expect(gridReference([10, 84]).text).toMatch(/^32X /u);
  expect(gridReference([10, -80]).text).toMatch(/^32C /u);
});
