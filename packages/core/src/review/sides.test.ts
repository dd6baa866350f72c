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

/** Northwards twice in one direction, the second time 5 m farther west. */
const TWICE = turtle(ORIGIN, [
  [0, 800],
  [90, 600],
  [180, 800],
  [270, 605],
  [0, 800],
]);

/** Findings for a pin so many metres west of the first time, where the pass of that index leads. */
const led = (check: Check, west: number, pass: number, keys: Partial<PlanStation> = {}): readonly Finding[] =>
  check.find(layoutOf([TWICE], [{ at: from(from(ORIGIN, 0, 400), 270, west), lead: { race: 'c', pass }, ...keys }]));

describe('side-unclear', () => {
  it('is a warning where a pin too near the line has no declared side, with its confidence', () => {
    expect(found(sideUnclear, CLEAR - 0.01)).toEqual([
      expect.objectContaining({
        code: 'side-unclear',
        severity: 'warning',
        measured: expect.closeTo(0.9496, 3),
        limit: 0.95,
        where: expect.objectContaining({ path: '/stations/0', station: 's1' }),
      }),
    ]);
    expect(found(sideUnclear, CLEAR + 0.01)).toEqual([]);
  });

  it('is silent where the side is declared', () => {
    expect(found(sideUnclear, 0.5, { side: 'left' })).toEqual([]);
  });

  it('tells the confidence of the pass that leads, not of another in its direction', () => {
    expect(led(sideUnclear, 1, 0)).toEqual([expect.objectContaining({ measured: expect.closeTo(0.6627, 2) })]);
    expect(led(sideUnclear, 1, 1)).toEqual([]);
    expect(led(sideUnclear, 4, 0)).toEqual([]);
    expect(led(sideUnclear, 4, 1)).toEqual([expect.objectContaining({ measured: expect.closeTo(0.66, 1) })]);
  });
});

describe('side-contradicted', () => {
  it('is a warning where the pin stands surely on the other side', () => {
    expect(found(sideContradicted, CLEAR + 0.01, { side: 'left' })).toEqual([
      expect.objectContaining({
        code: 'side-contradicted',
        severity: 'warning',
        measured: expect.closeTo(-CLEAR - 0.01, 3),
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0/side', station: 's1' }),
      }),
    ]);
    expect(found(sideContradicted, CLEAR - 0.01, { side: 'left' })).toEqual([]);
  });

  it('is told by the pass that leads, not by another in its direction', () => {
    expect(led(sideContradicted, 1, 0, { side: 'left' })).toEqual([]);
    expect(led(sideContradicted, 1, 1, { side: 'left' })).toEqual([
      expect.objectContaining({ measured: expect.closeTo(-4, 1) }),
    ]);
  });

  it('asks which way is meant where the side is that of the other way, and never to turn it', () => {
    const road = turtle(ORIGIN, [
      [90, 3000],
      [270, 3000],
    ]);
    const at = from(from(ORIGIN, 90, 1500), 180, 6);
    const both = (keys: Partial<PlanStation>): readonly Finding[] =>
      sideContradicted.find(layoutOf([road], [{ at, ...keys }]));
    const [finding] = both({ side: 'left', lead: { race: 'c', pass: 0 } });
    expect(finding).toMatchObject({ where: { path: '/stations/0/lead' }, params: { fits: { race: 'c' } } });
    expect(finding!.message).toContain(
      'For c at 4.50 km, the other way, the pin is on the left. Choose under Runners which way the tables are for.',
    );
    // Where the plan names no way, the one that fits is taken.
    expect(both({ side: 'left' })).toEqual([]);
  });

  it('is one finding of the course where three stations or more contradict it, and hardly any agrees', () => {
    const course = turtle(ORIGIN, [[90, 9000]]);
    const stations = (sides: readonly ('left' | 'right')[]): Finding['where'][] =>
      sideContradicted
        .find(
          layoutOf(
            [course],
            sides.map((side, k) => ({ at: from(from(ORIGIN, 90, 1000 + 1000 * k), 180, 9), side })),
          ),
        )
        .map(({ where }) => where);
    expect(stations(['left', 'left', 'left'])).toEqual([{ path: '/courses/0', course: 'c' }]);
    expect(stations(['left', 'left', 'left', 'right'])).toEqual([{ path: '/courses/0', course: 'c' }]);
    expect(stations(['left', 'left'])).toHaveLength(2);
    expect(stations(['left', 'left', 'left', 'right', 'right'])).toHaveLength(3);
  });

  it('is silent where they agree, and where nothing is declared', () => {
    expect(found(sideContradicted, 9, { side: 'right' })).toEqual([]);
    expect(found(sideContradicted, 9)).toEqual([]);
  });
});

describe('what is said of a side', () => {
  it('is how far the pin stands from the line, and how sure that is', () => {
    expect(found(sideUnclear, 1)[0]!.message).toContain(
      'The pin is 1 m from the course line, so its side is only 66 % sure, and everything is laid out on the line. It should be at least 95 % sure.',
    );
    expect(found(sideContradicted, 9, { side: 'left' })[0]!.message).toContain(
      'The station is declared on the left, but the pin is 9 m to the right. The declared side counts.',
    );
    expect(found(sideContradicted, -9, { side: 'right' })[0]!.message).toContain('the pin is 9 m to the left');
  });

  it('is nothing where no course passes', () => {
    for (const check of [sideUnclear, sideContradicted]) expect(found(check, 900, { side: 'left' })).toEqual([]);
  });
});
