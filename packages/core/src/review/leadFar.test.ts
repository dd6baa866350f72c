import { describe, expect, it } from 'vitest';
import type { Finding } from '../finding.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { leadFar } from './leadFar.ts';

/** Out eastwards, and back `apart` metres to the north; the pin 5 m south of the way back. */
function found(apart: number, lead?: { race: string; pass: number }): readonly Finding[] {
  const course = turtle(ORIGIN, [[90, 1000], [0, apart], [270, 1000]]);
  const at = from(from(from(ORIGIN, 90, 500), 0, apart), 180, 5);
  return leadFar.find(layoutOf([course], [{ at, side: 'left', ...(lead === undefined ? {} : { lead }) }]));
}

describe('a lead that is not the road at the pin', () => {
  it('is found where another direction is more than 10 m nearer, with the difference', () => {
    const [finding] = found(20.3);
    expect(finding).toMatchObject({ code: 'lead-far', severity: 'warning', limit: 10, unit: 'm', where: { station: 's1', race: 'c' } });
    expect(finding!.measured).toBeCloseTo(10.3, 0);
  });

  it('is silent just inside, and where the plan names its lead', () => {
    expect(found(19.7)).toEqual([]);
    expect(found(20.3, { race: 'c', pass: 0 })).toEqual([]);
  });
});
