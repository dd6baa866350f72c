/**
 * What a search has chosen, analysed as a whole: the plan with its stations moved, how it stands before
 * and after, and what is proven. The plan as it is where the whole is no better.
 */
import { type Analysis, layoutStage } from '../analyse.ts';
import type { Finding, LonLat } from '../finding.ts';
import { inverseLength } from '../geodesy/karney.ts';
import type { ItemKind, Plan } from '../plan/plan.ts';
import type { DayFacts } from '../review/check.ts';
import { CHECKS } from '../review/checks.ts';
import { WAIVER_CODES } from '../review/waivers.ts';
import { reviewLayout } from '../review/review.ts';
import { leadPass } from '../station/directions.ts';
import { ERROR, groundOf, isOfPlaces, weightOf } from './costs.ts';
import { type Choice, problemOf } from './problem.ts';
import { FINDINGS, type Found } from './search.ts';
import { type Standing, betters, standingOf } from './standing.ts';

/** A station that stands elsewhere in the improved plan. */
export interface Move {
  readonly station: string;
  readonly name: string;
  readonly from: LonLat;
  readonly to: LonLat;
  /** Course distance of the lead pass after the move, and the course it is on. */
  readonly measure: number;
  readonly course: string;
  /** Metres along the course, upstream negative. */
  readonly shift: number;
  /** Metres on the ground. */
  readonly moved: number;
  /** Items placed by hand that the practice places again. */
  readonly dropped: readonly ItemKind[];
  /** Somebody has walked the old place. */
  readonly walked: boolean;
}

/** `optimal`: no combination of the places tried is better, by the findings that hang on places and the legs. Else what none can be better than; `longest` is the sum of all races' longest legs. */
export type Proof =
  | 'optimal'
  | { readonly bound: { readonly error: number; readonly warning: number; readonly longest: number } };

/** What the search has come to, analysed as a whole. */
export interface Verified {
  readonly before: Standing;
  readonly after: Standing;
  /** None where no better places were found. */
  readonly moves: readonly Move[];
  readonly proof: Proof;
  /** The plan with its stations moved, and its analysis. */
  readonly plan: Plan;
  readonly analysis: Analysis;
}

/** `found`: what the search over all places has proven, if its costs are all there is (`adds`); `null` where it was stopped. `chosen`: one choice a station. */
export function verified(
  analysis: Analysis,
  present: readonly Choice[],
  chosen: readonly Choice[],
  found: (Found & { readonly adds: boolean }) | null,
): Verified {
  const before = standingOf(analysis);
  const trivial = trivialBound(analysis);
  const stay: Verified = { before, after: before, moves: [], proof: trivial, plan: analysis.plan, analysis };
  const plan = {
    ...analysis.plan,
    stations: analysis.plan.stations.map((station, k) => chosen[k]?.station ?? station),
  };
  const layout = layoutStage(plan, analysis.courses, analysis.day, analysis.ground);
  if (found === null || !layout.ok) return stay;
  const changed: Analysis = {
    ...layout.value,
    day: analysis.day,
    ...reviewLayout(layout.value, beforeLayout(analysis), undefined, dayOf(analysis)),
  };
  const after = standingOf(changed);
  const weight = searchedWeight(analysis, present);
  // Costs of parts that do not add up to what the whole finds prove nothing.
  const adds =
    found.adds && placesWeight(changed) - placesWeight(analysis) === searchedWeight(analysis, chosen) - weight;
  const bound = boundOf(found, Math.max(placesWeight(analysis) + found.bound.findings - weight, 0));
  const proof = !adds ? trivial : found.exact ? 'optimal' : bound;
  // A rule that is bent is found by how much it hides, which may be more in a better plan; a new error is never taken.
  const better = betters(placesStanding(changed), placesStanding(analysis)) && after.error <= before.error;
  if (!better) return { ...stay, proof };
  return {
    before,
    after,
    moves: chosen.flatMap((choice, k) => moveOf(choice, analysis, k)),
    proof,
    plan,
    analysis: changed,
  };
}

/** What is found that hangs on places. */
const placesWeight = ({ findings }: Analysis): number => weightOf(findings.filter(isOfPlaces));

const placesStanding = (analysis: Analysis): Standing =>
  standingOf({ ...analysis, findings: analysis.findings.filter(isOfPlaces) });

/** What choices cost by the search's own account. */
function searchedWeight(analysis: Analysis, choices: readonly Choice[]): number {
  const { factors } = problemOf(
    analysis,
    choices.map((choice) => [choice]),
    groundOf(analysis),
  )!.problem;
  return Math.floor(factors.reduce((sum, { values }) => sum + values[0]!, 0) / FINDINGS);
}

const boundOf = ({ bound }: Found, weight: number): Proof => ({
  bound: { error: Math.floor(weight / ERROR), warning: weight % ERROR, longest: bound.longest },
});

/** No longest leg is shorter than the mean leg. */
const trivialBound = ({ spacing }: Analysis): Proof => ({
  bound: { error: 0, warning: 0, longest: spacing.reduce((sum, { mean }) => sum + mean, 0) },
});

/** What was found while the courses were read: it does not depend on stations. */
function beforeLayout({ findings }: Analysis): Finding[] {
  const later = new Set([...CHECKS.map(({ code }) => code), ...WAIVER_CODES]);
  return findings.filter(({ code }) => !later.has(code));
}

/** Who runs and their day, which stay as they are, for checks of the day. */
function dayOf({ day, kept }: Analysis): DayFacts | null {
  const races = kept?.fields?.races;
  return day === null || races === undefined ? null : { races, day };
}

function moveOf({ shift, dropped, laid }: Choice, { stations }: Analysis, k: number): Move[] {
  if (shift === 0) return [];
  const { id, name, at: from, station } = stations[k]!;
  const lead = laid.passes[leadPass(laid.station, laid.passes)]!;
  const to = laid.at;
  return [
    {
      station: id,
      name,
      from,
      to,
      measure: lead.measure,
      course: lead.course,
      shift,
      moved: inverseLength(from[0], from[1], to[0], to[1]),
      dropped,
      walked: station.walked !== undefined,
    },
  ];
}
