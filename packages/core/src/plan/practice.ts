/** The rules that hold at one station: the plan's, with the station's own laid over. Without zod, so that race day and papers load none. */
import type { Crew, Plan, PlanStation, Practice, Supplies, SuppliesOverride } from './plan.ts';

/** Practice with a set of overrides laid over it. */
export const overPractice = (base: Practice, over: Partial<Practice>): Practice => ({ ...base, ...over });

/** Crew with a set of overrides laid over it. */
export const overCrew = (base: Crew, over: Partial<Crew>): Crew => ({ ...base, ...over });

/** Supplies with a set of overrides laid over it, key by key also inside packs, weights, flavours and each division's take. */
export function overSupplies(base: Supplies, over: SuppliesOverride): Supplies {
  const take = { ...base.take };
  for (const division of ['run', 'walk', 'wheels'] as const) {
    const rates = over.take?.[division];
    if (rates !== undefined) take[division] = { ...take[division], ...rates };
  }
  const flavours = { ...base.flavours, ...over.flavours };
  return {
    ...base,
    ...over,
    ...(Object.keys(flavours).length === 0 ? {} : { flavours }),
    take,
    packs: { ...base.packs, ...over.packs },
    weights: { ...base.weights, ...over.weights },
  };
}

/** Practice at a station, metres. */
export const practiceOf = (plan: Plan, station: PlanStation): Practice => overPractice(plan.practice, station.practice);

/** Supplies at a station; overrides go key by key also inside packs, weights, flavours and take. */
export const suppliesOf = (plan: Plan, station: PlanStation): Supplies => overSupplies(plan.supplies, station.supplies);

/** Crew rules at a station. */
export const crewOf = (plan: Plan, station: PlanStation): Crew => overCrew(plan.crew, station.crew);
