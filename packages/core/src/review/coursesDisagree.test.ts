import { describe, expect, it } from 'vitest';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { coursesDisagree } from './coursesDisagree.ts';

/** Two drawings of one straight road, the second `apart` metres to the left. */
const drawnTwice = (apart: number): ReturnType<typeof coursesDisagree.find> => {
  const full = turtle(ORIGIN, [[90, 3000]], 20, 'full');
  const half = turtle(from(ORIGIN, 0, apart), [[90, 3000]], 25, 'half');
  return coursesDisagree.find(layoutOf([full, half], [{ at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right', width: 7 }]));
};

describe('two courses on one road', () => {
  it('are reported where their lines place an item more than 0.5 m apart, with the distance', () => {
    const [finding] = drawnTwice(0.6);
    expect(finding).toMatchObject({ code: 'courses-disagree', severity: 'warning', limit: 0.5, unit: 'm', where: { station: 's1', course: 'half', race: 'half' } });
    expect(finding!.measured).toBeCloseTo(0.6, 2);
  });

  it('are silent at 0.4 m', () => {
    expect(drawnTwice(0.4)).toEqual([]);
  });

  it('are silent where the pin itself gives the offset, however far apart the lines are', () => {
    const full = turtle(ORIGIN, [[90, 3000]], 20, 'full');
    const half = turtle(from(ORIGIN, 0, 2), [[90, 3000]], 25, 'half');
    expect(coursesDisagree.find(layoutOf([full, half], [{ at: from(from(ORIGIN, 90, 1500), 180, 6), side: 'right' }]))).toEqual([]);
  });
});
