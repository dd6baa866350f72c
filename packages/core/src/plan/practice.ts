/** The rules that hold at one station: the plan's, with the station's own laid over. */
import type { Crew, Plan, PlanStation, Practice, Supplies } from './plan.ts';
import { overCrew, overPractice, overSupplies } from './schemaRules.ts';

/** Practice at a station, metres. */
export const practiceOf = (plan: Plan, station: PlanStation): Practice => overPractice(plan.practice, station.practice);

/** Supplies at a station; overrides go key by key also inside packs, weights and take. */
export const suppliesOf = (plan: Plan, station: PlanStation): Supplies => overSupplies(plan.supplies, station.supplies);

/** Crew rules at a station. */
export const crewOf = (plan: Plan, station: PlanStation): Crew => overCrew(plan.crew, station.crew);
