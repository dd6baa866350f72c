/** The compact columns of nodes and ways: all that went in is found again, in whatever order it came, and far ways leave nothing else behind. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { buildCourse } from '../course/build.ts';
import { tries } from '../testing/tries.ts';
import { createAssembly, finishAssembly, takeNode, takeWay } from './assemble.ts';
import { corridorOf } from './corridor.ts';
import { joinRings } from './joinRings.ts';
import { createNodeIndex } from './nodeIndex.ts';
import { createWayStore } from './wayStore.ts';

const id = fc.oneof(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -(2 ** 49), max: 2 ** 49 }));

it('each node is found by its id, and none that is not there', () => {
  const nodes = fc.uniqueArray(fc.tuple(id, fc.integer(), fc.integer()), { selector: ([one]) => one, maxLength: 60 });
  fc.assert(
    fc.property(nodes, id, (entries, other) => {
      const index = createNodeIndex();
      for (const [one, lon, lat] of entries) index.add(one, lon, lat);
      for (const [one, lon, lat] of entries) {
        const slot = index.find(one);
        expect([index.lon(slot), index.lat(slot)]).toEqual([lon, lat]);
      }
      expect(index.find(other) >= 0).toBe(entries.some(([one]) => one === other));
      expect(index.ordered()).toBe(entries.every(([one], k) => k === 0 || entries[k - 1]![0] < one));
    }),
    { numRuns: tries(500) },
  );
});

it('each way gives its nodes again', () => {
  const ways = fc.uniqueArray(fc.tuple(id, fc.array(id, { maxLength: 20 })), { selector: ([one]) => one });
  fc.assert(
    fc.property(ways, (entries) => {
      const store = createWayStore();
      for (const [one, refs] of entries) store.add(one, refs);
      for (const [one, refs] of entries) expect(store.get(one)).toEqual(refs);
      expect(store.get(2 ** 49 + 1)).toBeNull();
    }),
    { numRuns: tries(500) },
  );
});

it('a ring that is cut anywhere and turned about is joined again', () => {
  const cut = fc.record({
    length: fc.integer({ min: 4, max: 30 }),
    cuts: fc.array(fc.nat(), { minLength: 1, maxLength: 6 }),
    turns: fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }),
  });
  fc.assert(
    fc.property(cut, ({ length, cuts, turns }) => {
      const places = [...new Set(cuts.map((one) => one % length))].toSorted((a, b) => a - b);
      const ways = places.map((from, k) => {
        const to = k + 1 < places.length ? places[k + 1]! : places[0]! + length;
        const way = Array.from({ length: to - from + 1 }, (_, n) => (from + n) % length);
        return turns[k]! ? way.toReversed() : way;
      });
      const rings = joinRings(ways.toReversed());
      expect(rings).toHaveLength(1);
      const [ring] = rings!;
      expect(ring!.length).toBe(length + 1);
      expect(new Set(ring).size).toBe(length);
      for (let k = 0; k < length; k++) expect([1, length - 1]).toContain((ring![k + 1]! - ring![k]! + length) % length);
    }),
    { numRuns: tries(500) },
  );
  expect(joinRings([[1, 2, 3]])).toBeNull();
  expect(joinRings([[1, 2, 1]])).toBeNull();
});

it('ways and areas far from the courses leave nothing behind but their columns', () => {
  const segment = { lon: Float64Array.of(0, 0.01), lat: Float64Array.of(0, 0), ele: Float64Array.of(NaN, NaN) };
  const built = buildCourse({ id: 'c', name: 'C', segments: [segment] });
  if (!built.ok) throw new Error('the course is good');
  const assembly = createAssembly(corridorOf([built.value], 300));
  for (let k = 0; k < 30_000; k++) takeNode(assembly, k, 5e7 + k, 5e7, { barrier: 'gate' });
  for (let k = 0; k < 3000; k++) {
    const refs = Array.from({ length: 10 }, (_, n) => 10 * k + n);
    takeWay(assembly, k, refs, k % 2 === 0 ? { highway: 'path' } : { building: 'yes' });
    takeWay(assembly, 3000 + k, [...refs, refs[0]!], { building: 'yes' });
  }
  const held = (): number[] =>
    [assembly.ways, assembly.areas, assembly.points, assembly.waitingWays, assembly.waitingAreas].map(
      ({ length }) => length,
    );
  expect(held()).toEqual([0, 0, 0, 0, 0]);
  expect(assembly.corridor.middles.size).toBe(0);
  finishAssembly(assembly);
  expect(held()).toEqual([0, 0, 0, 0, 0]);
  expect(assembly.counts).toEqual({ nodes: 30_000, ways: 6000, relations: 0, buildings: 4500 });
});
