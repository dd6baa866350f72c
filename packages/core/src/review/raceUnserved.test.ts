import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf, planRace } from '../testing/plans.ts';
import { raceUnserved } from './raceUnserved.ts';

const found = (length: number, races: readonly string[]): readonly Finding[] =>
  raceUnserved.find(layoutOf([turtle(ORIGIN, [[90, length]], 100)], [{ on: { course: 'c', measure: 2000, side: 'right', offset: 5 }, races }], { races: [planRace('m', 'c'), planRace('h', 'c')] }));

it('a race that no station serves is an error, with its place in the plan', () => {
  expect(found(5000.1, ['m'])).toEqual([expect.objectContaining({ code: 'race-unserved', severity: 'error', where: { path: '/races/1', race: 'h', course: 'c' }, measured: 0, limit: 1 })]);
  expect(found(5000.1, ['m', 'h'])).toEqual([]);
});

it('a race no longer than a leg may be is only a warning', () => {
  expect(found(4999.9, ['m'])).toEqual([expect.objectContaining({ severity: 'warning' })]);
});
