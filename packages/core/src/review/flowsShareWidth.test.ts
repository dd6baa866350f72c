import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { flowsShareWidth } from './flowsShareWidth.ts';

/** Out eastwards, and back so many metres to the north. */
const found = (keys: Partial<PlanStation>, apart: number = 0): readonly Finding[] => {
  const course = turtle(ORIGIN, [
    [90, 3000],
    [0, apart],
    [270, 3000],
  ]);
  const on = { course: 'c', measure: 1500, side: 'right', offset: 5 } as const;
  return flowsShareWidth.find(layoutOf([course], [{ on, lead: { race: 'c', pass: 0 }, ...keys }]));
};
/** What tables of 30 in and the metre for the crew take, less the setback of 0.5 m. */
const TAKEN = 30 * 0.0254 + 1 - 0.5;

describe('flows-share-width', () => {
  it('is an error where less than twice the clear width is left for both ways, with what is', () => {
    expect(found({ width: 6 + TAKEN - 0.01 })).toEqual([
      expect.objectContaining({
        code: 'flows-share-width',
        severity: 'error',
        measured: expect.closeTo(5.99, 6),
        limit: 6,
        unit: 'm',
        where: expect.objectContaining({ path: '/stations/0/width', station: 's1', race: 'c' }),
      }),
    ]);
    expect(found({ width: 6 + TAKEN })).toEqual([]);
  });

  it('leaves to clear-width what is too narrow for one', () => {
    expect(found({ width: 3 + TAKEN + 0.01 })).toHaveLength(1);
    expect(found({ width: 3 + TAKEN - 0.01 })).toEqual([]);
  });

  it('cannot be judged without a width, and says so', () => {
    expect(found({})).toEqual([
      expect.objectContaining({
        severity: 'warning',
        cannotTell: true,
        message: expect.stringContaining('whether it has cannot be judged'),
      }),
    ]);
  });

  it('is silent where the other way runs on another road, and where all run one way', () => {
    expect(found({}, 9.5)).toHaveLength(1);
    expect(found({}, 10.5)).toEqual([]);
    expect(found({ width: 8 }, 7.9)).toEqual([]);
    const one = turtle(ORIGIN, [[90, 3000]]);
    const on = { course: 'c', measure: 1500, side: 'right', offset: 5 } as const;
    expect(flowsShareWidth.find(layoutOf([one, { ...one, id: 'd' }], [{ on }]))).toEqual([]);
  });
});
