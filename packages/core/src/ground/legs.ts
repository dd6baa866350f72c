/**
 * From matched samples to the course's legs: on one segment of a street from one raw measure to another, with the nodes by
 * which it comes and goes. Nodes are put where the course is nearest to them.
 */
import { type Matched, linkTaken } from './match.ts';
import type { Network } from './network.ts';
import { type Reach, segmentsBetween } from './reach.ts';
import { type PlaneCourse, STEP, nearestBetween } from './samples.ts';

/** The course on one segment. Raw measures, metres; nodes by number, −1 where it comes or goes otherwise. */
export interface Leg {
  readonly segment: number;
  readonly from: number;
  readonly to: number;
  readonly enter: number;
  readonly leave: number;
}

/** Whether a leg goes on from another at a node. */
export const goesOn = (a: Leg | undefined, b: Leg | undefined): boolean =>
  a !== undefined && b !== undefined && a.leave >= 0 && a.leave === b.enter && a.to === b.from;

/** Metres: into another segment and back within so little is the recorder's shaking. */
const SHAKE = 10;

/** Legs as they are made: those that are done, and the one that is open. */
interface Making {
  readonly legs: Leg[];
  open: { readonly segment: number; readonly from: number; readonly enter: number } | null;
}

/** Legs of a matched course, in running order. Between two that do not go on the course is off all streets, or has jumped. */
export function legsOf(network: Network, reach: Reach, on: PlaneCourse, chain: readonly Matched[]): Leg[] {
  const making: Making = { legs: [], open: null };
  for (const [k, { sample, on: here }] of chain.entries()) {
    const before = sample.begins ? undefined : chain[k - 1];
    if (before === undefined && k > 0) close(making, chain[k - 1]!.sample.raw, -1);
    const middle = before === undefined ? sample.raw : (before.sample.raw + sample.raw) / 2;
    const length = before === undefined ? 0 : sample.raw - before.sample.raw;
    const link = here !== null && before?.on ? linkTaken(network, reach, before.on, here, length) : null;
    if (link === null) {
      close(making, middle, -1);
      if (here !== null) making.open = { segment: here.segment, from: middle, enter: -1 };
    } else if (link.out >= 0) {
      const steps = [...segmentsBetween(reach, link.out, link.into), { by: here!.segment, node: -1 }];
      let at = link.out;
      for (const { by, node } of steps) {
        const from = before!.sample.raw - STEP;
        turnInto(network, on, making, { node: at, by, from, to: Math.min(sample.raw + STEP, endOf(chain, k)) });
        at = node;
      }
    }
  }
  if (chain.length > 0) close(making, chain.at(-1)!.sample.raw, -1);
  return making.legs;
}

/** The raw measure behind which a sample's part has none for sure. */
function endOf(chain: readonly Matched[], k: number): number {
  const next = chain[k + 1];
  return next === undefined || next.sample.begins ? chain[k]!.sample.raw : next.sample.raw;
}

/** Goes over into another segment at a node that the course passes somewhere between two raw measures. */
function turnInto(
  network: Network,
  on: PlaneCourse,
  making: Making,
  { node, by, from, to }: { node: number; by: number; from: number; to: number },
): void {
  const { open } = making;
  if (open === null || open.segment === by) return;
  const { raw } = nearestBetween(on, network.x[node]!, network.y[node]!, Math.max(open.from, from), to);
  close(making, raw, node);
  making.open = { segment: by, from: raw, enter: node };
}

function close(making: Making, to: number, leave: number): void {
  if (making.open === null) return;
  making.legs.push({ ...making.open, to, leave });
  making.open = null;
  while (steady(making.legs));
}

/** Takes the last leg but one away where it only shakes into a segment and back. */
function steady(legs: Leg[]): boolean {
  const [a, b, c] = legs.slice(-3) as [Leg?, Leg?, Leg?];
  if (a === undefined || b === undefined || c === undefined || !goesOn(a, b) || !goesOn(b, c)) return false;
  if (b.enter !== b.leave || b.to - b.from > SHAKE) return false;
  const middle = (b.from + b.to) / 2;
  const joined =
    a.segment === c.segment
      ? [{ ...a, to: c.to, leave: c.leave }]
      : [
          { ...a, to: middle },
          { ...c, from: middle },
        ];
  legs.splice(-3, 3, ...joined);
  return true;
}
