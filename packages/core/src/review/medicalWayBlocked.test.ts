import { describe, expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { medicalWayBlocked } from './medicalWayBlocked.ts';

/** So many metres past the pin at 1500 m and to the right of the road; tables stand at 5 m from 0 m to 6.7 m. */
type Place = readonly [along: number, right: number];
const beside = ([along, right]: Place): LonLat =>
  from(from(ORIGIN, 90, 1500 + along), right < 0 ? 0 : 180, Math.abs(right));
const found = (medical: Place, access: Place, keys: Partial<PlanStation> = {}): readonly Finding[] =>
  medicalWayBlocked.find(
    layoutOf(
      [turtle(ORIGIN, [[90, 3000]])],
      [
        {
          at: beside([0, 5]),
          side: 'right',
          points: [
            { kind: 'medical', at: beside(medical), name: 'Tent' },
            { kind: 'access', at: beside(access), name: 'Gate' },
          ],
          ...keys,
        },
      ],
    ),
  );

describe('medical-way-blocked', () => {
  it('is a warning where tables stand on the straight way out', () => {
    expect(found([20, 5.9], [-20, 5.9])).toEqual([
      expect.objectContaining({
        code: 'medical-way-blocked',
        severity: 'warning',
        measured: expect.closeTo(0.9, 1),
        limit: 1,
        unit: 'm',
        params: expect.objectContaining({ by: 'items', items: ['sportsDrink', 'water'] }),
        where: expect.objectContaining({ path: '/stations/0/points/0', station: 's1' }),
        message: expect.stringContaining('stand on the straight way from “Tent” to “Gate”.'),
      }),
    ]);
    expect(found([20, 6.1], [-20, 6.1])).toEqual([]);
    expect(found([20, 14], [-20, 14])).toEqual([]);
  });

  it('is one where the way out crosses the course', () => {
    expect(found([20, 8], [-20, -8])).toEqual([
      expect.objectContaining({
        params: {
          medical: { kind: 'medical', name: 'Tent' },
          access: { kind: 'access', name: 'Gate' },
          by: 'flow',
          side: 'right',
        },
      }),
    ]);
    // Where a side is not told nothing is said of it.
    expect(found([40, 8], [20, -1])).toEqual([]);
  });

  it('leaves boxes to trash-blocks-medical', () => {
    expect(found([110, 5], [40, 5])).toEqual([]);
  });

  it('cannot run without a medical and an access point at one station', () => {
    const layout = layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ at: beside([0, 5]) }]);
    expect(medicalWayBlocked.missing!(layout)).toBe('no-medical-with-access');
  });
});
