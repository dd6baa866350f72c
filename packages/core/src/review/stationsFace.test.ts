import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { stationsFace } from './stationsFace.ts';

/** Tables of 6.7056 m on the right at 1500 m, and others on the left so many metres farther on. */
const found = (
  farther: number,
  keys: Partial<PlanStation> = {},
  other: Partial<PlanStation> = keys,
  legs: Parameters<typeof turtle>[1] = [[90, 3000]],
): readonly Finding[] => {
  const on = (measure: number, side: 'left' | 'right'): Partial<PlanStation> => ({
    on: { course: 'c', measure, side, offset: 5 },
    side,
    lead: { race: 'c', pass: 0 },
  });
  return stationsFace.find(
    layoutOf(
      [turtle(ORIGIN, legs)],
      [
        { ...on(1500, 'right'), ...keys },
        { ...on(1500 + farther, 'left'), ...other },
      ],
    ),
  );
};
/** What tables of 30 in and the metre for the crew take, less the setback of 0.5 m. */
const TAKEN = 30 * 0.0254 + 1 - 0.5;

describe('stations-face', () => {
  it('is an error where both leave less than the clear width between them, with what is left', () => {
    expect(found(3, { width: 3 + 2 * TAKEN - 0.01 })).toEqual([
      expect.objectContaining({
        code: 'stations-face',
        severity: 'error',
        measured: expect.closeTo(2.99, 6),
        limit: 3,
        unit: 'm',
        params: expect.objectContaining({ other: 's2' }),
        where: expect.objectContaining({ station: 's1' }),
      }),
    ]);
    expect(found(3, { width: 3 + 2 * TAKEN })).toEqual([]);
  });

  it('takes the width that either gives, the lesser of two', () => {
    expect(found(3, { width: 5 }, {})).toHaveLength(1);
    expect(found(3, {}, { width: 5 })).toHaveLength(1);
    expect(found(3, { width: 9 }, { width: 5 })).toEqual([expect.objectContaining({ measured: 5 - 2 * TAKEN })]);
  });

  it('cannot be judged without any width, and says so', () => {
    expect(found(3)).toEqual([expect.objectContaining({ severity: 'warning', cannotTell: true })]);
  });

  it('ends where tables no longer lie beside each other', () => {
    expect(found(6.7)).toHaveLength(1);
    expect(found(6.71)).toEqual([]);
    expect(found(-6.7)).toHaveLength(1);
    expect(found(-6.71)).toEqual([]);
  });

  it('is silent on one side: that is an overlap', () => {
    const right = { on: { course: 'c', measure: 1503, side: 'right', offset: 5 }, side: 'right' } as const;
    expect(found(3, {}, right)).toEqual([]);
  });

  it('asks for the width of both ways where runners come against each other between them', () => {
    const back: Parameters<typeof turtle>[1] = [
      [90, 3000],
      [270, 3000],
    ];
    const width = 3 + 2 * TAKEN + 1;
    expect(found(3, { width }, { width }, back)).toEqual([expect.objectContaining({ limit: 6 })]);
    expect(found(3, { width: width + 2 }, { width: width + 2 }, back)).toEqual([]);
  });

  it('cannot run with one station', () => {
    const on = { course: 'c', measure: 1500, side: 'right', offset: 5 } as const;
    expect(stationsFace.missing!(layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ on }]))).toBe('one-station');
  });
});
