import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, type TurtleLeg, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { passersNotServed } from './passersNotServed.ts';

/** Race d on a road so many metres south of that of race c, at an azimuth. */
const found = (south: number, keys: Partial<PlanStation> = {}, azimuth: number = 90): readonly Finding[] => {
  const middle = from(from(ORIGIN, 90, 1500), 180, south);
  const courses = [turtle(ORIGIN, [[90, 3000]]), turtle(from(middle, azimuth + 180, 1500), [[azimuth, 3000]], 20, 'd')];
  const on = { course: 'c', measure: 1500, side: 'right', offset: 5 } as const;
  return passersNotServed.find(layoutOf(courses, [{ on, races: ['c'], ...keys }]));
};

describe('passers-not-served', () => {
  it('is a warning where a race that is not served runs on the road of the tables, either way', () => {
    for (const azimuth of [90, 270])
      expect(found(0, {}, azimuth)).toEqual([
        expect.objectContaining({
          code: 'passers-not-served',
          severity: 'warning',
          params: { passes: [{ race: 'd', measure: expect.closeTo(1500, 0) }] },
          where: expect.objectContaining({ path: '/stations/0/races', station: 's1', race: 'd' }),
        }),
      ]);
  });

  it('is silent on another road, and where that race only crosses', () => {
    expect(found(9.5)).toHaveLength(1);
    expect(found(10.5)).toEqual([]);
    expect(found(0, {}, 170)).toEqual([]);
  });

  it('is silent where the race is served, where the plan lists who is, and where nothing stands', () => {
    expect(found(0, { races: ['c', 'd'] })).toEqual([]);
    expect(found(0, { passes: [{ race: 'c', pass: 0 }] })).toEqual([]);
    expect(found(0, { serves: [] })).toEqual([]);
  });

  it('is a warning where a served race runs past the same way and the plan lists other times', () => {
    const lap: readonly TurtleLeg[] = [
      [90, 2000],
      [0, 500],
      [270, 2000],
      [180, 500],
    ];
    const on = { course: 'c', measure: 1500, side: 'right', offset: 5 } as const;
    const laps = (passes: PlanStation['passes']): readonly Finding[] =>
      passersNotServed.find(layoutOf([turtle(ORIGIN, [...lap, ...lap, ...lap])], [{ on, passes }]));
    expect(laps([0, 1].map((pass) => ({ race: 'c', pass })))).toEqual([
      expect.objectContaining({ params: { passes: [{ race: 'c', measure: expect.closeTo(11_500, -1) }] } }),
    ]);
    expect(laps([0, 1, 2].map((pass) => ({ race: 'c', pass })))).toEqual([]);
    expect(laps('lead')).toEqual([]);
    // The way back is told from the way out.
    const back = turtle(ORIGIN, [
      [90, 3000],
      [270, 3000],
    ]);
    expect(passersNotServed.find(layoutOf([back], [{ on, passes: [{ race: 'c', pass: 0 }] }]))).toEqual([]);
  });

  it('tells a race that passes twice once', () => {
    const courses = [
      turtle(ORIGIN, [[90, 3000]]),
      turtle(
        ORIGIN,
        [
          [90, 3000],
          [270, 3000],
        ],
        20,
        'd',
      ),
    ];
    const on = { course: 'c', measure: 1500, side: 'right', offset: 5 } as const;
    const [finding] = passersNotServed.find(layoutOf(courses, [{ on, races: ['c'] }]));
    expect(finding!.message).toContain('d at 1.50 km runs past the tables and is not served.');
  });
});
