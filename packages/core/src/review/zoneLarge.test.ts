import { expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanZone } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf, planned } from '../testing/plans.ts';
import { zoneLarge } from './zoneLarge.ts';

const at = (along: number, right: number): LonLat => from(from(ORIGIN, 90, along), 180, right);
const layout = (rule: PlanZone['rule'], far: number, length: number = 12_000): ReturnType<typeof layoutOf> =>
  planned(layoutOf([turtle(ORIGIN, [[90, length]], 200)], []), {
    zones: [{ name: 'Gate', rule, polygon: [at(0, 5), at(20, 5), at(20, 20), at(far, 5)] }],
  });
const found = (...args: Parameters<typeof layout>): readonly Finding[] => zoneLarge.find(layout(...args));

it('a zone to keep clear that is over 10 km across is a warning, at the corner that lies far off', () => {
  expect(found('keep-clear', -9970)).toEqual([]);
  const [finding, ...more] = found('keep-clear', -10_030);
  expect(more).toEqual([]);
  expect(finding).toMatchObject({
    severity: 'warning',
    limit: 10_000,
    where: { path: '/zones/0', at: at(-10_030, 5) },
  });
  expect(finding!.message).toBe(
    'Zone “Gate” is 10.05 km across. It should be at most 10.00 km. Correct the corner that lies far off (longitude comes first).',
  );
});

it('a zone in which all may stand can be as large as the race and as much more', () => {
  expect(found('allowed', -23_900)).toEqual([]);
  expect(found('allowed', -24_100)).toHaveLength(1);
  expect(found('allowed', -9970, 1000)).toEqual([]);
  expect(found('allowed', -10_030, 1000)).toHaveLength(1);
});

it('a zone of 125,000 corners is looked at like any other', () => {
  const [lon, lat] = at(0, 5);
  const along = Array.from({ length: 125_000 }, (_, k): LonLat => [lon + k * 1e-9, lat - (k % 2) * 1e-5]);
  const found = (far: number): number =>
    zoneLarge.find(
      planned(layoutOf([turtle(ORIGIN, [[90, 12_000]], 200)], []), {
        zones: [{ name: 'Gate', rule: 'keep-clear', polygon: [...along, at(far, 5)] }],
      }),
    ).length;
  expect([found(9990), found(10_010)]).toEqual([0, 1]);
});

it('cannot run without a zone that encloses anything', () => {
  expect(zoneLarge.missing!(layoutOf([turtle(ORIGIN, [[90, 1000]])], []))).toBe('no-zones-points');
  expect(zoneLarge.missing!(layout('allowed', 100))).toBeNull();
});
