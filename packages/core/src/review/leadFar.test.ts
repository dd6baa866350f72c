import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { leadFar } from './leadFar.ts';

/** Out eastwards, and back `apart` metres to the north; the pin 5 m south of the way back. */
function found(apart: number, lead?: { race: string; pass: number }): readonly Finding[] {
  const course = turtle(ORIGIN, [
    [90, 1000],
    [0, apart],
    [270, 1000],
  ]);
  const at = from(from(from(ORIGIN, 90, 500), 0, apart), 180, 5);
  return leadFar.find(layoutOf([course], [{ at, side: 'left', ...(lead === undefined ? {} : { lead }) }]));
}

describe('a lead that is not the road at the pin', () => {
  it('is found where another direction is more than 10 m nearer, with the difference', () => {
    const [finding] = found(20.3);
    expect(finding).toMatchObject({
      code: 'lead-far',
      severity: 'warning',
      limit: 10,
      unit: 'm',
      where: { station: 's1', race: 'c' },
    });
    expect(finding!.measured).toBeCloseTo(10.3, 0);
  });

  it('is silent just inside, and where the plan names its lead', () => {
    expect(found(19.7)).toEqual([]);
    expect(found(20.3, { race: 'c', pass: 0 })).toEqual([]);
  });

  it('is silent where only courses pass that the station does not serve', () => {
    const courses = [turtle(ORIGIN, [[90, 1000]]), turtle(from(ORIGIN, 0, 900), [[90, 1000]], 20, 'd')];
    const layout = layoutOf(courses, [{ at: from(from(ORIGIN, 90, 500), 180, 5), races: ['d'] }]);
    expect(layout.stations[0]!.directions).toHaveLength(1);
    expect(leadFar.find(layout)).toEqual([]);
  });
});

describe('which passes the lead is compared with', () => {
  it('are those of races that the station serves: another race nearer by is none of its own', () => {
    const courses = [turtle(from(ORIGIN, 0, 25), [[90, 1000]], 20, 'a'), turtle(ORIGIN, [[90, 1000]], 20, 'b')];
    const at = from(from(ORIGIN, 90, 500), 180, 5);
    expect(leadFar.find(layoutOf(courses, [{ at, side: 'left', races: ['a'] }]))).toEqual([]);
    expect(leadFar.find(layoutOf(courses, [{ at, side: 'left' }]))).toEqual([
      expect.objectContaining({ where: expect.objectContaining({ race: 'b', course: 'b' }) }),
    ]);
  });

  it('are held against the nearest pass of the lead’s direction, not its farthest', () => {
    // Eastwards twice, 5 m and then 25 m north of the pin, and home between them 14 m north of it.
    const course = turtle(from(ORIGIN, 0, 25), [
      [90, 1000],
      [180, 11],
      [270, 1000],
      [180, 9],
      [90, 1000],
    ]);
    const layout = layoutOf([course], [{ at: from(ORIGIN, 90, 500), side: 'right' }]);
    const [direction] = layout.stations[0]!.directions;
    const both = { ...layout, stations: [{ ...layout.stations[0]!, directions: [{ ...direction!, passes: [0, 2] }] }] };
    expect(leadFar.find(both)).toEqual([]);
    const far = { ...layout, stations: [{ ...layout.stations[0]!, directions: [{ ...direction!, passes: [0] }] }] };
    expect(leadFar.find(far)).toEqual([
      expect.objectContaining({
        measured: expect.closeTo(20, 0),
        message: expect.stringMatching(
          /for runners 2[56] m from the pin, but c at .* km \(3rd time past\) is only [45](?:\.\d)? m from it/u,
        ),
      }),
    ]);
  });
});
