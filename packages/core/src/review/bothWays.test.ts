import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { Layout } from '../layout/layout.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, turtle, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { crossesFlow, servedBothWays } from './bothWays.ts';

const centre = (course: Course): Course => ({ ...course, drawn: 'centre' });

/** East 1 km, then back so many metres to the right of the way out; tables so many metres to the right of it. */
function there(back: number, tables: number, keys: Partial<PlanStation> = {}): Layout {
  const out = turtlePoints(ORIGIN, [[90, 1000]]);
  const line = [...out, ...out.map((at) => (back < 0 ? from(at, 0, -back) : from(at, 180, back))).reverse()];
  return layoutOf([centre(courseThrough(line))], [{ at: from(from(ORIGIN, 90, 500), 180, tables), lead: { race: 'c', pass: 0 }, passes: 'all', ...keys }]);
}

describe('served-both-ways', () => {
  it('is a warning that tells in which order each way meets the tables', () => {
    expect(servedBothWays.find(there(0, 5))).toEqual([
      expect.objectContaining({ code: 'served-both-ways', severity: 'warning', message: expect.stringMatching(/lead's meet sports drink, then water; .* meet water, then sports drink/), where: expect.objectContaining({ path: '/stations/0/passes', station: 's1', race: 'c', measure: expect.closeTo(1500, 0) }) }),
    ]);
  });

  it('is silent where one way is served, be it twice', () => {
    expect(servedBothWays.find(there(0, 5, { passes: 'lead' }))).toEqual([]);
    const laps = turtle(ORIGIN, [[90, 1000], [0, 300], [270, 1000], [180, 300], [90, 1000]]);
    expect(servedBothWays.find(layoutOf([laps], [{ at: from(from(ORIGIN, 90, 500), 180, 5), passes: 'all' }]))).toEqual([]);
  });
});

describe('crosses-flow', () => {
  it('is an error on one road: the tables lie beyond both ways, and one must cross the other', () => {
    expect(crossesFlow.find(there(0, 5))).toEqual([
      expect.objectContaining({ code: 'crosses-flow', severity: 'error', measured: expect.closeTo(0, 3), unit: 'm', message: expect.stringContaining('one of them must cross'), where: expect.objectContaining({ station: 's1', course: 'c' }) }),
    ]);
  });

  it('names who crosses where one way runs farther from the tables', () => {
    const [out] = crossesFlow.find(there(4, 10));
    expect(out).toMatchObject({ measured: expect.closeTo(4, 2) as number, message: expect.stringMatching(/at 500\.0 m run 4\.0 m farther/) as string });
    // The way back on the far side of the way out: it crosses.
    expect(crossesFlow.find(there(-4, 5))[0]!.message).toMatch(/at 150\d\.\d m run 4\.0 m farther/);
    // Also beyond one road's width.
    expect(crossesFlow.find(there(-20, 5))).toHaveLength(1);
  });

  it('is silent where the tables stand between the two ways', () => {
    expect(crossesFlow.find(there(10, 5))).toEqual([]);
    expect(servedBothWays.find(there(10, 5))).toHaveLength(1);
  });

  it('cannot tell where the side is unclear, unless the plan declares it', () => {
    expect(crossesFlow.find(there(0, 1))).toEqual([expect.objectContaining({ cannotTell: true })]);
    const [declared] = crossesFlow.find(there(0, 1, { side: 'right' }));
    expect(declared).toMatchObject({ severity: 'error' });
    expect(declared!.cannotTell).toBeUndefined();
  });
});
