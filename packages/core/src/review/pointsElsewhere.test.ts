import { expect, it } from 'vitest';
import type { Finding, LonLat } from '../finding.ts';
import type { PlanStation } from '../plan/plan.ts';
import { ORIGIN, from, turtle } from '../testing/courses.ts';
import { layoutOf } from '../testing/plans.ts';
import { dropFar } from './dropFar.ts';
import { pointsElsewhere } from './pointsElsewhere.ts';

const road = turtle(ORIGIN, [[90, 12_000]], 200);
const at = (along: number): LonLat => from(from(ORIGIN, 90, along), 180, 8);
const station = (id: string, along: number, points: PlanStation['points']): Partial<PlanStation> => ({
  id,
  name: id,
  at: from(from(ORIGIN, 90, along), 180, 5),
  points,
});
const drop = (along: number): PlanStation['points'] => [{ kind: 'drop', at: at(along), name: 'Yard' }];
const found = (...points: readonly PlanStation['points'][]): readonly Finding[] =>
  pointsElsewhere.find(
    layoutOf(
      [road],
      points.map((own, k) => station(`s${k + 1}`, 3000 + 3000 * k, own)),
    ),
  );

it('a point far from its own station and at another is a warning that names both', () => {
  const [finding, ...more] = found(drop(6020), []);
  expect(more).toEqual([]);
  expect(finding).toMatchObject({
    severity: 'warning',
    where: { station: 's1', path: '/stations/0/points/0' },
    params: { other: 's2', count: 1 },
    limit: 300,
  });
  expect(finding!.message).toBe(
    '“Yard” lies 3.02 km away, at s2. A station’s points should be near its tables. Correct the points or the pin, or exchange those of the two stations.',
  );
  // The other check of that point says the same, and so is silent.
  expect(dropFar.find(layoutOf([road], [station('s1', 3000, drop(6020)), station('s2', 6000, [])]))).toEqual([]);
});

it('all points of a station that lie elsewhere are one finding, of the farthest', () => {
  const away = found([...drop(6010), { kind: 'access', at: at(6050), name: 'Lane' }], drop(3010));
  expect(away.map(({ where, params }) => [where.station, params!['count'], params!['other']])).toEqual([
    ['s1', 2, 's2'],
    ['s2', 1, 's1'],
  ]);
  expect(away[0]!.message).toMatch(/^“Lane” and 1 more point lie 3\.05 km away, at s2\./u);
});

it('is silent to 300 m from its own, and over 150 m from the other, which drop-far tells', () => {
  const two = (own: number, other: number, point: number): readonly Finding[] =>
    pointsElsewhere.find(layoutOf([road], [station('s1', own, drop(point)), station('s2', other, [])]));
  expect(two(3000, 3350, 3299)).toEqual([]);
  expect(two(3000, 3350, 3301)).toHaveLength(1);
  expect(two(3000, 6000, 6149)).toHaveLength(1);
  expect(two(3000, 6000, 6151)).toEqual([]);
  expect(dropFar.find(layoutOf([road], [station('s1', 3000, drop(6151)), station('s2', 6000, [])]))).toHaveLength(1);
});

it('cannot run without another station, or without points', () => {
  const layout = (...stations: readonly Partial<PlanStation>[]): string | null =>
    pointsElsewhere.missing!(layoutOf([road], stations));
  expect(layout(station('s1', 3000, drop(3000)))).toBe('one-station');
  expect(layout(station('s1', 3000, []), station('s2', 6000, []))).toBe('no-zones-points');
  expect(layout(station('s1', 3000, []), station('s2', 6000, drop(6000)))).toBeNull();
});
