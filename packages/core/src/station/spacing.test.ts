import { describe, expect, it } from 'vitest';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, type TurtleLeg, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import type { RaceSpacing } from './station.ts';

const on = (measure: number, course: string = 'c'): Partial<PlanStation> => ({
  on: { course, measure, side: 'right', offset: 5 },
});
const legs = (race: RaceSpacing): [string, string, number][] =>
  race.legs.map(({ from, to, length }) => [from, to, Math.round(length)]);

describe('spacing', () => {
  it('runs from the start over the stations to the finish, and adds up to the course', () => {
    const [race] = layoutOf([turtle(ORIGIN, [[90, 12_000]])], [on(3000), on(7500)]).spacing;
    expect(legs(race!)).toEqual([
      ['start', 's1', 3000],
      ['s1', 's2', 4500],
      ['s2', 'finish', 4500],
    ]);
    expect(race).toMatchObject({
      race: 'c',
      course: 'c',
      shortest: expect.closeTo(3000, 2),
      longest: expect.closeTo(4500, 2),
      mean: expect.closeTo(4000, 2),
    });
    expect(race!.legs.map((leg) => Math.round(leg.end))).toEqual([3000, 7500, 12_000]);
  });

  it('follows the course, not the order of the plan', () => {
    const [race] = layoutOf([turtle(ORIGIN, [[90, 12_000]])], [on(7500), on(3000)]).spacing;
    expect(legs(race!)).toEqual([
      ['start', 's2', 3000],
      ['s2', 's1', 4500],
      ['s1', 'finish', 4500],
    ]);
  });

  it('counts a station once a lap', () => {
    const lap: readonly TurtleLeg[] = [
      [0, 800],
      [90, 700],
      [180, 800],
      [270, 700],
    ];
    const [race] = layoutOf([turtle(ORIGIN, [...lap, ...lap, ...lap])], [on(1000)]).spacing;
    expect(legs(race!)).toEqual([
      ['start', 's1', 1000],
      ['s1', 's1', 3000],
      ['s1', 's1', 3000],
      ['s1', 'finish', 2000],
    ]);
  });

  it('leaves out passes that are only seen: the way back of an out-and-back', () => {
    const courses = [
      turtle(ORIGIN, [
        [70, 3000],
        [250, 3000],
      ]),
    ];
    expect(legs(layoutOf(courses, [on(1000)]).spacing[0]!)).toEqual([
      ['start', 's1', 1000],
      ['s1', 'finish', 5000],
    ]);
    expect(legs(layoutOf(courses, [{ ...on(1000), passes: 'all' }]).spacing[0]!)).toEqual([
      ['start', 's1', 1000],
      ['s1', 's1', 4000],
      ['s1', 'finish', 1000],
    ]);
  });

  it('is each race’s own: a station that does not serve a race is not in its legs', () => {
    const layout = layoutOf(
      [turtle(ORIGIN, [[90, 9000]], 20, 'a'), turtle(ORIGIN, [[90, 6000]], 20, 'b')],
      [on(2000, 'a'), { ...on(4000, 'a'), races: ['a'] }, on(8000, 'a')],
    );
    expect(layout.spacing.map((race) => [race.race, legs(race)])).toEqual([
      [
        'a',
        [
          ['start', 's1', 2000],
          ['s1', 's2', 2000],
          ['s2', 's3', 4000],
          ['s3', 'finish', 1000],
        ],
      ],
      [
        'b',
        [
          ['start', 's1', 2000],
          ['s1', 'finish', 4000],
        ],
      ],
    ]);
  });

  it('is one leg from start to finish where no station serves the race', () => {
    const [race] = layoutOf([turtle(ORIGIN, [[90, 4000]])], []).spacing;
    expect(legs(race!)).toEqual([['start', 'finish', 4000]]);
    expect(race!.mean).toBe(race!.longest);
  });

  it('starts at the measure of the course’s start', () => {
    const course = turtle(ORIGIN, [[90, 4000]]);
    const marked = {
      ...course,
      scale: { raw: course.scale.raw, measure: course.scale.measure.map((measure) => measure + 250) },
    };
    const [race] = layoutOf([marked], [on(1250)]).spacing;
    expect(legs(race!)).toEqual([
      ['start', 's1', 1000],
      ['s1', 'finish', 3000],
    ]);
    expect(race!.mean).toBeCloseTo(2000, 2);
  });
});
