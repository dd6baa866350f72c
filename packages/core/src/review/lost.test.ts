import { describe, expect, it } from 'vitest';
import type { LonLat } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { reviewLayout } from './review.ts';

/** Of a straight road of 12 km with stations at 3, 6 and 9 km, one of them as given: what is found, but for what the plan leaves out. */
const codes = (second: Partial<PlanStation>, others: boolean = true): string[] => {
  const on = (km: number): Partial<PlanStation> => ({
    on: { course: 'c', measure: km * 1000, side: 'right', offset: 5 },
  });
  const stations = others ? [on(3), second, on(9)] : [second];
  const { findings, checks } = reviewLayout(layoutOf([turtle(ORIGIN, [[90, 12_000]], 100)], stations));
  const leftOut = new Set(checks.filter(({ theme }) => theme === 'left-out').map(({ code }) => code));
  return findings.map(({ code }) => code).filter((code) => !leftOut.has(code));
};

describe('a station that serves nobody', () => {
  const beside = (km: number, right: number): Partial<PlanStation> => ({
    at: from(from(ORIGIN, 90, km * 1000), 180, right),
    side: 'right',
  });

  it('is one finding, and the way that runners go without it is none', () => {
    expect(codes(beside(6, 5))).toEqual([]);
    expect(codes(beside(6, 300))).toEqual(['station-off-course']);
    expect(codes({ ...beside(6, 5), passes: [] })).toEqual(['station-unserved']);
    expect(codes({ ...beside(6, 5), passes: [{ race: 'c', pass: 4 }] })).toEqual(['pass-unknown']);
  });

  it('is placed among the others by the plan’s order where its pin tells nothing', () => {
    const swapped = from(from(ORIGIN, 90, 6000), 180, 5).toReversed() as unknown as LonLat;
    expect(codes({ at: swapped, side: 'right' })).toEqual(['station-off-course']);
    expect(codes(beside(6, 30_000))).toEqual(['station-off-course']);
  });

  it('excuses no other long way', () => {
    // By its pin it belongs between the start and the first.
    expect(codes(beside(1, 300))).toEqual(['station-off-course', 'leg-long']);
  });

  it('is why a race has no other', () => {
    expect(codes(beside(6, 300), false)).toEqual(['station-off-course']);
  });
});
