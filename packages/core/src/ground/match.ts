/**
 * Which street a course is on at each of its samples: the cheapest chain of candidates over the whole course (Viterbi), where a
 * step costs what it departs from the course's own length along the streets, and leaving the streets, or jumping between two
 * that do not meet, costs once. So a course does not flip to a parallel street or into one that it crosses.
 * Source of the model: P. Newson, J. Krumm, "Hidden Markov map matching through noise and sparseness", ACM GIS 2009,
 * doi:10.1145/1653771.1653818; its weights here are chosen by the tests on drawn and noisy courses.
 */
import { type Candidate, candidatesIn } from './candidates.ts';
import type { Network } from './network.ts';
import { type Link, type Reach, linkBetween } from './reach.ts';
import type { Sample } from './samples.ts';
import { streetName } from './streetTags.ts';

/** Metres of course to which a candidate's cost belongs. */
const COST_LENGTH = 15;
/** Of 15 m off all streets: as much as a street 15 m away. */
const OFF = 4.5;
/** Of leaving the streets, or coming back. */
const LEAVE = 3;
/** Of a jump between streets that do not meet, and of each metre of it. */
const JUMP = 5;
const JUMP_METRE = 0.2;
/** Of each metre by which a step along the streets is longer or shorter than the course, beyond a slack of 2 m. */
const STRETCH_METRE = 0.2;
const SLACK = 2;
/** Of turning into a street of another name. */
const TURN = 0.4;

/** Where a sample is, `null` off all streets. */
export interface Matched {
  readonly sample: Sample;
  readonly on: Candidate | null;
}

interface State {
  readonly on: Candidate | null;
  readonly cost: number;
  readonly before: State | null;
}

/** The chain of a whole course, a place a sample. */
export function match(network: Network, reach: Reach, samples: readonly Sample[]): Matched[] {
  const candidates = candidatesIn(network);
  const names = network.ways.map(({ tags }) => streetName(tags));
  let states: State[] = [];
  let last: Sample | null = null;
  const stepCost = (a: Candidate | null, b: Candidate | null, length: number): number => {
    if (a === null || b === null) return a === b ? 0 : LEAVE;
    const other = names[a.way] === names[b.way] && (names[a.way] !== null || a.way === b.way) ? 0 : TURN;
    return other + Math.min(linkCost(linkBetween(network, reach, a, b), length), jumpCost(a, b));
  };
  const ends: State[] = [];
  for (const sample of samples) {
    const length = last === null || sample.begins ? 0 : sample.raw - last.raw;
    if (sample.begins && states.length > 0) {
      ends.push(cheapest(states));
      states = [];
    }
    states = [...candidates(sample), null].map((on): State => {
      const own = ((on?.cost ?? OFF) * (sample.begins ? 1 : length)) / COST_LENGTH;
      if (states.length === 0) return { on, cost: own, before: null };
      let [least, before] = [Infinity, states[0]!];
      for (const state of states) {
        if (state.cost >= least) continue;
        const cost = state.cost + stepCost(state.on, on, length);
        if (cost < least) [least, before] = [cost, state];
      }
      return { on, cost: least + own, before };
    });
    // The likely ones first, so that the others need not be tried.
    states.sort((a, b) => a.cost - b.cost);
    last = sample;
  }
  if (states.length > 0) ends.push(cheapest(states));
  return backwards(samples, ends);
}

const linkCost = ({ length }: Link, course: number): number =>
  STRETCH_METRE * Math.max(Math.abs(length - course) - SLACK, 0);

const jumpCost = (a: Candidate, b: Candidate): number => JUMP + JUMP_METRE * Math.hypot(a.x - b.x, a.y - b.y);

/** How the course comes along the streets from one place to the next, over `length` metres of its own; `null` where it rather jumps. */
export function linkTaken(network: Network, reach: Reach, a: Candidate, b: Candidate, length: number): Link | null {
  const link = linkBetween(network, reach, a, b);
  return linkCost(link, length) <= jumpCost(a, b) ? link : null;
}

const cheapest = (states: readonly State[]): State =>
  states.reduce((best, state) => (state.cost < best.cost ? state : best));

/** From the ends of the course's parts back to their beginnings. */
function backwards(samples: readonly Sample[], ends: State[]): Matched[] {
  const chain: Matched[] = [];
  let state: State | null = null;
  for (let k = samples.length - 1; k >= 0; k--) {
    state ??= ends.pop()!;
    chain.push({ sample: samples[k]!, on: state.on });
    state = state.before;
  }
  return chain.reverse();
}
