import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { Check } from './check.ts';
import { sideContradicted } from './sideContradicted.ts';
import { sideUnclear } from './sideUnclear.ts';

/** Findings for a pin `right` metres to the right of a straight road. */
const found = (check: Check, right: number, keys: Partial<PlanStation> = {}): readonly Finding[] =>
  check.find(layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ at: from(from(ORIGIN, 90, 1500), 180, right), ...keys }]));

/** Where confidence reaches 0.95 for 5 m and 3 m of 95 % radius: 1.6449·√(5² + 3²)/2.4477 m (normal quantile and Rayleigh's 95 %). */
const CLEAR = (1.6448536 * Math.hypot(5, 3)) / 2.4477468;

describe('side-unclear', () => {
  it('is a warning where a pin too near the line has no declared side, with its confidence', () => {
    expect(found(sideUnclear, CLEAR - 0.01)).toEqual([
      expect.objectContaining({ code: 'side-unclear', severity: 'warning', measured: expect.closeTo(0.9496, 3), limit: 0.95, where: expect.objectContaining({ path: '/stations/0', station: 's1' }) }),
    ]);
    expect(found(sideUnclear, CLEAR + 0.01)).toEqual([]);
  });

  it('is silent where the side is declared', () => {
    expect(found(sideUnclear, 0.5, { side: 'left' })).toEqual([]);
  });

  it('tells the confidence of the pass that leads, not of another in its direction', () => {
    // The second time the course runs 5 m farther west: the pin, 1 m west of the first, is then clearly on its right.
    const course = turtle(ORIGIN, [[0, 800], [90, 600], [180, 800], [270, 605], [0, 800]], 20);
    const at = from(from(ORIGIN, 0, 400), 270, 1);
    const lead = (pass: number): readonly Finding[] => sideUnclear.find(layoutOf([course], [{ at, lead: { race: 'c', pass } }]));
    expect(lead(0)).toEqual([expect.objectContaining({ measured: expect.closeTo(0.6627, 2) })]);
    expect(lead(1)).toEqual([]);
  });
});

describe('side-contradicted', () => {
  it('is a warning where the pin stands surely on the other side', () => {
    expect(found(sideContradicted, CLEAR + 0.01, { side: 'left' })).toEqual([
      expect.objectContaining({ code: 'side-contradicted', severity: 'warning', measured: expect.closeTo(-CLEAR - 0.01, 3), unit: 'm', where: expect.objectContaining({ path: '/stations/0/side', station: 's1' }) }),
    ]);
    expect(found(sideContradicted, CLEAR - 0.01, { side: 'left' })).toEqual([]);
  });

  it('is silent where they agree, and where nothing is declared', () => {
    expect(found(sideContradicted, 9, { side: 'right' })).toEqual([]);
    expect(found(sideContradicted, 9)).toEqual([]);
  });
});
