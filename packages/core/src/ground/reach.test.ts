import { describe, expect, it } from 'vitest';
import type Flatbush from 'flatbush';
import { courseThrough, generator } from '../testing/courses.ts';
import { gridTown, randomWalk } from '../testing/gridTown.ts';
import { type Drawing, drawnGround } from '../testing/towns.ts';
import { ORIGIN } from '../testing/courses.ts';
import { frameAt } from '../geodesy/frame.ts';
import type { Ground } from './ground.ts';
import { match } from './match.ts';
import { type Network, networkOf, otherEnd } from './network.ts';
import { type Plane, planeOf } from './plane.ts';
import { REACH, linkBetween, reachIn, segmentsBetween } from './reach.ts';
import { courseOn, samplesOf } from './samples.ts';

const plane: Plane = { frame: frameAt(...ORIGIN), near: true };
const street = { highway: 'residential' };
const drawn = (places: Drawing['places'], ways: Record<string, string>): Network =>
  networkOf(
    drawnGround({ places, ways: Object.fromEntries(Object.entries(ways).map(([id, line]) => [id, [line, street]])) }),
    plane,
  );

describe('the way from a place to another along the streets', () => {
  const net = drawn(
    { a: [0, 0], b: [20, 0], c: [20, 15], d: [0, 15], e: [60, 0] },
    { one: 'a b c', two: 'c d a', three: 'b e' },
  );
  const reach = reachIn(net);

  it('is along one segment, or over the nodes between, whichever way is shorter', () => {
    expect(linkBetween(net, reach, { segment: 0, along: 4 }, { segment: 0, along: 17 }).length).toBeCloseTo(13, 3);
    const round = linkBetween(net, reach, { segment: 0, along: 18 }, { segment: 1, along: 6 });
    expect(round.length).toBeCloseTo(8, 3);
    expect([net.nodes[round.out], net.nodes[round.into]]).toEqual(['b', 'b']);
    const back = linkBetween(net, reach, { segment: 0, along: 2 }, { segment: 2, along: 19 });
    expect(back.length).toBeCloseTo(2 + 15 + 1, 3);
    expect(segmentsBetween(reach, back.out, back.into).map(({ node }) => net.nodes[node])).toEqual(['d']);
  });

  it('is none beyond 45 m, and none between streets that do not meet', () => {
    expect(linkBetween(net, reach, { segment: 3, along: 0 }, { segment: 4, along: 39 }).length).toBeGreaterThan(REACH);
    const apart = drawn({ a: [0, 0], b: [20, 0], c: [20, 1], d: [0, 1] }, { one: 'a b', two: 'c d' });
    expect(linkBetween(apart, reachIn(apart), { segment: 0, along: 4 }, { segment: 1, along: 4 }).length).toBe(
      Infinity,
    );
  });

  it('is as short as by trying all ways (Bellman and Ford)', () => {
    const net = networkOf(gridTown(5), plane);
    const reach = reachIn(net);
    const random = generator(4);
    for (let k = 0; k < 12; k++) {
      const start = Math.floor(random() * net.nodes.length);
      const { nodes, lengths } = reach.around(start);
      for (const [node, length] of allWithin(net, start)) expect(lengths[nodes.indexOf(node)]).toBeCloseTo(length, 9);
      expect(nodes.length).toBe(allWithin(net, start).size);
    }
  });
});

/** Lengths to all nodes within reach, by going over every segment of the neighbourhood until nothing gets shorter. */
function allWithin(net: Network, start: number): Map<number, number> {
  const found = new Map([[start, 0]]);
  for (let changed = true; changed;) {
    changed = false;
    for (const [node, length] of found)
      for (const segment of net.meeting[node]!) {
        const [next, sum] = [otherEnd(net, segment, node), length + net.length[segment]!];
        if (sum > REACH || sum >= (found.get(next) ?? Infinity)) continue;
        found.set(next, sum);
        changed = true;
      }
  }
  return found;
}

/** How many boxes and segments the matching looks at, and from how many nodes it searches. */
function work(ground: Ground, length: number): { asked: number; segments: number; searches: number } {
  const course = courseThrough(randomWalk(gridTown(6), length, generator(2)).points);
  const plane = planeOf(course);
  const net = networkOf(ground, plane);
  const count = { asked: 0, segments: 0 };
  const search: Flatbush['search'] = (...box) => {
    const found = net.index!.search(...box);
    count.asked++;
    count.segments += found.length;
    return found;
  };
  const reach = reachIn(net);
  match({ ...net, index: { search } as Flatbush }, reach, samplesOf(courseOn(plane, course)));
  return { ...count, searches: reach.searches() };
}

describe('the work of a matching', () => {
  it('grows with the course’s length, and not with the town beyond its streets', () => {
    const town = gridTown(6);
    const far = gridTown(9, 40);
    const moved = far.ways.map((way) => ({
      ...way,
      nodes: way.nodes.map((node) => `far ${node}`),
      lon: way.lon.map((lon) => lon + 0.05),
    }));
    const larger: Ground = { ...town, ways: [...town.ways, ...moved] };
    expect(larger.ways.length).toBeGreaterThan(5 * town.ways.length);
    const [short, long] = [work(town, 4000), work(town, 16_000)];
    expect(work(larger, 4000)).toEqual(short);
    expect(long.asked / short.asked).toBeCloseTo(4, 0);
    expect(long.segments / short.segments).toBeLessThan(5);
    expect(long.searches).toBeLessThan(5 * short.searches);
    expect(short.segments / short.asked).toBeLessThan(8);
  });
});
