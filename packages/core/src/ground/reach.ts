/**
 * Short ways through the graph: from each node to those within some tens of metres. Each node is searched once however often
 * the course comes by (Dijkstra over a dozen nodes or two).
 */
import { type Network, otherEnd } from './network.ts';

/** Metres: a step of the course is no longer, corners cut included. */
export const REACH = 45;

/** Nodes within reach of one, the nearest first, in columns. */
export interface Around {
  readonly nodes: readonly number[];
  /** Metres from the node of the search. */
  readonly lengths: readonly number[];
  /** The last segment on the way there, and the index of the node before; −1 at the node of the search. */
  readonly by: readonly number[];
  readonly before: readonly number[];
}

/** Asks for the nodes within reach of one. */
export interface Reach {
  readonly around: (node: number) => Around;
  /** How many nodes were searched from. */
  readonly searches: () => number;
}

export function reachIn(network: Network): Reach {
  const known = new Map<number, Around>();
  const around = (node: number): Around => {
    const before = known.get(node);
    if (before !== undefined) return before;
    const found = searchFrom(network, node);
    known.set(node, found);
    return found;
  };
  return { around, searches: () => known.size };
}

function searchFrom(network: Network, start: number): Around {
  const nodes = [start];
  const lengths = [0];
  const by = [-1];
  const before = [-1];
  // Behind those that are settled stand those that are open.
  for (let settled = 0; settled < nodes.length; settled++) {
    let next = settled;
    for (let k = settled + 1; k < nodes.length; k++) if (lengths[k]! < lengths[next]!) next = k;
    for (const column of [nodes, lengths, by, before]) swap(column, settled, next);
    for (const segment of network.meeting[nodes[settled]!]!) {
      const length = lengths[settled]! + network.length[segment]!;
      if (length > REACH) continue;
      const node = otherEnd(network, segment, nodes[settled]!);
      const known = nodes.indexOf(node);
      if (known >= 0 && lengths[known]! <= length) continue;
      const k = known < 0 ? nodes.length : known;
      nodes[k] = node;
      lengths[k] = length;
      by[k] = segment;
      before[k] = settled;
    }
  }
  return { nodes, lengths, by, before };
}

function swap(column: number[], a: number, b: number): void {
  const value = column[a]!;
  column[a] = column[b]!;
  column[b] = value;
}

/** A place on a segment: `along` metres from its first node. */
export interface OnSegment {
  readonly segment: number;
  readonly along: number;
}

/** The shortest way between two places, and the nodes at which it leaves the first's segment and enters the second's; −1 where both are on one segment. */
export interface Link {
  readonly length: number;
  readonly out: number;
  readonly into: number;
}

/** The shortest way along streets from one place to another, `length` Infinity beyond reach. */
export function linkBetween(network: Network, reach: Reach, a: OnSegment, b: OnSegment): Link {
  if (a.segment === b.segment) return { length: Math.abs(a.along - b.along), out: -1, into: -1 };
  const { from, to, length } = network;
  const best = { length: Infinity, out: -1, into: -1 };
  const over = length[b.segment]! - b.along;
  for (let side = 0; side < 2; side++) {
    const out = side === 0 ? from[a.segment]! : to[a.segment]!;
    const first = side === 0 ? a.along : length[a.segment]! - a.along;
    if (first > REACH) continue;
    const { nodes, lengths } = reach.around(out);
    const atFrom = nodes.indexOf(from[b.segment]!);
    const atTo = nodes.indexOf(to[b.segment]!);
    const byFrom = atFrom < 0 ? Infinity : first + lengths[atFrom]! + b.along;
    const byTo = atTo < 0 ? Infinity : first + lengths[atTo]! + over;
    const least = Math.min(byFrom, byTo);
    if (!(least < best.length)) continue;
    best.length = least;
    best.out = out;
    best.into = byFrom <= byTo ? from[b.segment]! : to[b.segment]!;
  }
  return best;
}

/** Segments between two nodes in order, each with the node at which it ends. */
export function segmentsBetween(reach: Reach, out: number, into: number): { by: number; node: number }[] {
  const { nodes, by, before } = reach.around(out);
  const steps: { by: number; node: number }[] = [];
  for (let k = nodes.indexOf(into); k > 0; k = before[k]!) steps.unshift({ by: by[k]!, node: nodes[k]! });
  return steps;
}
