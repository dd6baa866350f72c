import { expect, it } from 'vitest';
import { ORIGIN, from } from '../testing/courses.ts';
import { frameAt } from '../geodesy/frame.ts';
import type { Ground, GroundWay } from './ground.ts';
import { networkOf } from './network.ts';

const plane = { frame: frameAt(...ORIGIN), near: true };

/** A street east of the origin by metres, its nodes `a0`, `a1` and so on unless named. */
function street(id: string, alongs: readonly number[], named: Record<number, string> = {}): GroundWay {
  const places = alongs.map((along) => from(ORIGIN, 90, along));
  return {
    id,
    tags: { highway: 'residential' },
    nodes: alongs.map((_, k) => named[k] ?? `${id}${k}`),
    lon: Float64Array.from(places, ([lon]) => lon),
    lat: Float64Array.from(places, ([, lat]) => lat),
  };
}
const nodesOf = (ways: GroundWay[], points: Ground['points'] = []): readonly string[] =>
  networkOf({ ways, points }, plane).nodes;

it('a street takes part without positions within 0.1 m of the one before, its ends kept', () => {
  expect(nodesOf([street('a', [0, 5, 5.05, 5.09, 5.11, 5.12, 9, 9.01])])).toEqual(['a0', 'a1', 'a4', 'a6', 'a7']);
  // A file without ids makes one node of places within a centimetre.
  const repeated = street('a', [0, 5, 5.001, 5.002, 9], { 2: 'a1', 3: 'a1' });
  expect(networkOf({ ways: [repeated], points: [] }, plane).from).toHaveLength(2);
  const dense = Array.from({ length: 20_001 }, (_, k) => k / 1000);
  expect(nodesOf([street('a', dense)]).length).toBeLessThan(202);
});

it('nodes that another way or a thing has stay, and where a way comes back to itself', () => {
  const alongs = [0, 5, 5.02, 5.04, 5.06, 9];
  expect(nodesOf([street('a', alongs)])).toEqual(['a0', 'a1', 'a5']);
  const thing = { id: 'a3', tags: { highway: 'crossing' }, lon: 0, lat: 0 };
  expect(nodesOf([street('a', alongs)], [thing])).toEqual(['a0', 'a1', 'a3', 'a5']);
  const rail = { ...street('b', [0, 5.02], { 1: 'a2' }), tags: { railway: 'rail' } };
  expect(nodesOf([street('a', alongs), rail])).toEqual(['a0', 'a1', 'a2', 'a5']);
  expect(nodesOf([street('a', [0, 5, 5.02, 9, 5.02, 0], { 2: 'm', 4: 'm' })])).toContain('m');
});
