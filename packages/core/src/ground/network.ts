/**
 * The streets of a map as a graph: segments between neighbouring nodes, in columns, with an index over their boxes, and the
 * segments that meet at each node. Ways meet only where they share a node.
 */
import Flatbush from 'flatbush';
import type { Ground, GroundWay } from './ground.ts';
import { type Plane, drawnOn } from './plane.ts';
import { isStreet } from './streetTags.ts';
import { sharedNodes, thinned } from './thin.ts';

export interface Network {
  /** Only streets, each without positions that show nothing. */
  readonly ways: readonly GroundWay[];
  /** Of each segment its way, and the index of its first position in it. */
  readonly way: Int32Array;
  readonly at: Int32Array;
  /** Of each segment the numbers of its nodes. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Of each segment its length, metres. */
  readonly length: Float64Array;
  /** Of each node its place in the plane. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly nodes: readonly string[];
  /** Of each node the segments that meet there. */
  readonly meeting: readonly (readonly number[])[];
  /** Over the boxes of the segments; `null` where there is none. */
  readonly index: Flatbush | null;
}

/** The graph of all streets of a map. */
export function networkOf(ground: Pick<Ground, 'ways' | 'points'>, plane: Plane): Network {
  const shared = sharedNodes(ground);
  const drawn = ground.ways
    .filter(({ tags, nodes }) => isStreet(tags) && nodes.length > 1)
    .map((way) => thinned(way, drawnOn(plane, way), shared));
  const ways = drawn.map(({ way }) => way);
  const segments = ways.reduce((sum, { nodes }) => sum + nodes.length - 1, 0);
  const [way, at, from, to] = [0, 0, 0, 0].map(() => new Int32Array(segments)) as Columns;
  const known = new Map<string, number>();
  const [xs, ys]: [number[], number[]] = [[], []];
  let segment = 0;
  for (const [number, { way: each, line }] of drawn.entries()) {
    const { x, y } = line;
    const numbers = each.nodes.map((id, i) => {
      const found = known.get(id) ?? known.size;
      if (found === known.size) {
        known.set(id, found);
        xs.push(x[i]!);
        ys.push(y[i]!);
      }
      return found;
    });
    for (let i = 0; i + 1 < numbers.length; i++, segment++) {
      way[segment] = number;
      at[segment] = i;
      from[segment] = numbers[i]!;
      to[segment] = numbers[i + 1]!;
    }
  }
  const [x, y] = [Float64Array.from(xs), Float64Array.from(ys)];
  const length = Float64Array.from(from, (a, k) => Math.hypot(x[to[k]!]! - x[a]!, y[to[k]!]! - y[a]!));
  const nodes = Array.from(known.keys());
  const meeting = meetingAt(nodes.length, from, to);
  return { ways, way, at, from, to, length, x, y, nodes, meeting, index: indexOf(x, y, from, to) };
}

type Columns = [Int32Array, Int32Array, Int32Array, Int32Array];

function meetingAt(nodes: number, from: Int32Array, to: Int32Array): number[][] {
  const meeting: number[][] = Array.from({ length: nodes }, () => []);
  for (let k = 0; k < from.length; k++) {
    meeting[from[k]!]!.push(k);
    if (to[k] !== from[k]) meeting[to[k]!]!.push(k);
  }
  return meeting;
}

function indexOf(x: Float64Array, y: Float64Array, from: Int32Array, to: Int32Array): Flatbush | null {
  if (from.length === 0) return null;
  const index = new Flatbush(from.length);
  for (let k = 0; k < from.length; k++) {
    const [x0, y0, x1, y1] = [x[from[k]!]!, y[from[k]!]!, x[to[k]!]!, y[to[k]!]!];
    index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
  }
  index.finish();
  return index;
}

/** The other node of a segment. */
export const otherEnd = ({ from, to }: Network, segment: number, node: number): number =>
  from[segment] === node ? to[segment]! : from[segment]!;
