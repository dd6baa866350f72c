/**
 * Short ways through the graph: from each node to those within some tens of metres. Each node is searched once however often
 * the course comes by (Dijkstra over a dozen nodes or two).
 */
import { type Network, otherEnd } from './network.ts';

/** Metres: a step of the course is no longer, corners cut included. */
export const REACH = 45;

/** How one comes to a node. */
export interface Step {
  /** Metres from the node of the search. */
  readonly length: number;
  /** The last segment, and the node before; −1 at the node of the search. */
  readonly by: number;
  readonly before: number;
}

/** Asks for the nodes within reach of one. */
export type Reach = (node: number) => ReadonlyMap<number, Step>;

export function reachIn(network: Network): Reach {
  const known = new Map<number, ReadonlyMap<number, Step>>();
  return (node) => {
    const before = known.get(node);
    if (before !== undefined) return before;
    const found = searchFrom(network, node);
    known.set(node, found);
    return found;
  };
}

function searchFrom(network: Network, start: number): Map<number, Step> {
  const settled = new Map<number, Step>();
  const open = new Map<number, Step>([[start, { length: 0, by: -1, before: -1 }]]);
  while (open.size > 0) {
    let node = -1;
    let step: Step = { length: Infinity, by: -1, before: -1 };
    for (const [each, found] of open) if (found.length < step.length) [node, step] = [each, found];
    open.delete(node);
    settled.set(node, step);
    for (const by of network.meeting[node]!) {
      const next = otherEnd(network, by, node);
      const length = step.length + network.length[by]!;
      if (length > REACH || settled.has(next) || (open.get(next)?.length ?? Infinity) <= length) continue;
      open.set(next, { length, by, before: node });
    }
  }
  return settled;
}

/** A place on a segment: `along` metres from its first node. */
export interface OnSegment {
  readonly segment: number;
  readonly along: number;
}

/** The shortest way between two places, and the nodes at which it leaves the first's segment and enters the second's; −1 where both are one segment. */
export interface Link {
  readonly length: number;
  readonly out: number;
  readonly into: number;
}

const APART: Link = { length: Infinity, out: -1, into: -1 };

/** The shortest way along streets from one place to another, `length` Infinity beyond reach. */
export function linkBetween(network: Network, reach: Reach, a: OnSegment, b: OnSegment): Link {
  if (a.segment === b.segment) return { length: Math.abs(a.along - b.along), out: -1, into: -1 };
  let best = APART;
  for (const [out, first] of endsOf(network, a)) {
    if (first > REACH) continue;
    const near = reach(out);
    for (const [into, last] of endsOf(network, b)) {
      const between = near.get(into);
      if (between === undefined) continue;
      const length = first + between.length + last;
      if (length < best.length) best = { length, out, into };
    }
  }
  return best;
}

function endsOf({ from, to, length }: Network, { segment, along }: OnSegment): [number, number][] {
  return [
    [from[segment]!, along],
    [to[segment]!, length[segment]! - along],
  ];
}

/** Segments between two nodes in order, each with the node at which it ends. */
export function segmentsBetween(reach: Reach, out: number, into: number): { by: number; node: number }[] {
  const near = reach(out);
  const steps: { by: number; node: number }[] = [];
  for (let node = into; node !== out;) {
    const { by, before } = near.get(node)!;
    steps.unshift({ by, node });
    node = before;
  }
  return steps;
}
