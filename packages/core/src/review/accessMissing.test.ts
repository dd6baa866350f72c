import { expect, it } from 'vitest';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { PlanStation, PointKind } from '../plan/plan.ts';
import type { Layout } from '../layout/layout.ts';
import { accessMissing } from './accessMissing.ts';

const course = turtle(ORIGIN, [[90, 3000]], 100);
const withPoints = (...kinds: readonly (readonly PointKind[])[]): Layout =>
  layoutOf(
    [course],
    kinds.map((own, k): Partial<PlanStation> => ({
      on: { course: 'c', measure: 1000 + 500 * k, side: 'right', offset: 5 },
      points: own.map((kind) => ({ kind, at: ORIGIN })),
    })),
  );

it('a station with neither access nor drop point is a note, where others have points', () => {
  expect(accessMissing.find(withPoints(['access'], ['toilets'], [], ['medical', 'drop']))).toEqual([
    expect.objectContaining({
      code: 'access-missing',
      severity: 'note',
      where: expect.objectContaining({ station: 's2', path: '/stations/1' }),
    }),
    expect.objectContaining({ where: expect.objectContaining({ station: 's3' }) }),
  ]);
});

it('a plan without any points is not held against it: the check says that it could not run', () => {
  expect(accessMissing.missing!(withPoints([], []))).toBe('no-points');
  expect(accessMissing.missing!(withPoints([], ['toilets']))).toBeNull();
});
