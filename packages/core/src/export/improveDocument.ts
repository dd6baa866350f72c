/** The JSON document that `halfcup improve` prints. Lengths in metres to 1e-6, degrees to 1e-9. */
import type { LonLat } from '../finding.ts';
import type { Improvement } from '../improve/improve.ts';
import type { Standing } from '../improve/standing.ts';
import type { Move, Proof } from '../improve/verify.ts';
import { toMicro, toPosition } from './rounding.ts';
import { isImprovement } from '../improve/shapes.ts';
import { want } from '../wants.ts';

/** What `halfcup improve` prints: how the plan stands before and after, where stations go, and what is proven of that. */
export interface ImproveDocument extends Pick<
  Improvement,
  'before' | 'after' | 'moves' | 'proof' | 'tried' | 'step' | 'stepBeyond' | 'stays'
> {
  /** The search was stopped: better places may be left to find. */
  readonly stopped?: true;
}

const standing = ({ longest, ...counts }: Standing): Standing => ({
  ...counts,
  longest: longest.map((leg) => ({ ...leg, length: toMicro(leg.length) })),
});

const place = (at: LonLat): LonLat => toPosition(at);

const move = (one: Move): Move => ({
  ...one,
  from: place(one.from),
  to: place(one.to),
  measure: toMicro(one.measure),
  shift: toMicro(one.shift),
  moved: toMicro(one.moved),
});

const proof = (one: Proof): Proof =>
  one === 'optimal' ? one : { bound: { ...one.bound, longest: toMicro(one.bound.longest) } };

/**
 * An improvement with its numbers rounded, without the changed plan and its analysis.
 * @example
 * ```ts
 * import { analyse, improve, readPlan } from '@halfcup/core';
 * import { improveDocument } from '@halfcup/core/schemas';
 * const read = readPlan(`{ "format": "halfcup-plan", "version": 1,
 *   "courses": [{ "id": "c", "line": [[-17.4, -33.2], [-17.36, -33.2]] }],
 *   "races": [{ "id": "r", "course": "c" }],
 *   "stations": [{ "id": "s1", "on": { "course": "c", "measure": "2 km", "side": "right" } }] }`, 'plan.json');
 * if (!read.ok) throw new Error(read.findings[0]?.message);
 * const result = analyse(read.value.plan, { gpx: new Map() });
 * if (!result.ok) throw new Error(result.findings[0]?.message);
 * const { moves, after } = improveDocument(improve(result.value, { within: 200 }));
 * moves.map(({ station, measure }) => [station, measure]); // → [['s1', 1865]]
 * after.longest[0]?.length; // → 1865
 * ```
 */
export function improveDocument(improvement: Improvement): ImproveDocument {
  want('improveDocument', 'improvement', isImprovement, improvement);
  return {
    before: standing(improvement.before),
    after: standing(improvement.after),
    moves: improvement.moves.map(move),
    proof: proof(improvement.proof),
    tried: improvement.tried,
    step: improvement.step,
    stepBeyond: improvement.stepBeyond,
    stays: improvement.stays,
    ...(improvement.stopped ? { stopped: true } : {}),
  };
}
