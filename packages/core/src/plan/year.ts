/** What a plan holds of the year around race day: who comes, and what supplies cost. */
import type { SupplyKind } from '../kinds.ts';

/** A supply that is bought or hired. */
export type PricedKind = Exclude<SupplyKind, 'instructions' | 'trashBags'>;

export const PRICED: readonly PricedKind[] = [
  'waterJug',
  'sportsDrinkJug',
  'cups',
  'gels',
  'gloves',
  'bags',
  'towels',
  'stackingSheets',
  'table',
  'box',
  'sign',
];

/** One person of the roster. Names stay in the plan's file: exports for others leave them out. */
export interface PlanPerson {
  readonly name: string;
  /** Id of the station. */
  readonly station: string;
  readonly role?: string;
  /** Seconds after midnight; absent: from when the crew is due. */
  readonly from?: number;
  /** Seconds after midnight; absent: until the station closes. */
  readonly until?: number;
  readonly phone?: string;
}

/** Days of delivery that a price may have: two years. */
export const MOST_DAYS = 730;

/** What one supply costs. */
export interface PlanPrice {
  readonly kind: PricedKind;
  /** Of one pack as the plan counts it (a jug, a pack of cups), in the plan's currency. */
  readonly price: number;
  /** Packs that are sold together, 1 where nothing is said. */
  readonly sold: number;
  /** Days from the order to the delivery. */
  readonly leadDays?: number;
}

/** Prices of supplies in one currency, each kind once. */
export interface PlanPrices {
  /** As it is printed after an amount: "EUR". */
  readonly currency: string;
  readonly items: readonly PlanPrice[];
}
