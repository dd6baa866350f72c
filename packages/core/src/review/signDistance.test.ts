import { expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation, Practice } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { signDistance } from './signDistance.ts';

const course = turtle(ORIGIN, [[90, 3000]], 100);
const found = (keys: Partial<PlanStation>, practice: Partial<Practice> = {}): readonly Finding[] =>
  signDistance.find(layoutOf([course], [{ on: { course: 'c', measure: 1500, side: 'right', offset: 5 }, ...keys }], { practice }));

/** The sign placed by hand, so many metres before the first table. */
const ahead = (metres: number): Partial<PlanStation> => ({ items: { sign: { at: from(from(ORIGIN, 90, 1500 - metres), 180, 5) } } });

// 100 yd and a tolerance of 10 yd: common practice, no source.
it('a sign farther than the tolerance from 100 yards is an error, with both limits', () => {
  for (const metres of [82.28, 100.6]) {
    expect(found(ahead(metres))).toEqual([
      expect.objectContaining({
        code: 'sign-distance',
        severity: 'error',
        measured: expect.closeTo(metres, 2),
        limit: [expect.closeTo(82.296, 9), expect.closeTo(100.584, 9)],
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0/items/sign', station: 's1', item: 'sign', course: 'c' }),
      }),
    ]);
  }
  for (const metres of [82.31, 91.44, 100.57]) expect(found(ahead(metres))).toEqual([]);
});

it('the house’s own layout holds, also exactly at the tolerance', () => {
  expect(found({})).toEqual([]);
  expect(found({ practice: { signAhead: 110 * 0.9144 } })).toEqual([]);
  expect(found({ practice: { signAhead: 110 * 0.9144 + 0.001 } })).toHaveLength(1);
});

it('a station’s own distance is held against the plan’s rule, so that a reviewer sees the exception', () => {
  expect(found({ practice: { signAhead: 120 * 0.9144 } })).toEqual([expect.objectContaining({ measured: expect.closeTo(109.728, 6), where: expect.objectContaining({ path: '/stations/0' }) })]);
});

it('is measured from the first table, which is the gel where gel is served', () => {
  expect(found({ ...ahead(91.44), serves: ['gel', 'water'] })).toEqual([expect.objectContaining({ measured: expect.closeTo(91.44 - 9.4488, 2) })]);
});

it('the plan’s own rule and tolerance are the limit', () => {
  expect(found(ahead(60), { signAhead: 62, signTolerance: 3 })).toEqual([]);
  expect(found(ahead(58.9), { signAhead: 62, signTolerance: 3 })).toEqual([expect.objectContaining({ limit: [59, 65] })]);
});
