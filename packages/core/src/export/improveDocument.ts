/** The JSON document that `halfcup improve` prints. Lengths in metres to 1e-6, degrees to 1e-9. */
import type { LonLat } from '../finding.ts';
import type { Improvement } from '../improve/improve.ts';
import type { Standing } from '../improve/standing.ts';
import type { Move, Proof } from '../improve/verify.ts';
import { toMicro, toPosition } from './rounding.ts';

/** How the plan stands before and after, where stations go, and what is proven of that. */
export interface ImproveDocument extends Pick<Improvement, 'before' | 'after' | 'moves' | 'proof' | 'tried' | 'step' | 'stepBeyond' | 'stays'> {}

const standing = ({ longest, ...counts }: Standing): Standing => ({ ...counts, longest: longest.map((leg) => ({ ...leg, length: toMicro(leg.length) })) });

const place = (at: LonLat): LonLat => toPosition(at);

const move = (one: Move): Move => ({ ...one, from: place(one.from), to: place(one.to), measure: toMicro(one.measure), shift: toMicro(one.shift), moved: toMicro(one.moved) });

const proof = (one: Proof): Proof => (one === 'optimal' ? one : { bound: { ...one.bound, longest: toMicro(one.bound.longest) } });

/** An improvement with its numbers rounded. */
export const improveDocument = (improvement: Improvement): ImproveDocument => ({
  before: standing(improvement.before),
  after: standing(improvement.after),
  moves: improvement.moves.map(move),
  proof: proof(improvement.proof),
  tried: improvement.tried,
  step: improvement.step,
  stepBeyond: improvement.stepBeyond,
  stays: improvement.stays,
});
