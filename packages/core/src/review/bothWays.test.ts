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
  return layoutOf(
    [centre(courseThrough(line))],
    [{ at: from(from(ORIGIN, 90, 500), 180, tables), lead: { race: 'c', pass: 0 }, passes: 'all', ...keys }],
  );
}

describe('served-both-ways', () => {
  it('is a warning that tells in which order each way meets the tables', () => {
    expect(servedBothWays.find(there(0, 5))).toEqual([
      expect.objectContaining({
        code: 'served-both-ways',
        severity: 'warning',
        message: expect.stringMatching(
          /one way they meet sports drink, then water; the other way \(.*\) water, then sports drink/,
        ),
        where: expect.objectContaining({
          path: '/stations/0/passes',
          station: 's1',
          race: 'c',
          measure: expect.closeTo(1500, 0),
        }),
      }),
    ]);
  });

  it('is silent where one way is served, be it twice', () => {
    expect(servedBothWays.find(there(0, 5, { passes: 'lead' }))).toEqual([]);
    const laps = turtle(ORIGIN, [
      [90, 1000],
      [0, 300],
      [270, 1000],
      [180, 300],
      [90, 1000],
    ]);
    expect(servedBothWays.find(layoutOf([laps], [{ at: from(from(ORIGIN, 90, 500), 180, 5), passes: 'all' }]))).toEqual(
      [],
    );
  });
});

describe('crosses-flow', () => {
  it('is an error on one road: the tables lie beyond both ways, and one must cross the other', () => {
    expect(crossesFlow.find(there(0, 5))).toEqual([
      expect.objectContaining({
        code: 'crosses-flow',
        severity: 'error',
        measured: expect.closeTo(0, 3),
        unit: 'm',
        message: expect.stringContaining('one must cross the other'),
        where: expect.objectContaining({ station: 's1', course: 'c' }),
      }),
    ]);
  });

  it('names who crosses where one way runs farther from the tables', () => {
    const [out] = crossesFlow.find(there(4, 10));
    expect(out).toMatchObject({
      measured: expect.closeTo(4, 2) as number,
      message: expect.stringMatching(/at 0\.50 km, 4 m farther from the tables, must cross/) as string,
    });
    // The way back on the far side of the way out: it crosses.
    expect(crossesFlow.find(there(-4, 5))[0]!.message).toMatch(/at 1\.50 km, 4 m farther from the tables, must cross/);
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

describe('who runs against each other', () => {
  it('names the races of the other way that are served, each once', () => {
    const out = turtlePoints(ORIGIN, [[90, 1000]]);
    const there = centre(courseThrough([...out, ...out.slice(0, -1).reverse()]));
    const home = (id: string): Course => ({ ...centre(courseThrough([...out].reverse(), id)) });
    const layout = layoutOf(
      [there, home('d'), home('e')],
      [{ at: from(from(ORIGIN, 90, 500), 180, 5), lead: { race: 'c', pass: 0 }, passes: 'all', races: ['c', 'd'] }],
    );
    const [finding, ...more] = servedBothWays.find(layout);
    expect(more).toEqual([]);
    expect(finding!.message).toContain('the other way (c at 1.50 km and d at 0.50 km) water, then sports drink.');
    expect(crossesFlow.find(layout)).toHaveLength(1);
  });

  it('is nobody where the other way is seen only, though another lap of the lead is served', () => {
    const out = turtlePoints(ORIGIN, [[90, 1000]]);
    const both = centre(courseThrough([...out, ...out.slice(0, -1).reverse(), ...out.slice(1)]));
    const layout = (passes: PlanStation['passes']): Layout =>
      layoutOf([both], [{ at: from(from(ORIGIN, 90, 500), 180, 5), lead: { race: 'c', pass: 0 }, passes }]);
    const lap = { race: 'c', pass: 0 };
    expect(servedBothWays.find(layout([lap]))).toEqual([]);
    expect(servedBothWays.find(layout([lap, { race: 'c', pass: 1 }]))).toHaveLength(1);
    expect(crossesFlow.find(layout([lap]))).toEqual([]);
    expect(crossesFlow.find(layout([lap, { race: 'c', pass: 1 }]))).toHaveLength(1);
  });

  it('is not told from ways that run at less than 120° to each other', () => {
    const crossing = (azimuth: number): Layout =>
      layoutOf(
        [
          centre(turtle(ORIGIN, [[90, 1000]], 20, 'c')),
          centre(turtle(from(from(ORIGIN, 90, 500), azimuth + 180, 500), [[azimuth, 1000]], 20, 'd')),
        ],
        [{ at: from(from(ORIGIN, 90, 500), 180, 5), passes: 'all' }],
      );
    expect(servedBothWays.find(crossing(90 + 125))).toHaveLength(1);
    expect(servedBothWays.find(crossing(90 + 115))).toEqual([]);
  });

  it('is said with doubt where lines that were recorded do not tell who runs farther off', () => {
    const out = turtlePoints(ORIGIN, [[90, 1000]]);
    const recorded = courseThrough([...out, ...out.map((at) => from(at, 0, 0.5)).reverse()]);
    const pin = { at: from(from(ORIGIN, 90, 500), 180, 5), lead: { race: 'c', pass: 0 }, passes: 'all' as const };
    expect(crossesFlow.find(layoutOf([recorded], [pin]))[0]!.message).toContain('both ways on one road');
    expect(crossesFlow.find(layoutOf([centre(recorded)], [pin]))[0]!.message).toContain(
      '0.5 m farther from the tables',
    );
    const unclear = crossesFlow.find(there(0, 1))[0]!;
    expect(unclear.message).toContain('The side is unclear: this applies only if the tables stand beyond both ways.');
    expect(crossesFlow.find(there(0, 5))[0]!.message).not.toContain('unclear');
  });
});
