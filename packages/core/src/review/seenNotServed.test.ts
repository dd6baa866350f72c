import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, turtle, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { seenNotServed } from './seenNotServed.ts';

const OUT = turtlePoints(ORIGIN, [[90, 1000]]);

/** East 1 km, north, and back so many metres north of the way out; the pin 5 m south of the way out. */
const back = (north: number, keys: Partial<PlanStation> = {}): readonly Finding[] =>
  seenNotServed.find(
    layoutOf(
      [courseThrough([...OUT, ...OUT.map((at) => from(at, 0, north)).reverse()])],
      [{ at: from(from(ORIGIN, 90, 500), 180, 5), ...keys }],
    ),
  );

describe('seen-not-served', () => {
  it('is a note that lists the passes within the snap radius that the default leaves unserved', () => {
    expect(back(54.9)).toEqual([
      expect.objectContaining({
        code: 'seen-not-served',
        severity: 'note',
        measured: expect.closeTo(59.9, 2),
        limit: 60,
        unit: 'm',
        message:
          'Runners also pass on the way back (c at 1.55 km) and are not served. If that is intended, confirm it under Runners.',
        where: expect.objectContaining({ path: '/stations/0/passes', station: 's1', race: 'c', course: 'c' }),
      }),
    ]);
    expect(back(55.1)).toEqual([]);
  });

  it('is one finding a station, however many passes', () => {
    const line = turtle(ORIGIN, [
      [90, 1000],
      [0, 20],
      [270, 1000],
      [180, 20],
      [90, 1000],
      [0, 20],
      [270, 1000],
    ]);
    const found = seenNotServed.find(layoutOf([line], [{ at: from(from(ORIGIN, 90, 500), 180, 5) }]));
    expect(found).toHaveLength(1);
    expect(found[0]!.message).toMatch(/on the way back \(c at 1\.\d\d km, c at 3\.\d\d km\)/);
  });

  it('is silent where the plan lists the passes or asks for all, and for races that the station does not serve', () => {
    expect(back(20)).toHaveLength(1);
    expect(back(20, { passes: 'all' })).toEqual([]);
    expect(back(20, { passes: [{ race: 'c', pass: 0 }] })).toEqual([]);
    const other = turtle(from(ORIGIN, 90, 1000), [[270, 1000]], 20, 'd');
    const at = from(from(ORIGIN, 90, 500), 180, 5);
    expect(seenNotServed.find(layoutOf([turtle(ORIGIN, [[90, 1000]]), other], [{ at, races: ['c'] }]))).toEqual([]);
    expect(seenNotServed.find(layoutOf([turtle(ORIGIN, [[90, 1000]]), other], [{ at }]))).toHaveLength(1);
  });
});

it('a pass beyond an end of the course is not missed, and the nearest of several is told', () => {
  // Home to 10 m short of where the pin stands: beyond the finish.
  const short = courseThrough([
    ...OUT,
    ...OUT.slice(27)
      .map((at) => from(at, 0, 20))
      .reverse(),
  ]);
  expect(seenNotServed.find(layoutOf([short], [{ at: from(from(ORIGIN, 90, 500), 180, 5) }]))).toEqual([]);
  const line = turtle(ORIGIN, [
    [90, 1000],
    [0, 40],
    [270, 1000],
    [180, 20],
    [90, 1000],
    [180, 10],
    [270, 1000],
  ]);
  const [finding] = seenNotServed.find(
    layoutOf([line], [{ at: from(from(ORIGIN, 90, 500), 180, 5), lead: { race: 'c', pass: 0 } }]),
  );
  expect(finding!.measured).toBeCloseTo(15, 0);
});
