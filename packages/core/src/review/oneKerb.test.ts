/** Stations for the two ways of one road, and runners who come between one way and its tables. */
import { describe, expect, it } from 'vitest';
import type { Course } from '../course/course.ts';
import type { Finding } from '../finding.ts';
import type { DeclaredSide } from '../kinds.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, courseThrough, from, turtle, turtlePoints } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { crossesFlow } from './bothWays.ts';

const centre = (course: Course): Course => ({ ...course, drawn: 'centre' });
/** East 3 km, and back so many metres to the right of the way out. */
const outAndBack = (aside: number): Course => {
  const out = turtlePoints(ORIGIN, [[90, 3000]], 100);
  return centre(
    courseThrough([...out, ...out.map((at) => (aside < 0 ? from(at, 0, -aside) : from(at, 180, aside))).reverse()]),
  );
};
/** A station for the way out (0) or back (1), so many metres to the right of the way out. */
const station = (
  id: string,
  along: number,
  pass: 0 | 1,
  right: number,
  keys: Partial<PlanStation> = {},
): Partial<PlanStation> => {
  const side: DeclaredSide = right > 0 === (pass === 0) ? 'right' : 'left';
  const place = from(ORIGIN, 90, along);
  return {
    id,
    name: id,
    at: right > 0 ? from(place, 180, right) : from(place, 0, -right),
    side,
    lead: { race: 'c', pass },
    passes: [{ race: 'c', pass }],
    ...keys,
  };
};
const found = (course: Course, ...stations: readonly Partial<PlanStation>[]): readonly Finding[] =>
  crossesFlow.find(layoutOf([course], stations));

describe('two stations of one road, one for each way', () => {
  it('are an error where both stand on one kerb, and not where each stands on the outer side of its way', () => {
    const [finding, ...more] = found(outAndBack(0), station('s1', 900, 0, 5), station('s2', 2000, 1, 5));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ code: 'crosses-flow', severity: 'error', params: { kerb: ['s1', 's2'] } });
    expect(finding!.message).toBe(
      's1 and s2 serve the two ways of one road from the same kerb: one way must cross the other to its tables. Each should stand on the outer side of its own runners. Move one across the road, or agree with officials and police how the ways are parted.',
    );
    expect(found(outAndBack(0), station('s1', 900, 0, 5), station('s2', 2000, 1, -5))).toEqual([]);
    expect(found(outAndBack(0), station('s1', 900, 0, -5), station('s2', 2000, 1, 5))).toEqual([]);
    expect(found(outAndBack(0), station('s1', 900, 0, 5), station('s2', 2000, 0, 5))).toEqual([]);
  });

  it('are one finding of all, whether the plan lists the passes or leaves them to the lead', () => {
    const all = [station('s1', 600, 0, 5), station('s2', 1500, 0, 5), station('s3', 2200, 1, 5)];
    expect(found(outAndBack(0), ...all).map(({ params }) => params!['kerb'])).toEqual([['s1', 's3', 's2']]);
    const [first, second] = [station('s1', 900, 0, 5, { passes: 'lead' }), station('s2', 2000, 1, 5)];
    expect(found(outAndBack(0), first, second)).toHaveLength(1);
  });

  it('are silent on two roads that only the pins’ distances make alike', () => {
    // Out along one road, back along another 200 m beside it.
    const loop = centre(
      turtle(
        ORIGIN,
        [
          [90, 3000],
          [180, 200],
          [270, 3000],
        ],
        100,
      ),
    );
    expect(found(loop, station('s1', 900, 0, 5), station('s2', 2000, 0, 195, { side: 'left' }))).toEqual([]);
  });
});

describe('a station for one way', () => {
  it('is an error where the other way is drawn between its runners and the tables', () => {
    const [finding, ...more] = found(outAndBack(3), station('s1', 900, 0, 6));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'error', measured: expect.closeTo(3, 2) as number });
    expect(finding!.message).toContain(
      'Runners come both ways, and c at 0.90 km, 3 m farther from the tables, must cross the others.',
    );
  });

  it('is silent where the other way runs beyond its runners, behind the tables or on one line', () => {
    expect(found(outAndBack(-3), station('s1', 900, 0, 6))).toEqual([]);
    expect(found(outAndBack(8), station('s1', 900, 0, 4))).toEqual([]);
    expect(found(outAndBack(0), station('s1', 900, 0, 6))).toEqual([]);
  });

  it('is silent on recorded lines, which wander across each other', () => {
    expect(found({ ...outAndBack(3), drawn: 'recorded' }, station('s1', 900, 0, 6))).toEqual([]);
  });
});
