/**
 * Where a sample of a course may be on the map: the nearest place of each street around it, with what it costs to believe it.
 * Costs are those of 15 m of course (about what a recorder's error keeps its direction for): half the squared distance over 5 m, and as much for a
 * direction that is over 30° off. A place 15 m away, or 75° off, is none.
 */
import type { Network } from './network.ts';
import { shareNearest } from './plane.ts';
import type { OnSegment } from './reach.ts';
import type { Sample } from './samples.ts';
import { isPartOfStreet } from './streetTags.ts';

/** Metres from the course within which a street counts as the course's. */
export const NEAR_STREET = 15;
const SPREAD = 5;
/** Degrees that cost nothing, those that cost ½, and those that rule out. */
const STRAIGHT = 30;
const TURN_SPREAD = 15;
const ACROSS = 75;
/** Of pavements, so that a street is not parted from its name by the pavement beside it: as much as 2.5 m of distance. */
const PAVEMENT = 0.125;

export interface Candidate extends OnSegment {
  readonly way: number;
  readonly x: number;
  readonly y: number;
  /** For 15 m of course. */
  readonly cost: number;
}

/** Asks for the candidates of a sample. */
export type Candidates = (sample: Sample) => Candidate[];

export function candidatesIn(network: Network): Candidates {
  const extra = network.ways.map(({ tags }) => (isPartOfStreet(tags) ? PAVEMENT : 0));
  return (sample) => {
    const { x, y } = sample;
    const near = network.index?.search(x - NEAR_STREET, y - NEAR_STREET, x + NEAR_STREET, y + NEAR_STREET) ?? [];
    const found = near
      .map((segment) => candidateOn(network, extra, sample, segment))
      .filter((candidate) => candidate !== null);
    return lowest(network, found);
  };
}

function candidateOn(network: Network, extra: readonly number[], sample: Sample, segment: number): Candidate | null {
  const [from, to] = [network.from[segment]!, network.to[segment]!];
  const [x0, y0, x1, y1] = [network.x[from]!, network.y[from]!, network.x[to]!, network.y[to]!];
  const share = shareNearest(sample.x, sample.y, x0, y0, x1, y1);
  const [x, y] = [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
  const distance = Math.hypot(x - sample.x, y - sample.y);
  const length = network.length[segment]!;
  if (distance > NEAR_STREET || length === 0) return null;
  const turn = turnDeg(sample, (x1 - x0) / length, (y1 - y0) / length);
  if (turn > ACROSS) return null;
  const away = distance / SPREAD;
  const off = Math.max(turn - STRAIGHT, 0) / TURN_SPREAD;
  const way = network.way[segment]!;
  return { segment, along: share * length, way, x, y, cost: (away * away + off * off) / 2 + extra[way]! };
}

/** Degrees between a sample's direction and a segment's, whichever way that is passed: 0 to 90. */
export function turnDeg({ dx, dy }: Sample, ux: number, uy: number): number {
  if (dx === 0 && dy === 0) return 0;
  return (Math.acos(Math.min(Math.abs(dx * ux + dy * uy), 1)) * 180) / Math.PI;
}

/** Of neighbouring segments of one way only those that cost less than their neighbours: bends come once, both legs of a hairpin stay. */
function lowest({ at }: Network, found: Candidate[]): Candidate[] {
  found.sort((a, b) => a.segment - b.segment);
  const isNext = (a: Candidate | undefined, b: Candidate | undefined): boolean =>
    a !== undefined && b !== undefined && a.way === b.way && at[b.segment] === (at[a.segment] ?? 0) + 1;
  return found.filter((candidate, k) => {
    const [before, after] = [found[k - 1], found[k + 1]];
    const first = !isNext(before, candidate) || candidate.cost < before!.cost;
    return first && (!isNext(candidate, after) || candidate.cost <= after!.cost);
  });
}
