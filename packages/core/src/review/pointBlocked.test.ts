import { describe, expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanPoint, PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { pointBlocked } from './pointBlocked.ts';

/** So many metres past the pin at 1500 m and to the right of the road; tables stand at 5 m from 0 m to 6.7 m. */
const beside = (along: number, right: number): LonLat => from(from(ORIGIN, 90, 1500 + along), 180, right);
const found = (point: PlanPoint, keys: Partial<PlanStation> = {}): readonly Finding[] =>
  pointBlocked.find(
    layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ at: beside(0, 5), side: 'right', points: [point], ...keys }]),
  );

describe('point-blocked', () => {
  it('is a warning where a table stands nearer than 2 m to a medical, access or drop point', () => {
    for (const kind of ['medical', 'access', 'drop'] as const) {
      expect(found({ kind, at: beside(1, 6.9) })).toEqual([
        expect.objectContaining({
          code: 'point-blocked',
          severity: 'warning',
          measured: expect.closeTo(1.9, 1),
          limit: 2,
          unit: 'm',
          params: expect.objectContaining({ items: ['sportsDrink'], station: null }),
          where: expect.objectContaining({ path: '/stations/0/points/0', station: 's1', item: 'sportsDrink' }),
        }),
      ]);
      expect(found({ kind, at: beside(1, 7.1) })).toEqual([]);
    }
    expect(found({ kind: 'toilets', at: beside(1, 6.9) })).toEqual([]);
  });

  it('looks at signs and boxes by themselves: between two boxes there is room', () => {
    expect(found({ kind: 'access', at: beside(-91.44, 6) })).toHaveLength(1);
    // Boxes stand 52.4256 m and 98.1456 m past the pin.
    expect(found({ kind: 'access', at: beside(52.4, 6) }, { boxes: 2 })).toHaveLength(1);
    expect(found({ kind: 'access', at: beside(75, 5) }, { boxes: 2 })).toEqual([]);
  });

  it('is one of the station that stands there, also where the point is another’s', () => {
    const layout = layoutOf(
      [turtle(ORIGIN, [[90, 3000]])],
      [
        { at: beside(0, 5), side: 'right' },
        { at: beside(1000, 5), side: 'right', points: [{ kind: 'medical', at: beside(1, 5) }] },
      ],
    );
    expect(pointBlocked.find(layout)).toEqual([
      expect.objectContaining({
        params: expect.objectContaining({ station: 's2' }),
        where: expect.objectContaining({ station: 's1', path: '/stations/1/points/0' }),
      }),
    ]);
  });

  it('cannot run without such a point', () => {
    const layout = layoutOf([turtle(ORIGIN, [[90, 3000]])], [{ at: beside(0, 5) }]);
    expect(pointBlocked.missing!(layout)).toBe('no-points');
  });
});
