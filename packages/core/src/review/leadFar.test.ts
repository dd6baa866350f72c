import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { PlanStation } from '../plan/plan.ts';
import { leadFar } from './leadFar.ts';
import { reviewLayout } from './review.ts';

/** Out eastwards, and back `apart` metres to the north; the pin so many metres south of the way back. */
function found(apart: number, keys: Partial<PlanStation> = {}, south: number = 5): readonly Finding[] {
  const course = turtle(ORIGIN, [
    [90, 1000],
    [0, apart],
    [270, 1000],
  ]);
  const at = from(from(from(ORIGIN, 90, 500), 0, apart), 180, south);
  return leadFar.find(layoutOf([course], [{ at, side: 'left', ...keys }]));
}

describe('a way that the plan does not name', () => {
  it('is that of the pass by the pin, where that is more than 4 m nearer, and is asked for', () => {
    expect(found(14.3)).toEqual([
      expect.objectContaining({
        code: 'lead-far',
        severity: 'warning',
        params: expect.objectContaining({ taken: 'pin', time: 2 }),
        where: expect.objectContaining({ station: 's1', race: 'c', path: '/stations/0/lead' }),
        message: expect.stringContaining('(2nd time past), as the pin stands by that way. The plan should say'),
      }),
    ]);
    expect(found(13.7)).toEqual([]);
  });

  it('is that of the only pass that sees the pin on the declared side', () => {
    // South of both ways: on the right of the way out, on the left of the way back.
    expect(found(2, { side: 'left' }, 8)).toEqual([
      expect.objectContaining({
        params: expect.objectContaining({ taken: 'side', time: 2 }),
        message: expect.stringContaining('as only that way has the pin on the declared side'),
      }),
    ]);
    expect(found(2, { side: 'right' }, 8)).toEqual([]);
  });

  it('is not asked for where the plan names it', () => {
    expect(found(14.3, { lead: { race: 'c', pass: 1 } })).toEqual([]);
    expect(found(24.3, { lead: { race: 'c', pass: 0 } })).toEqual([]);
    expect(found(14.3, { passes: [{ race: 'c', pass: 1 }] })).toEqual([]);
  });

  it('is asked for once: who else comes past is not told beside it', () => {
    const course = turtle(ORIGIN, [
      [90, 1000],
      [0, 14.3],
      [270, 1000],
    ]);
    const at = from(from(ORIGIN, 90, 500), 0, 9.3);
    const codes = (keys: Partial<PlanStation>): string[] =>
      reviewLayout(layoutOf([course], [{ at, side: 'left', ...keys }])).findings.map(({ code }) => code);
    expect(codes({})).toContain('lead-far');
    expect(codes({})).not.toContain('seen-not-served');
    expect(codes({ lead: { race: 'c', pass: 1 } })).toContain('seen-not-served');
  });
});

describe('a pass that the plan names and that is not by the pin', () => {
  const listed = { passes: [{ race: 'c', pass: 0 }] };

  it('is found where another is more than 10 m nearer, with the difference', () => {
    const [finding] = found(20.3, listed);
    expect(finding).toMatchObject({ severity: 'warning', limit: 10, unit: 'm', params: { taken: null } });
    expect(finding!.measured).toBeCloseTo(10.3, 0);
    expect(found(19.7, listed)).toEqual([]);
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
    const passes = [{ race: 'c', pass: 0 }];
    const layout = layoutOf([course], [{ at: from(ORIGIN, 90, 500), side: 'right', passes }]);
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
